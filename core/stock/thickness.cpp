#include "core/stock/thickness.hpp"

#include "core/quantity/print.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/inches.hpp"
#include "core/stock/properties.hpp"

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
static_assert(all_have_chips(), "assets/data/thicknesses.json: thicknesses of every metal in both units");

std::string gauge_word(int gauge) {
    return print_fixed(gauge, 0) + " ga";
}

/// Nearer than the last digit of any table.
bool same(Length a, Length b) {
    const double apart = (a - b).in(inch);
    return apart < 0.00006 && apart > -0.00006;
}

} // namespace

Reading<Length> read_thickness(std::string_view text, std::optional<Metal> metal, UnitSystem bare) {
    Reading<Length> reading = read_length_or_gauge(text, bare);
    const Gauge* gauge = reading.gauge();
    if (!gauge) {
        return reading;
    }
    const int n = gauge->number;
    if (metal && gauges(*metal).empty()) {
        return Refusal{std::string{name(*metal)} +
                       " is sold by thickness, not by gauge; type the thickness, such as 1.5 mm or 1/16 in"};
    }
    if (n < thickest_gauge || n > thinnest_gauge) {
        return Refusal{gauge_word(n) + " is not in the table; 7 ga to 24 ga are accepted, or the thickness itself"};
    }
    if (metal) {
        return Answer<Length>{*gauge_thickness(*metal, n), print_gauge(*metal, n)};
    }
    Question<Length> question{gauge_word(n) + " is a different thickness in each metal; which is it?", {}};
    for (const Metal m : all_metals) {
        if (const std::optional<Length> t = gauge_thickness(m, n)) {
            question.answers.push_back({*t, std::string{name(m)} + ", " + print_gauge(m, n)});
        }
    }
    return question;
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

Printed plate_name(Metal metal, Length thickness, UnitSystem units) {
    if (units == UnitSystem::metric) {
        return print(thickness, units);
    }
    const auto in_gauge = [](int gauge) { return Printed{print_fixed(gauge, 0), "ga"}; };
    const std::optional<NearGauge> near = nearest_gauge(metal, thickness);
    const bool gauge = near && same(near->thickness, thickness);
    const std::optional<InchFraction> fraction = inch_fraction(thickness);
    if (!fraction || !fraction->exact) {
        return gauge ? in_gauge(near->gauge) : Printed{print_fixed(thickness.in(inch), 3), "in"};
    }
    for (const ChipRow& row : chip_rows) {
        if (gauge && row.metal == metal && row.units == units && same(table_inches(row.thickness), thickness) &&
            row.label.ends_with("ga")) {
            return in_gauge(near->gauge);
        }
    }
    return {fraction->text.substr(0, fraction->text.size() - 3), "in"}; // "1/4 in"
}

} // namespace torchside::stock
