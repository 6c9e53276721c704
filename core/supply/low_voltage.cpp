#include "core/supply/low_voltage.hpp"

#include <algorithm>

#include "core/supply/intermittent.hpp"

namespace torchside::supply {

bool is_low(Voltage line) {
    return line.in(volt) < intermittent_rules().low_line_v;
}

Rating rating_of(const Machine& machine, Voltage line) {
    if (!is_low(line)) {
        return Rating::full;
    }
    const LowVoltage& low = machine.low_voltage;
    return !low.max_current ? Rating::assumed : low.i1max ? Rating::plate : Rating::entered;
}

Machine machine_on(const Machine& machine, Voltage line) {
    Machine m = machine;
    if (!is_low(line)) {
        return m;
    }
    m.plate_i1max.reset();
    m.plate_i1eff.reset();
    const LowVoltage& low = machine.low_voltage;
    if (low.max_current) {
        m.max_current = std::min(m.max_current, *low.max_current);
        m.min_current = std::min(m.min_current, m.max_current);
        m.duty_cycle = low.duty_cycle.value_or(machine.duty_cycle);
        m.duty_current = low.duty_current.value_or(m.max_current);
        m.plate_i1max = low.i1max;
        m.plate_i1eff = low.i1eff;
    }
    return m;
}

} // namespace torchside::supply
