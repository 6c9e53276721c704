// The figures a person dials in, one row each: what a screen, the chart, the files and the print loop over.
//
// A new figure is a member of cut::Settings, the place that fills it (metal_model.cpp), and a row of figures.cpp.
// Example (also a test): the row "kerf" of a kerf of 1.606 mm has the key "kerf_mm" and the value 1.606 in a metric
// file, "kerf_in" and 0.0632 in one in inches.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/cut/settings.hpp"
#include "core/quantity/unit_system.hpp"
#include "core/words/text.hpp"

namespace torchside {

/// What a figure is measured in: it says the unit, and how it is printed.
enum class Measure { feed, volts, length, least_hole, duration, pressure };

struct Figure {
    std::string_view key;  // of its panel and of its place on a screen: "pierce_delay"
    std::string_view stem; // of its key in a file, before the unit: "pierce_delay" of "pierce_delay_s"
    Word name;
    Word what; // what it rests on, and how to make it better
    Measure measure;
    /// In the unit that a file in these units has. None: this plate has no such figure.
    std::optional<Estimate<double>> (*of)(const cut::Settings&, UnitSystem);
};

/// In the order in which they are dialed in; the feed first.
[[nodiscard]] std::span<const Figure> figures();

/// None for a key that no row has.
[[nodiscard]] const Figure* figure_of(std::string_view key);

/// The key in a file: "feed_mm_min", "feed_in_min".
[[nodiscard]] std::string file_key(const Figure& figure, UnitSystem units);

/// Decimals that a spreadsheet is given.
[[nodiscard]] int file_decimals(Measure measure, UnitSystem units);

} // namespace torchside
