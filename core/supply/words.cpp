#include "core/supply/words.hpp"

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"

namespace torchside::supply {

std::string amps(Current current) {
    return print(current).text();
}

std::string section_words(double section_mm2) {
    return joined({print_trimmed(section_mm2, 2), " mm²"});
}

std::string run_words(const Circuit& circuit) {
    return circuit.run_mm2 ? section_words(*circuit.run_mm2) : joined({std::to_string(circuit.run_awg), " AWG"});
}

std::string cord_words(const Circuit& circuit) {
    return circuit.cord_mm2 ? section_words(*circuit.cord_mm2) : joined({std::to_string(*circuit.cord_awg), " AWG"});
}

std::string distance(Length length, UnitSystem units) {
    if (units == UnitSystem::metric)
        return joined({print_trimmed(length.in(metre), 1), " m"});
    return joined({print_trimmed(length.in(foot), 0), " ft"});
}

std::string kva(ApparentPower power) {
    return joined({print_trimmed(power.in(volt_ampere) / 1000, 1), " kVA"});
}

Current rated_input(const Input& input, const Conversion& conversion) {
    const Machine& machine = input.machine;
    if (conversion.basis == PowerBasis::nameplate)
        return *machine.plate_i1max;
    return supply_current(
        apparent_power(machine.max_current, rated_load_voltage(machine.max_current), conversion.share),
        input.circuit.line, machine.phases);
}

} // namespace torchside::supply
