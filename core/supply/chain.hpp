// The one-line diagram: panel, breaker, run, cord, machine, torch, the number at each and the weakest of them.
//
// `used` is load over what the point may carry: generator 80 % of its rating, breaker its rating, run and cord their
// ampacity, a plug its own where that is less than the cord's, machine at its 10 % tolerance of the line voltage; the
// torch limits nothing here.
#pragma once

#include "core/supply/load.hpp"

namespace torchside::supply {

[[nodiscard]] Chain chain_of(const Input& input, const Load& load);

} // namespace torchside::supply
