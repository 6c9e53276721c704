#include "core/supply/usual.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::supply {
namespace {

constexpr UsualSupply rows[] = {
#include "generated/usual_supplies.inc"
};

bool is_of(const UsualSupply& row, Voltage line) {
    return std::abs(row.line_v - line.in(volt)) < 0.5;
}

} // namespace

std::span<const UsualSupply> usual_supplies(Voltage line) {
    const auto of_line = [&](const UsualSupply& row) { return is_of(row, line); };
    const auto* first = std::find_if(std::begin(rows), std::end(rows), of_line);
    return {first, std::find_if_not(first, std::end(rows), of_line)}; // rows of a voltage stand together
}

std::span<const UsualSupply> all_usual_supplies() {
    return rows;
}

bool is_fed_by(const Circuit& circuit, const UsualSupply& supply) {
    const bool same_wire = circuit.run_mm2 ? circuit.run_mm2 == supply.run_mm2 : circuit.run_awg == supply.run_awg;
    return is_of(supply, circuit.line) && circuit.breaker.in(ampere) == supply.breaker_a &&
           circuit.breaker_rule == supply.rule && same_wire;
}

} // namespace torchside::supply
