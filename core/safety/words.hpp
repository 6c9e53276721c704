// What the safety sheet says beside the cautions: published limits, and whose minimum the shade is. Not drawn into their
// caller, for web/later.txt names them.
#pragma once

#include <vector>

#include "core/safety/report.hpp"

namespace torchside::safety {

/// Published limits of what this caution is about, the strictest first. Those of the shop's country, and what is
/// stricter elsewhere; all of them where the country has none, or is none of those known.
/// Example: NO2 in the United States: Germany's 0.5 ppm, the UK's 0.5, NIOSH's 1, OSHA's 5; in the EU Germany's alone.
[[gnu::noinline, nodiscard]] std::vector<Word> limits_of(const Caution& caution, Country country);

/// Whose minimum the shade is, what the other one asks, and how to choose.
[[gnu::noinline, nodiscard]] Text shade_note(const Report& report);

} // namespace torchside::safety
