// The circuit that feeds the machine, as the user describes it. Ranges and error texts: core/schema/schema*.cpp.
#pragma once

#include <optional>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

enum class BreakerRule { ul489, iec60898b, iec60898c, iec60898d };

/// Plug and socket at the outlet, by number or by the name of the trade; what each may carry: assets/data/plugs.json.
enum class Plug {
    nema_5_15,
    nema_5_20,
    nema_l5_30,
    nema_6_20,
    nema_6_30,
    nema_6_50,
    nema_14_30,
    nema_14_50,
    uk_13,
    schuko_16,
    blue_16,
    blue_32,
    red_16,
    red_32,
    red_63
};

struct Circuit {
    Voltage line{240, volt};     // 100..480 V; 120, 208, 230, 240 and 400 are the usual ones
    Current breaker{30, ampere}; // 10..100 A
    BreakerRule breaker_rule = BreakerRule::ul489;
    int run_awg = 10;                            // copper of the branch run, 14..2 AWG
    std::optional<double> run_mm2{};             // the same by cross-section, 1..70 mm2; overrides run_awg
    Length run{15, metre};                       // panel to outlet, one way, 0..200 m
    bool marked_75c = false;                     // cable and both its terminals are marked for 75 C; by gauge only
    double ambient_c = 30.0;                     // air around the wires, -20..55 C
    std::optional<Plug> plug{};                  // none: wired in, or not known
    std::optional<int> cord_awg{};               // extension cord, 18..2 AWG; none when absent
    std::optional<double> cord_mm2{};            // the same by cross-section, 0.5..16 mm2; overrides cord_awg
    Length cord{0, metre};                       // 0..100 m
    Current other_load{0, ampere};               // whatever else runs on this circuit, 0..100 A
    std::optional<double> compressor_motor_hp{}; // the compressor's motor, when it is on this circuit too, 0.5..10 hp
    std::optional<ApparentPower> generator{};    // fed by a generator of this many VA instead of the panel
    bool dedicated = false; // the circuit feeds this machine alone, wired for it (NEC Article 630 allowance)

    friend bool operator==(const Circuit&, const Circuit&) = default;
};

} // namespace torchside::supply
