#include "core/supply/machine_input.hpp"

#include <algorithm>
#include <cmath>

#include "core/supply/line.hpp"

namespace torchside::supply {

Voltage rated_load_voltage(Current output) {
    const double i = output.in(ampere);
    if (i <= 165) {
        return Voltage{80 + 0.4 * i, volt};
    }
    if (i <= 500) {
        return Voltage{130 + 0.1 * i, volt};
    }
    return Voltage{180, volt};
}

Conversion conversion(const Machine& machine, Voltage line) {
    Conversion found;
    found.basis = machine.power_factor_corrected ? PowerBasis::corrected : PowerBasis::estimate;
    found.share = machine.efficiency * (machine.power_factor_corrected ? corrected_power_factor : machine.power_factor);
    if (!machine.plate_i1max) {
        return found;
    }
    const double out = rated_load_voltage(machine.max_current).in(volt)*machine.max_current.in(ampere);
    const double in = power_voltage(line, machine.phases).in(volt)*machine.plate_i1max->in(ampere);
    found.plate_share = out / in;
    if (found.plate_share > 1) {
        found.basis = PowerBasis::plate_refuted;
        return found;
    }
    found.share = found.plate_share;
    found.basis = PowerBasis::nameplate;
    return found;
}

ApparentPower apparent_power(Current output, Voltage arc, double share) {
    return ApparentPower{output.in(ampere)*arc.in(volt) / share, volt_ampere};
}

Current supply_current(ApparentPower power, Voltage line, int phases) {
    return Current{power.in(volt_ampere) / power_voltage(line, phases).in(volt), ampere};
}

double duty_at(const Machine& machine, Current output) {
    const double heating = machine.duty_current / output;
    return std::min(1.0, machine.duty_cycle * heating * heating);
}

Current effective_current(Current input, Current idle, double duty) {
    const double on = input.in(ampere);
    const double off = std::min(idle, input).in(ampere);
    return Current{std::sqrt(on * on * duty + off * off * (1 - duty)), ampere};
}

} // namespace torchside::supply
