#include "core/stock/thickness.hpp"

#include "core/quantity/print.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/inches.hpp"

namespace torchside::stock {

namespace {

struct ChipRow {
    Metal metal;
    UnitSystem units;
    double thickness;
    std::string_view label;
};
constexpr ChipRow chip_rows[] = {
#include "generated/thicknesses.inc"
};

constexpr bool all_have_chips() {
    for (const Metal metal : all_metals) {
        bool metric = false, inches = false;
        for (const ChipRow& row : chip_rows) {
            (row.units == UnitSystem::metric ? metric : inches) |= row.metal == metal;
        }
        if (!metric || !inches) {
            return false;
        }
    }
    return true;
}
static_assert(all_have_chips(), "assets/data/metals.json: thicknesses of every metal in both units");

/// Nearer than the last digit of any table.
bool same(Length a, Length b) {
    const double apart = (a - b).in(inch);
    return apart < 0.00006 && apart > -0.00006;
}

} // namespace

Reading<Length> read_thickness(std::string_view text, Metal metal, Units bare) {
    Reading<Length> reading = read_length_or_gauge(text, bare);
    const Gauge* gauge = reading.gauge();
    if (!gauge) {
        return reading;
    }
    if (gauges(metal).empty()) {
        return Refusal{Unread::sold_by_thickness};
    }
    if (const std::optional<Length> thickness = gauge_thickness(metal, gauge->number)) {
        return Answer<Length>{*thickness, print_gauge(metal, gauge->number, bare)};
    }
    return Refusal{Unread::no_such_gauge};
}

std::vector<Chip> chips(Metal metal, UnitSystem units) {
    std::vector<Chip> out;
    for (const ChipRow& row : chip_rows) {
        if (row.metal == metal && row.units == units) {
            out.push_back(
                {units == UnitSystem::metric ? Length{row.thickness, mm} : table_inches(row.thickness), row.label});
        }
    }
    return out;
}

Printed plate_name(Metal metal, Length thickness, Units units) {
    if (units.metric()) {
        return print(thickness, units);
    }
    const auto in_gauge = [](int gauge) { return Printed{print_fixed(gauge, 0), "ga"}; };
    const std::optional<NearGauge> near = nearest_gauge(metal, thickness);
    const bool gauge = near && same(near->thickness, thickness);
    const std::optional<InchFraction> fraction = inch_fraction(thickness);
    if (!fraction || !fraction->exact) {
        return gauge ? in_gauge(near->gauge) : Printed{print_fixed(thickness.in(inch), 3, units), "in"};
    }
    for (const ChipRow& row : chip_rows) {
        if (gauge && row.metal == metal && row.units == UnitSystem::inch &&
            same(table_inches(row.thickness), thickness) && row.label.ends_with("ga")) {
            return in_gauge(near->gauge);
        }
    }
    return {fraction->text.substr(0, fraction->text.size() - 3), "in"}; // "1/4 in"
}

} // namespace torchside::stock
