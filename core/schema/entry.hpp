// What a person is told under the field he types into, in his units when it is said: never a word of the file.
#pragma once

#include "core/quantity/read.hpp"
#include "core/schema/schema.hpp"
#include "core/stock/metal.hpp"
#include "core/words/text.hpp"

namespace torchside::document {

/// "Enter 0.3 to 150 mm.", "Enter 5 to 98 %.", "Enter up to 60 letters. Leave blank to ...". A share is typed as a percentage.
[[nodiscard]] Text enter(const FieldInfo& info);

/// "Leave blank to use the usual height."; empty when something must be entered.
[[nodiscard]] Text blank_words(const FieldInfo& info);

/// "1 or 3", "10, 12 or 14 AWG": what a flag, a word or an integer of few is chosen from.
[[nodiscard]] Text choices(const FieldInfo& info);

/// What to type where no range is known: "Enter a length (mm).".
[[nodiscard]] Text ask_for(FieldUnit unit, Units units);

/// "The fraction is more than 1. Which do you mean?"
[[nodiscard]] Text question(Doubt doubt);

/// Why a gauge is no thickness of this metal; empty when something else is wrong with what was typed.
[[nodiscard]] Text refused_gauge(Unread why, Metal metal);

} // namespace torchside::document
