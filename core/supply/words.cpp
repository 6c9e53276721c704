#include "core/supply/words.hpp"

#include "generated/words/circuit.hpp"

namespace torchside::supply {

namespace {

Text section_words(double mm2) {
    return words::circuit::Section{.section = words::section(mm2)};
}

} // namespace

Text gauge(int awg) {
    return words::circuit::Awg{.number = awg};
}

Text run_words(const Circuit& circuit) {
    return circuit.run_mm2 ? section_words(*circuit.run_mm2) : gauge(circuit.run_awg);
}

Text cord_words(const Circuit& circuit) {
    return circuit.cord_mm2 ? section_words(*circuit.cord_mm2) : gauge(*circuit.cord_awg);
}

Current rated_input(const Input& input, const Conversion& conversion) {
    const Machine& machine = input.machine;
    if (conversion.basis == PowerBasis::nameplate) {
        return *machine.plate_i1max;
    }
    return supply_current(
        apparent_power(machine.max_current, rated_load_voltage(machine.max_current), conversion.share),
        input.circuit.line, machine.phases);
}

} // namespace torchside::supply
