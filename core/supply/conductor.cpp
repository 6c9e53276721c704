#include "core/supply/conductor.hpp"

#include <algorithm>
#include <iterator>

namespace torchside::supply {
namespace {

struct Conductor {
    int awg;
    int cmil;
    double ohm_per_kft;
};
struct Wire {
    int awg;
    double c60, c75, c90;
    std::optional<double> device_limit;
};
struct Cord {
    int awg;
    double two, three;
    std::string_view two_status;
};
struct MetricWire {
    double mm2, ampacity;
};

constexpr Conductor conductors[] = {
#include "generated/conductors.inc"
};
constexpr Wire wires[] = {
#include "generated/ampacity.inc"
};
constexpr Cord cords[] = {
#include "generated/cords.inc"
};
constexpr MetricWire metric_wires[] = {
#include "generated/metric_wires.inc"
};

constexpr double copper_ohm_mm2_m = 0.0214;

// Rows run from thin to thick. The last one that is not thicker than asked; the first when all are.
template <class Row, std::size_t n>
const Row& row_of(const Row (&rows)[n], int awg) {
    const Row* found = rows;
    for (const Row& row : rows)
        if (row.awg >= awg)
            found = &row;
    return *found;
}

double of(const Wire& wire, Column column) {
    return column == Column::c60 ? wire.c60 : wire.c75;
}

double device(const Wire& wire, Column column) {
    return wire.device_limit ? std::min(*wire.device_limit, of(wire, column)) : of(wire, column);
}

double carries(const Cord& cord, int phases) {
    return phases == 3 ? cord.three : cord.two;
}

} // namespace

Resistance wire_resistance(int awg, Length one_way) {
    return Resistance{row_of(conductors, awg).ohm_per_kft * one_way.in(foot) / 1000, ohm};
}

Resistance wire_resistance_mm2(double section, Length one_way) {
    return Resistance{copper_ohm_mm2_m * one_way.in(metre) / section, ohm};
}

Ampacity ampacity(int awg) {
    const Wire& wire = row_of(wires, awg);
    return {Current{wire.c60, ampere}, Current{wire.c75, ampere}, Current{device(wire, Column::c60), ampere},
            Current{device(wire, Column::c75), ampere}};
}

Current ampacity_mm2(double section) {
    Current found{};
    for (const MetricWire& wire : metric_wires)
        if (wire.mm2 <= section)
            found = Current{wire.ampacity, ampere};
    return found;
}

Current cord_ampacity(int awg, int phases) {
    return Current{carries(row_of(cords, awg), phases), ampere};
}

bool cord_from_memory(int awg, int phases) {
    return phases == 3 || row_of(cords, awg).two_status != "seen";
}

std::optional<int> least_run(Current breaker, Current load, Column column) {
    for (const Wire& wire : wires)
        if (device(wire, column) >= breaker.in(ampere) && of(wire, column) >= load.in(ampere))
            return wire.awg;
    return {};
}

std::optional<int> least_run_for(Current load, Column column) {
    for (const Wire& wire : wires)
        if (of(wire, column) >= load.in(ampere))
            return wire.awg;
    return {};
}

std::optional<double> least_run_mm2(Current load) {
    for (const MetricWire& wire : metric_wires)
        if (wire.ampacity >= load.in(ampere))
            return wire.mm2;
    return {};
}

std::optional<int> least_cord(Current load, int phases) {
    for (const Cord& cord : cords)
        if (carries(cord, phases) >= load.in(ampere))
            return cord.awg;
    return {};
}

} // namespace torchside::supply
