// The circuit that feeds the machine, as the user describes it. Ranges and error texts: core/document/schema*.cpp.
#pragma once

#include <optional>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

enum class BreakerRule { ul489, iec60898b, iec60898c, iec60898d };

struct Circuit {
    Voltage line{240, volt};     // 100..480 V; 120, 208, 230, 240 and 400 are the usual ones
    Current breaker{30, ampere}; // 10..100 A
    BreakerRule breaker_rule = BreakerRule::ul489;
    int run_awg = 10;                            // copper of the branch run, 14..2 AWG
    std::optional<double> run_mm2{};             // the same by cross-section, 1..70 mm2; overrides run_awg
    Length run{15, metre};                       // panel to outlet, one way, 0..200 m
    std::optional<int> cord_awg{};               // extension cord, 18..2 AWG; none when absent
    Length cord{0, metre};                       // 0..100 m
    Current other_load{0, ampere};               // whatever else runs on this circuit, 0..100 A
    std::optional<double> compressor_motor_hp{}; // the compressor's motor, when it is on this circuit too, 0.5..10 hp
    std::optional<ApparentPower> generator{};    // fed by a generator of this many VA instead of the panel
    bool dedicated = false; // the circuit feeds this machine alone, wired for it (NEC Article 630 allowance)

    friend bool operator==(const Circuit&, const Circuit&) = default;
};

} // namespace torchside::supply
