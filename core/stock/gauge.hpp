// Sheet gauges 7 to 24. A gauge number means a different thickness in each metal, so a thickness is always said with
// it.
//
//   metal        series                            rule (t in inches, n the gauge)
//   mild steel   Manufacturers' Standard Gauge     t = w / 41.82, w the statutory weight in lb/ft2
//   galvanised   the same sheet with its coat      t = (w + 2.5 oz/ft2) / 41.82, 0.0037 in more
//   stainless    U.S. Standard Gauge, 15 USC 206   t = w / 40, a fraction of an inch
//   aluminium    Brown & Sharpe (AWG)              t = 0.005 * 92^((36 - n) / 39)
//   copper       none: sold by thickness or weight
//
// Rows: assets/data/gauges.json, each with source and status. The tables are as the trade prints them, 4 decimals (the
// U.S. Standard exactly); against the rules they differ by up to 0.00005 in, and by 0.0001 in in the three rows marked
// as printed differently by different tables. Sheet itself is rolled to about 5..10 % of these (common practice, no
// source). Worked example (also a test): 16 ga is 0.0598 / 0.0635 / 0.0625 / 0.0508 in for the four.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"
#include "core/stock/metal.hpp"

namespace torchside::stock {

struct GaugeRow {
    GaugeSeries series;
    int gauge;
    double thickness_in;
    std::string_view source; // key of assets/data/sources.json
    std::string_view status; // seen, calc or memory
};

inline constexpr int thickest_gauge = 7, thinnest_gauge = 24;

/// The metal's rows, thickest first; empty for a metal that is sold by thickness.
[[nodiscard]] std::span<const GaugeRow> gauges(Metal metal);

/// None for such a metal and outside 7..24.
[[nodiscard]] std::optional<Length> gauge_thickness(Metal metal, int gauge);

struct NearGauge {
    int gauge = 0;
    Length thickness{};
    Length difference{}; // the gauge's thickness less the one asked about
};
/// The gauge whose thickness is nearest; none for such a metal, and where it is off by more than half the way to a next gauge
/// (thicker than 7 ga or thinner than 24 ga by more than that).
[[nodiscard]] std::optional<NearGauge> nearest_gauge(Metal metal, Length thickness);

/// A gauge with its thickness, never without: "16 ga, 0.0598 in". Empty when there is none.
[[nodiscard]] std::string print_gauge(Metal metal, int gauge, Units units = {});

} // namespace torchside::stock
