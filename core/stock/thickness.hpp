// How thick the plate is: typed, or picked from what is sold.
#pragma once

#include <string_view>
#include <vector>

#include "core/quantity/print.hpp"
#include "core/quantity/read.hpp"
#include "core/stock/metal.hpp"

namespace torchside::stock {

/// As read_length_or_gauge, with the gauge looked up: "16 ga" in mild steel is 0.0598 in, as "16 ga, 0.0598 in". A Refusal for a metal
/// sold by thickness and for a gauge outside 7..24; never a Gauge.
[[nodiscard]] Reading<Length> read_thickness(std::string_view text, Metal metal, Units bare);

struct Chip {
    Length thickness{};
    std::string_view label{}; // "6", "1/4", "16 ga"; the screen adds the read-back of the thickness
};

/// The thicknesses to offer as large buttons, thinnest first: preferred metric sizes, or gauges and inch fractions
/// (assets/data/metals.json; from memory and common practice).
[[nodiscard]] std::vector<Chip> chips(Metal metal, UnitSystem units);

/// A thickness as the stock is called: "6.35 mm"; in inches "10 ga" or "1/4 in" where it is one, else "0.236 in". Where
/// it is both, the one it is sold by (chips()).
[[nodiscard]] Printed plate_name(Metal metal, Length thickness, Units units);

} // namespace torchside::stock
