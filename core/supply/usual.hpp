// What a supply of a voltage usually is: its breaker, wiring and phases, to take over together when a voltage is chosen.
//
// Source     assets/data/usual_supplies.json: common practice, no source. A suggestion, never a check: checks.hpp judges
//            whatever is entered.
// Example    120 V: 20 A on 12 AWG first, then 15 A on 14 AWG; 277 V: none.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/gear/machine.hpp"
#include "core/supply/circuit.hpp"

namespace torchside::supply {

struct UsualSupply {
    double line_v = 0.0;
    double breaker_a = 0.0;
    BreakerRule rule = BreakerRule::ul489;
    std::optional<int> run_awg{}; // one of the two
    std::optional<double> run_mm2{};
    int phases = 1;

    friend bool operator==(const UsualSupply&, const UsualSupply&) = default;
};

/// Those of a voltage, the most usual first; none for a voltage that is not usual.
[[nodiscard]] std::span<const UsualSupply> usual_supplies(Voltage line);

/// All of them, those of a voltage together.
[[nodiscard]] std::span<const UsualSupply> all_usual_supplies();

/// Breaker and wiring are already as this row says.
[[nodiscard]] bool is_fed_by(const Circuit& circuit, const UsualSupply& supply);

} // namespace torchside::supply
