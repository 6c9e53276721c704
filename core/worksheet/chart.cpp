#include "core/worksheet/chart.hpp"

#include <algorithm>
#include <cmath>

#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "core/supply/low_voltage.hpp"
#include "core/worksheet/metal_model.hpp"

namespace torchside {
namespace {

constexpr std::size_t most_columns = 8;

bool within(double a, double b, double factor) {
    return a <= b * factor && b <= a * factor;
}

// A row that taught nothing of how this metal cuts does not count.
bool counts(const tune::TestCut& cut, Metal metal) {
    return !cut.worn && stock::cuts_as(cut.material) == stock::cuts_as(metal);
}

Tested tested(std::span<const tune::TestCut> cuts, const cut::CutSetup& plate) {
    Tested nearest = Tested::none;
    for (const tune::TestCut& cut : cuts) {
        if (!counts(cut, plate.metal)) {
            continue;
        }
        const double t = cut.thickness.in(mm), i = cut.current.in(ampere);
        if (within(t, plate.thickness.in(mm), 1.01) && within(i, plate.current.in(ampere), 1.01)) {
            return Tested::here;
        }
        if (within(t, plate.thickness.in(mm), 4.0 / 3.0) && within(i, plate.current.in(ampere), 4.0 / 3.0)) {
            nearest = Tested::near;
        }
    }
    return nearest;
}

} // namespace

std::vector<Current> chart_currents(const Machine& machine) {
    const double low = machine.min_current.in(ampere), high = machine.max_current.in(ampere);
    std::vector<double> wanted{low, high};
    for (const Nozzle& nozzle : machine.nozzles) {
        wanted.push_back(nozzle.rated.in(ampere));
    }
    for (double step : {10.0, 20.0, 50.0}) {
        if ((high - low) / step > 4.0) {
            continue;
        }
        for (double i = std::ceil(low / step) * step; i < high; i += step) {
            wanted.push_back(i);
        }
        break;
    }
    std::erase_if(wanted, [&](double i) { return i < low || i > high; });
    std::sort(wanted.begin(), wanted.end());
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
    while (wanted.size() > most_columns) { // the one closest to its lower neighbour says least
        std::size_t least = 1;
        for (std::size_t i = 1; i + 1 < wanted.size(); ++i) {
            if (wanted[i] - wanted[i - 1] < wanted[least] - wanted[least - 1]) {
                least = i;
            }
        }
        wanted.erase(wanted.begin() + static_cast<std::ptrdiff_t>(least));
    }
    std::vector<Current> currents;
    currents.reserve(wanted.size());
    for (const double i : wanted) {
        currents.push_back(Current{i, ampere});
    }
    return currents;
}

Chart chart(const Shop& shop, Metal metal, std::span<const Length> thicknesses, const ShopModel& model) {
    const MetalModel learnt{shop, metal, model};
    Chart c;
    c.metal = metal;
    c.fastest = shop.table.max_feed;
    c.rows.assign(thicknesses.begin(), thicknesses.end());
    for (const Current current : chart_currents(supply::machine_on(shop.machine, shop.circuit.line))) {
        ChartColumn column;
        column.current = current;
        if (const Nozzle* nozzle = learnt.nozzle(current)) {
            column.nozzle = nozzle->rated;
            column.over_rating = nozzle->rated < current;
        }
        column.limits = learnt.limits(current);
        c.columns.push_back(column);
    }
    c.cells.reserve(c.rows.size() * c.columns.size());
    for (const Length thickness : c.rows) {
        for (const ChartColumn& column : c.columns) {
            const cut::CutSetup plate = learnt.plate(thickness, column.current);
            const cut::Reach reach = cut::reach(thickness, column.limits);
            c.cells.push_back({reach, tested(shop.tests, plate), learnt.settings(plate, reach),
                               tune::dominant_bases(learnt.posterior(), plate)});
        }
    }
    return c;
}

Chart chart(const Shop& shop, Metal metal, UnitSystem units, const ShopModel& model) {
    std::vector<Length> thicknesses;
    for (const stock::Chip& chip : stock::chips(metal, units)) {
        thicknesses.push_back(chip.thickness);
    }
    return chart(shop, metal, thicknesses, model);
}

ChartInputs chart_inputs(const Shop& shop, Metal metal, const ShopModel& model) {
    const HeightControl& height = shop.height_control;
    const Machine machine = supply::machine_on(shop.machine, shop.circuit.line);
    return {model,
            metal,
            shop.display.units,
            machine.min_current,
            machine.max_current,
            shop.table.max_feed,
            height.cut_height,
            height.divider_ratio};
}

Chart chart(const Shop& shop, Metal metal, const ShopModel& model) {
    return chart(shop, metal, shop.display.units, model);
}

} // namespace torchside
