#include "core/supply/load.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

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
    if (circuit.cord_awg)
        line.cord = wire_resistance(*circuit.cord_awg, circuit.cord);
    line.other = circuit.other_load;
    if (circuit.compressor_motor_hp)
        line.other = line.other + motor_current(*circuit.compressor_motor_hp, circuit.line);
    return line;
}

ApparentPower source_power(const Line& line, Current total) {
    return ApparentPower{power_voltage(line.source, line.phases).in(volt)*total.in(ampere), volt_ampere};
}

// So far inside its edge a highest current lies: asked again with the arc's line through that current, its last digits
// come out otherwise, and it must still hold.
constexpr double edge = 1e-12;

// Input current of the machine at which the generator is loaded to `share`.
Current generator_limit(const Line& line, ApparentPower generator, double share) {
    return supply_current(share * generator, line.source, line.phases) - line.other;
}

void judge(Load& load, const Circuit& circuit) {
    load.breaker = breaker_state(circuit.breaker_rule, circuit.breaker, load.total);
    load.verdict = load.breaker.verdict;
    if (!load.draw.delivered) {
        load.verdict = CircuitVerdict::cannot_deliver;
        return;
    }
    if (!circuit.generator)
        return;
    // Compared as currents, so that generator_limit() lies exactly on the edge.
    const bool over = load.draw.current > generator_limit(load.line, *circuit.generator, 1.0);
    const bool tight = load.draw.current > generator_limit(load.line, *circuit.generator, generator_loading);
    const CircuitVerdict own = over    ? CircuitVerdict::cannot_deliver
                               : tight ? CircuitVerdict::may_trip
                                       : CircuitVerdict::holds;
    load.generator_short = own > load.verdict;
    load.verdict = std::max(load.verdict, own);
}

} // namespace

Load solve_load(const Input& input, Current output) {
    const Machine& machine = input.machine;
    Load load;
    load.line = line_of(input);
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

Current output_for(const Input& input, const Load& load, Current limit) {
    const Current drawn = std::max(Current{}, std::min(limit, current_of_most_power(load.line)));
    const double out = load.conversion.share * power_at(load.line, drawn).in(volt_ampere);
    const double offset = input.arc.offset.in(volt);
    if (!(out > 0))
        return Current{};
    const double per_ampere = input.arc.per_ampere.in(ohm);
    const double square = offset * offset + 4 * per_ampere * out;
    const double root = square < 0 ? 0.0 : std::sqrt(square);
    if (offset < 0 && per_ampere > 0) // the same root of the quadratic without taking near equals from each other
        return Current{(root - offset) / (2 * per_ampere), ampere};
    const double below = square < 0 ? 0.0 : offset + root;
    return Current{below > 0 ? 2 * out / below : std::numeric_limits<double>::infinity(), ampere};
}

Current largest_deliverable(const Input& input, const Load& load) {
    Current limit = current_of_most_power(load.line);
    if (input.circuit.generator)
        limit = std::min(limit, generator_limit(load.line, *input.circuit.generator, 1.0));
    return std::max(Current{}, output_for(input, load, limit));
}

std::optional<Current> highest_holding(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    Current limit = hold_multiple(circuit.breaker_rule) * circuit.breaker - load.line.other;
    if (circuit.generator)
        limit = std::min(limit, generator_limit(load.line, *circuit.generator, generator_loading));
    if (limit <= Current{} || current_of_most_power(load.line) <= Current{})
        return {};
    Current found = output_for(input, load, limit);
    if (found.in(ampere) == std::numeric_limits<double>::infinity())
        return found;
    // The closed form may land a few units in the last place past the edge; step back until its own verdict holds.
    for (double step = 1e-16; step < 1e-9; step *= 2) {
        if (solve_load(input, found).verdict == CircuitVerdict::holds)
            return (1 - edge) * found;
        found = (1 - step) * found;
    }
    return {};
}

} // namespace torchside::supply
