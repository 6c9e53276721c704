// Whether the compressor keeps up with the torch, and how long the receiver helps when it does not.
#pragma once

#include "core/air/air_system.hpp"
#include "core/air/report.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside::air {

/// `units` is of the pressures and flows in the sentences.
/// "74 g", "2.5 fl oz".
[[nodiscard]] std::string water_words(double grams, UnitSystem units);

[[nodiscard]] Report assess(const AirSystem& system, UnitSystem units = UnitSystem::metric);

} // namespace torchside::air
