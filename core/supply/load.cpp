#include "core/supply/load.hpp"

#include <algorithm>

#include "core/supply/conductor.hpp"
#include "core/supply/motor.hpp"

namespace torchside::supply {
namespace {

Line line_of(const Input& input) {
    const Circuit& circuit = input.circuit;
    Line line;
    line.source = circuit.line;
    line.phases = input.machine.phases;
    line.run = circuit.run_mm2 ? wire_resistance_mm2(*circuit.run_mm2, circuit.run)
                               : wire_resistance(circuit.run_awg, circuit.run);
    if (circuit.cord_mm2) {
        line.cord = wire_resistance_mm2(*circuit.cord_mm2, circuit.cord);
    } else if (circuit.cord_awg) {
        line.cord = wire_resistance(*circuit.cord_awg, circuit.cord);
    }
    line.other = circuit.other_load;
    return line;
}

ApparentPower source_power(const Line& line, Current total) {
    return ApparentPower{power_voltage(line.source, line.phases).in(volt)*total.in(ampere), volt_ampere};
}

// Input current of the machine at which the generator is loaded to `share`.
Current generator_limit(const Line& line, ApparentPower generator, double share) {
    return supply_current(share * generator, line.source, line.phases) - line.other;
}

void judge(Load& load, const Circuit& circuit) {
    load.breaker = breaker_state(circuit.breaker_rule, circuit.breaker, load.total);
    load.verdict = load.breaker.verdict;
    const auto over = [&](double share) {
        return circuit.generator && load.draw.current > generator_limit(load.line, *circuit.generator, share);
    };
    load.generator_within = !over(generator_loading);
    if (!load.draw.delivered) {
        load.verdict = CircuitVerdict::cannot_deliver;
        return;
    }
    const CircuitVerdict own = over(1.0)               ? CircuitVerdict::cannot_deliver
                               : load.generator_within ? CircuitVerdict::holds
                                                       : CircuitVerdict::may_trip;
    load.generator_short = own > load.verdict;
    load.verdict = std::max(load.verdict, own);
}

} // namespace

Load solve_load(const Input& input, Current output) {
    const Machine& machine = input.machine;
    Load load;
    load.line = line_of(input);
    if (input.circuit.compressor_motor_hp) {
        load.motor = motor_current(*input.circuit.compressor_motor_hp, input.circuit.line);
    }
    load.line.other = load.line.other + load.motor;
    load.conversion = conversion(machine, input.circuit.line);
    load.machine = std::max(ApparentPower{}, apparent_power(output, input.arc.at(output), load.conversion.share));
    load.draw = draw(load.line, load.machine);
    load.rated = supply_current(apparent_power(output, rated_load_voltage(output), load.conversion.share),
                                input.circuit.line, machine.phases);
    load.asked =
        load.draw.delivered ? load.draw.current : supply_current(load.machine, input.circuit.line, machine.phases);
    load.total = load.draw.current + load.line.other;
    load.source = source_power(load.line, load.total);
    load.duty = duty_at(machine, output);
    load.effective = effective_current(load.draw.current, machine.idle_input, load.duty);
    if (machine.plate_i1eff) {
        load.effective = std::min(*machine.plate_i1eff, load.draw.current);
        load.effective_from_plate = true;
    }
    judge(load, input.circuit);
    return load;
}

} // namespace torchside::supply
