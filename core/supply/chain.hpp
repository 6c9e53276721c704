// The one-line diagram: panel, breaker, run, cord, machine, torch, the number at each and the weakest of them.
//
// `used` is load over what the point holds: generator at 80 % of its rating, breaker at what its standard lets it hold,
// run and cord at their ampacity, machine at its 10 % tolerance of the line voltage; the torch limits nothing here.
#pragma once

#include "core/supply/load.hpp"

namespace torchside::supply {

[[nodiscard]] Chain chain_of(const Input& input, const Load& load);

} // namespace torchside::supply
