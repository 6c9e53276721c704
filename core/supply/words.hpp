// What the sentences of core/supply call a wire.
#pragma once

#include "core/supply/load.hpp"
#include "core/words/text.hpp"

namespace torchside::supply {

[[nodiscard]] Text gauge(int awg);                     // "8 AWG"
[[nodiscard]] Text run_words(const Circuit& circuit);  // "8 AWG", "2.5 mm²"
[[nodiscard]] Text cord_words(const Circuit& circuit); // the same; there is one
[[nodiscard]] Current rated_input(const Input& input,
                                  const Conversion& conversion); // I1max: of the plate, or estimated

} // namespace torchside::supply
