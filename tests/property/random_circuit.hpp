// Random circuits with every key of the circuit somewhere in its range; the same seed gives the same ones everywhere.
#pragma once

#include "core/supply/assess.hpp"
#include "tests/property/rng.hpp"

namespace torchside::test {

inline supply::Input random_input(Rng& rng) {
    constexpr int gauges[] = {18, 16, 14, 12, 10, 8, 6, 4, 2};
    constexpr int run_gauges[] = {14, 12, 10, 8, 6, 4, 3, 2};
    supply::Input input;
    constexpr double volts[] = {120, 208, 230, 240, 400};
    input.circuit.line = Voltage{volts[rng.below(5)], volt};
    input.circuit.breaker = Current{rng.uniform(10, 100), ampere};
    input.circuit.breaker_rule = static_cast<supply::BreakerRule>(rng.below(4));
    input.circuit.run_awg = run_gauges[rng.below(8)];
    input.circuit.run = Length{rng.uniform(0, 100), metre};
    if (rng.chance(0.5)) {
        input.circuit.cord_awg = gauges[rng.below(9)];
        input.circuit.cord = Length{rng.uniform(0, 50), metre};
    }
    if (rng.chance(0.3)) {
        input.circuit.other_load = Current{rng.uniform(0, 40), ampere};
    }
    if (rng.chance(0.2)) {
        input.circuit.compressor_motor_hp = rng.uniform(0.5, 10);
    }
    if (rng.chance(0.2)) {
        input.circuit.generator = ApparentPower{rng.by_factor(500, 200000), volt_ampere};
    }
    if (rng.chance(0.2)) {
        input.circuit.run_mm2 = rng.uniform(1, 70);
    }
    if (rng.chance(0.2)) {
        input.circuit.cord_mm2 = rng.uniform(0.5, 16);
    }
    if (rng.chance(0.15)) {
        input.circuit.plug = static_cast<supply::Plug>(rng.below(15));
    }
    input.circuit.marked_75c = rng.chance(0.5);
    input.circuit.ambient_c = rng.chance(0.5) ? 30 : rng.uniform(-20, 55);
    input.country = static_cast<Country>(rng.below(4));
    input.circuit.dedicated = rng.chance(0.5);
    input.machine.phases = rng.chance(0.3) ? 3 : 1;
    input.machine.efficiency = rng.uniform(0.5, 0.98);
    input.machine.power_factor = rng.uniform(0.4, 1);
    input.machine.power_factor_corrected = rng.chance(0.3);
    input.machine.duty_cycle = rng.uniform(0.05, 1);
    input.machine.max_current = Current{rng.uniform(20, 200), ampere};
    input.machine.duty_current = input.machine.max_current;
    input.machine.idle_input = Current{rng.uniform(0, 5), ampere};
    if (rng.chance(0.2)) {
        input.machine.plate_i1max = Current{rng.uniform(1, 300), ampere};
    }
    if (rng.chance(0.2)) {
        input.machine.plate_i1eff = Current{rng.uniform(1, 300), ampere};
    }
    input.output = Current{rng.uniform(5, 200), ampere};
    input.arc = {Voltage{rng.uniform(60, 140), volt}, Resistance{rng.uniform(0, 1.5), ohm}};
    return input;
}

} // namespace torchside::test
