// The whole chart of a shop for one metal: every thickness it is likely to meet against every current it can set.
//
// What       Each cell holds what a worksheet of that plate and current would hold: the same functions make both.
// Rows       the thicknesses asked for, or those sold of this metal in the shop's units (core/stock).
// Columns    the machine's lowest and highest current, the ratings of its nozzles, and round tens between; at most 8.
// Edges      a refused plate leaves its cell without settings. A chart of no thickness has no cells.
// Example    the default shop, mild steel, 6 mm at 45 A: the settings of the default worksheet, to the last bit.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/cut/capacity.hpp"
#include "core/cut/settings.hpp"
#include "core/tune/dominant_basis.hpp"
#include "core/worksheet/shop_model.hpp"

namespace torchside {

/// How near the shop's own cuts come to a cell.
enum class Tested {
    none, // no own cut of this metal near it
    near, // within a third of its thickness and of its current
    here  // this plate at this current
};

struct ChartCell {
    cut::Reach reach = cut::Reach::refused;
    Tested tested = Tested::none;
    std::optional<cut::Settings> settings{}; // none when refused
    tune::DominantBases basis{};             // what carries each of the settings
};

struct ChartColumn {
    Current current{};
    std::optional<Current> nozzle{}; // rating of the nozzle the shop uses at this current
    bool over_rating = false;        // no nozzle here is rated for it
    cut::Limits limits{};
};

/// All that a chart with the thicknesses sold depends on: while it stays the same, a chart may be kept.
struct ChartInputs {
    ShopModel model{}; // log, nozzles and gradient
    Metal metal = Metal::mild_steel;
    UnitSystem units = UnitSystem::metric;
    Current lowest{}, highest{}; // that the machine can be set to on the shop's line
    Speed fastest{};             // of the table
    std::optional<Length> cut_height{};
    double divider_ratio = 1.0;

    friend bool operator==(const ChartInputs&, const ChartInputs&) = default;
};

struct Chart {
    Metal metal = Metal::mild_steel;
    Speed fastest{}; // of the table
    std::vector<Length> rows{};
    std::vector<ChartColumn> columns{};
    std::vector<ChartCell> cells{}; // row after row

    [[nodiscard]] const ChartCell& at(std::size_t row, std::size_t column) const {
        return cells[row * columns.size() + column];
    }
};

/// `model`: the shop's, where the caller has one.
[[nodiscard]] Chart chart(const Shop& shop, Metal metal, std::span<const Length> thicknesses,
                          const ShopModel& model = {});

/// With the thicknesses sold in the shop's own units, or in those asked for.
[[nodiscard]] Chart chart(const Shop& shop, Metal metal, const ShopModel& model = {});
[[nodiscard]] Chart chart(const Shop& shop, Metal metal, UnitSystem units, const ShopModel& model = {});

/// `model` is fitted to the shop.
[[nodiscard]] ChartInputs chart_inputs(const Shop& shop, Metal metal, const ShopModel& model);

/// The columns' currents, lowest first, for the machine as it is rated on its line (supply::machine_on).
[[nodiscard]] std::vector<Current> chart_currents(const Machine& machine);

} // namespace torchside
