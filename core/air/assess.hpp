// Whether the compressor keeps up with the torch, and how long the receiver helps when it does not.
#pragma once

#include "core/air/air_system.hpp"
#include "core/air/report.hpp"

namespace torchside::air {

[[nodiscard]] Report assess(const AirSystem& system);

} // namespace torchside::air
