// The normal distribution turned round.
//
// What       x with Phi(x) = p.
// Formula    Newton's method with Halley's correction on Phi(x) - p from a rough start (Abramowitz & Stegun 26.2.23,
//            from memory, error 4.5e-4), three steps.
// Source     own; any table of the normal distribution checks it (0.9 -> 1.2815515655446004).
// Range      1e-300 <= p <= 1 - 1e-16: error below 1e-13.
// Edges      p outside (0, 1) is taken as the nearest end of that range.
// Example    p = 0.9: 1.2815515655446; p = 0.00135: -2.99998.
#pragma once

namespace torchside::tune {

[[nodiscard]] double normal_quantile(double p);

} // namespace torchside::tune
