// Days by their number, for a quote's day of issue. Core has no clock: the page and the command line say which day
// it is.
//
// What       a day is the number of days since 1970-01-01 of the Gregorian calendar.
// Range      1970-01-01 .. 2134-04-11 (0..60000)
// Edges      text that is no day of that range, or not of the form 2026-11-25: none.
// Example    2026-11-25 is day 20782, said "25 Nov 2026".
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/words/text.hpp"

namespace torchside::document {

inline constexpr int last_day = 60000;

[[nodiscard]] std::optional<int> read_day(std::string_view iso); // "2026-11-25"
[[nodiscard]] std::string iso_day(int day);
[[nodiscard]] Text day_words(int day); // "25 Nov 2026": no order of numbers to mistake

} // namespace torchside::document
