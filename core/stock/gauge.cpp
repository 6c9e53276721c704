#include "core/stock/gauge.hpp"

#include <cstddef>

#include "core/quantity/print.hpp"
#include "core/stock/inches.hpp"

namespace torchside::stock {

namespace {

constexpr GaugeRow rows[] = {
#include "generated/gauges.inc"
};
constexpr std::size_t per_metal = thinnest_gauge - thickest_gauge + 1;

/// gauges() and gauge_thickness() find a row by its place: a series' rows stand together, in the order of the gauges.
constexpr bool in_order() {
    if (std::size(rows) % per_metal != 0) {
        return false;
    }
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        const std::size_t nth = i % per_metal;
        if (rows[i].series != rows[i - nth].series || rows[i].gauge != thickest_gauge + static_cast<int>(nth) ||
            (nth > 0 && rows[i].thickness_in >= rows[i - 1].thickness_in)) {
            return false;
        }
    }
    return true;
}
static_assert(in_order(), "assets/data/gauges.json: rows of one series together, gauge 7 to 24, thinner each time");

double distance(Length a, Length b) {
    const double d = (a - b).in(mm);
    return d < 0 ? -d : d;
}

} // namespace

std::span<const GaugeRow> gauges(Metal metal) {
    for (std::size_t i = 0; i < std::size(rows); i += per_metal) {
        if (rows[i].series == metal_info(metal).gauges) {
            return std::span{rows}.subspan(i, per_metal);
        }
    }
    return {};
}

std::optional<Length> gauge_thickness(Metal metal, int gauge) {
    const std::span<const GaugeRow> series = gauges(metal);
    if (series.empty() || gauge < thickest_gauge || gauge > thinnest_gauge) {
        return {};
    }
    return table_inches(series[static_cast<std::size_t>(gauge - thickest_gauge)].thickness_in);
}

std::optional<NearGauge> nearest_gauge(Metal metal, Length thickness) {
    const std::span<const GaugeRow> series = gauges(metal);
    if (series.empty()) {
        return {};
    }
    std::size_t best = 0;
    for (std::size_t i = 1; i < series.size(); ++i) {
        if (distance({series[i].thickness_in, inch}, thickness) <
            distance({series[best].thickness_in, inch}, thickness)) {
            best = i;
        }
    }
    const Length found = table_inches(series[best].thickness_in);
    // Between two gauges the nearest is never further off than half the gap; past either end of the series it may be.
    const std::size_t last = series.size() - 1;
    const bool past_end = (best == 0 && thickness > found) || (best == last && thickness < found);
    if (past_end && distance(found, thickness) >
                        0.5 * distance(found, table_inches(series[best == 0 ? 1 : last - 1].thickness_in))) {
        return {};
    }
    return NearGauge{series[best].gauge, found, found - thickness};
}

std::string print_gauge(Metal metal, int gauge, Units units) {
    const std::optional<Length> t = gauge_thickness(metal, gauge);
    return t ? print_fixed(gauge, 0) + " ga, " + print_fixed(t->in(inch), 4, units) + " in" : std::string{};
}

} // namespace torchside::stock
