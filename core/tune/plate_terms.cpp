#include "core/tune/plate_terms.hpp"

#include <cmath>

#include "core/cut/capacity.hpp"

namespace torchside::tune {
namespace {

double rounded(double value, double to) {
    return std::round(value / to) * to;
}

double thickness(const cut::CutSetup& plate) {
    return rounded(plate.thickness.in(mm), 0.001);
}

double current(const cut::CutSetup& plate) {
    return rounded(plate.current.in(ampere), 0.01);
}

std::int64_t bore_tag(const cut::CutSetup& plate) {
    return plate.bore ? std::llround(plate.bore->in(mm)*1000.0) : 0;
}

std::size_t metal_class(Metal metal) {
    std::size_t before = 0;
    for (const stock::MetalInfo& other : stock::metals) {
        if (other.metal == stock::metal_info(metal).cuts_as) {
            break;
        }
        before += other.cuts_as == other.metal ? 1 : 0;
    }
    return before;
}

} // namespace

Regressors power_regressors(const cut::CutSetup& plate) {
    Regressors place;
    place.x = {1.0, std::log(thickness(plate) / thickness_0_mm), std::log(current(plate) / current_0_a)};
    place.tag = bore_tag(plate) * 8 + static_cast<std::int64_t>(metal_class(plate.metal));
    return place;
}

Regressors feed_regressors(const cut::CutSetup& plate) {
    Regressors place = power_regressors(plate);
    place.x[3 + metal_class(plate.metal)] = 1.0;
    place.x[bend_term] = place.x[1] * place.x[1];
    return place;
}

Regressors arc_regressors(const cut::CutSetup& plate) {
    Regressors place;
    place.x = {1.0, thickness(plate) - thickness_0_mm, current(plate) - current_0_a,
               rounded(plate.height.in(mm), 0.001) - height_0_mm};
    return place;
}

cut::CutSetup plate_of(const TestCut& row, std::span<const Nozzle> nozzles) {
    cut::CutSetup plate;
    plate.metal = row.material;
    plate.thickness = row.thickness;
    plate.current = row.current;
    if (row.cut_height) {
        plate.height = *row.cut_height;
    }
    if (!row.nozzle) {
        return plate_of(plate, nozzles);
    }
    for (const Nozzle& nozzle : nozzles) {
        if (std::abs((nozzle.rated - *row.nozzle).in(ampere)) < 0.5 && nozzle.bore) {
            plate.bore = nozzle.bore;
        }
    }
    if (!plate.bore) {
        cut::CutSetup rated = plate;
        rated.current = *row.nozzle;
        plate.bore = cut::bore(rated, cut::small_air_torch(plate.metal));
    }
    return plate;
}

cut::CutSetup plate_of(cut::CutSetup plate, std::span<const Nozzle> nozzles) {
    plate.arc.reset();
    if (!plate.bore) {
        if (const Nozzle* nozzle = cut::nozzle_for(nozzles, plate.current)) {
            plate.bore = cut::bore(*nozzle, cut::small_air_torch(plate.metal));
        }
    }
    return plate;
}

} // namespace torchside::tune
