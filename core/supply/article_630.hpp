// NEC Article 630: a circuit that was wired for one machine alone may be sized by its effective current.
//
// What       Conductor ampacity for one machine, largest overcurrent device.
// Formula    one machine   I1eff of the plate; without it rated primary current x multiplier (Table 630.11(A))
//            device        at most 200 % of I1max for the machine, 200 % of its ampacity for the conductor; the next
//                          larger standard rating is permitted where the result is none
// Source     NFPA 70, text of 2008, 630.11 and 630.12, seen in reproductions; that it stands in later editions, and the
//            fallback of 630.12(A), from memory. assets/data/welder_multipliers.json, standard_breakers.json.
// Range      duty above 0, to 1. Edges: between two rows the higher multiplier; at and below 20 % the last row.
// Example    40 A at 50 %: 28.4 A. 15 %: 0.45. I1max 28.57 A: 57.1 A, standard rating not above it 50 A, permitted 60
// A. It never applies on a general-purpose receptacle: there 210.23 and 240.4(D) hold.
#pragma once

#include <optional>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

[[nodiscard]] double welder_multiplier(double duty, bool motor_generator = false);

struct DeviceLimit {
    Current limit{};                    // 200 %
    std::optional<Current> standard{};  // largest standard rating not above it
    std::optional<Current> permitted{}; // the same, or the next larger one where the limit is none; to 100 A
};
[[nodiscard]] DeviceLimit welder_device(Current i1max_or_ampacity);

} // namespace torchside::supply
