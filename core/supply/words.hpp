// Short words for the sentences of core/supply.
#pragma once

#include <string>

#include "core/quantity/unit_system.hpp"
#include "core/supply/load.hpp"

namespace torchside::supply {

[[nodiscard]] std::string amps(Current current);                     // "45.9 A"
[[nodiscard]] std::string section_words(double section_mm2);         // "2.5 mm²"
[[nodiscard]] std::string run_words(const Circuit& circuit);         // "8 AWG"
[[nodiscard]] std::string cord_words(const Circuit& circuit);        // "14 AWG", "1.5 mm²"; there is one
[[nodiscard]] std::string distance(Length length, UnitSystem units); // "15 m", "50 ft"
[[nodiscard]] std::string kva(ApparentPower power);                  // "10.4 kVA"
[[nodiscard]] Current rated_input(const Input& input,
                                  const Conversion& conversion); // I1max: of the plate, or estimated

} // namespace torchside::supply
