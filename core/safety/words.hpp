// What a caution says at length, its source, and the published limits beside it. Apart from the report, because a page
// shows them later than its first answer: the texts lie in one array that tools/split_wasm moves to the later part of
// the program, so only these functions may read it, and web/later.txt names them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/unit_system.hpp"
#include "core/safety/report.hpp"

namespace torchside::safety {

struct CautionWords {
    std::string text;     // sentences, what to do first; in the reader's units
    std::string citation; // the source as shown
};
[[gnu::noinline, nodiscard]] CautionWords words_of(const Caution& caution, UnitSystem units = UnitSystem::metric);

/// Published limits of what this caution is about, the strictest first. Those of the shop's country, and what is
/// stricter elsewhere; all of them where the country has none, or is none of those known.
/// Example: NO2 in the United States: Germany's 0.5 ppm, the UK's 0.5, NIOSH's 1, OSHA's 5; in the EU Germany's alone.
[[gnu::noinline, nodiscard]] std::vector<std::string_view> limits_of(const Caution& caution, Country country);

/// Whose minimum the shade is, what the other one asks, and how to choose.
[[gnu::noinline, nodiscard]] std::string shade_note(const Report& report);

} // namespace torchside::safety
