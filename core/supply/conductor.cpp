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
    double mm2, two, three;
};
struct MetricCord {
    double mm2, two, three;
    std::string_view status;
};
struct Ambient {
    double up_to_c, c60, c70, c75;
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
constexpr MetricCord metric_cords[] = {
#include "generated/metric_cords.inc"
};
constexpr Ambient ambients[] = {
// rising
#include "generated/ambient_factors.inc"
};

constexpr double copper_ohm_mm2_m = 0.0225;

// Rows run from thin to thick. The last one that is not thicker than asked; the first when all are.
template <class Row, std::size_t n>
const Row& row_of(const Row (&rows)[n], int awg) {
    const Row* found = rows;
    for (const Row& row : rows) {
        if (row.awg >= awg) {
            found = &row;
        }
    }
    return *found;
}

// The thickest row that is not thicker than the section; none below the first.
template <class Row, std::size_t n>
const Row* section_of(const Row (&rows)[n], double section) {
    const Row* found = nullptr;
    for (const Row& row : rows) {
        if (row.mm2 <= section) {
            found = &row;
        }
    }
    return found;
}

double of(const Wire& wire, Column column) {
    return column == Column::c60 ? wire.c60 : wire.c75;
}

double device(const Wire& wire, Column column, double factor) {
    return wire.device_limit ? std::min(*wire.device_limit, factor * of(wire, column)) : factor * of(wire, column);
}

template <class Row>
double carries(const Row& row, int phases) {
    return phases == 3 ? row.three : row.two;
}

template <class Row, std::size_t n>
std::optional<double> least_section(const Row (&rows)[n], double load, int phases, double factor) {
    for (const Row& row : rows) {
        if (factor * carries(row, phases) >= load) {
            return row.mm2;
        }
    }
    return {};
}

} // namespace

Resistance wire_resistance(int awg, Length one_way) {
    return Resistance{row_of(conductors, awg).ohm_per_kft * one_way.in(foot) / 1000, ohm};
}

Resistance wire_resistance_mm2(double section, Length one_way) {
    return Resistance{copper_ohm_mm2_m * one_way.in(metre) / section, ohm};
}

double ambient_factor(Column column, double ambient_c) {
    const Ambient* found = std::find_if(std::begin(ambients), std::prev(std::end(ambients)),
                                        [&](const Ambient& row) { return ambient_c <= row.up_to_c; });
    return column == Column::c60 ? found->c60 : column == Column::c70 ? found->c70 : found->c75;
}

Ampacity ampacity(int awg) {
    const Wire& wire = row_of(wires, awg);
    return {Current{wire.c60, ampere}, Current{wire.c75, ampere}, Current{device(wire, Column::c60, 1), ampere},
            Current{device(wire, Column::c75, 1), ampere}};
}

Current ampacity_mm2(double section, int phases) {
    const MetricWire* row = section_of(metric_wires, section);
    return Current{row ? carries(*row, phases) : 0.0, ampere};
}

Current cord_ampacity(int awg, int phases) {
    return Current{carries(row_of(cords, awg), phases), ampere};
}

Current cord_ampacity_mm2(double section, int phases) {
    const MetricCord* row = section_of(metric_cords, section);
    return Current{row ? carries(*row, phases) : 0.0, ampere};
}

bool cord_from_memory(int awg, int phases) {
    return phases == 3 || row_of(cords, awg).two_status != "seen";
}

bool cord_from_memory_mm2(double section) {
    const MetricCord* row = section_of(metric_cords, section);
    return row == nullptr || row->status != "seen";
}

std::optional<int> least_run(Current breaker, Current load, Column column, double factor) {
    for (const Wire& wire : wires) {
        if (device(wire, column, factor) >= breaker.in(ampere) && factor * of(wire, column) >= load.in(ampere)) {
            return wire.awg;
        }
    }
    return {};
}

std::optional<int> least_run_for(Current load, Column column, double factor) {
    for (const Wire& wire : wires) {
        if (factor * of(wire, column) >= load.in(ampere)) {
            return wire.awg;
        }
    }
    return {};
}

std::optional<double> least_run_mm2(Current load, int phases, double factor) {
    return least_section(metric_wires, load.in(ampere), phases, factor);
}

std::optional<int> least_cord(Current load, int phases, double factor) {
    for (const Cord& cord : cords) {
        if (factor * carries(cord, phases) >= load.in(ampere)) {
            return cord.awg;
        }
    }
    return {};
}

std::optional<double> least_cord_mm2(Current load, int phases, double factor) {
    return least_section(metric_cords, load.in(ampere), phases, factor);
}

} // namespace torchside::supply
