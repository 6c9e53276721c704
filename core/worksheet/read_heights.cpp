#include "core/worksheet/read_heights.hpp"

#include <algorithm>
#include <cmath>

#include "core/supply/divider.hpp"
#include "core/tune/diagnosis_rules.hpp"
#include "core/tune/square_height.hpp"
#include "core/words/range.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/metal_model.hpp"
#include "generated/words/refusal.hpp"
#include "generated/words/tune.hpp"

namespace torchside {
namespace {

constexpr double settable_mm = 0.05; // a finer height cannot be set or held

std::optional<Fault> refusal(const tune::Coupon& coupon, std::span<const HeightLeg> legs) {
    if (coupon.kind != tune::CouponKind::heights || legs.size() != coupon.legs.size()) {
        return Fault{"legs", words::refusal::no_legs};
    }
    bool said = false;
    for (const HeightLeg& leg : legs) {
        if (leg.arc && !(leg.arc->in(volt) >= 20.0 && leg.arc->in(volt) <= 400.0)) {
            return Fault{"arc_v", words::range(20, 400, FieldUnit::volt)};
        }
        for (const auto& kerf : {leg.kerf_top, leg.kerf_bottom}) {
            if (kerf && !(kerf->in(mm) >= 0.1 && kerf->in(mm) <= 15.0)) {
                return Fault{"kerf_mm", words::range(0.1, 15, FieldUnit::mm)};
            }
        }
        said = said || leg.square || leg.arc || leg.kerf_top || leg.kerf_bottom;
    }
    if (!said) {
        return Fault{"legs", words::refusal::no_marks};
    }
    return std::nullopt;
}

std::vector<tune::TaperAt> tapers(const tune::Coupon& coupon, std::span<const HeightLeg> legs, Length thickness) {
    std::vector<tune::TaperAt> out;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const Length height = coupon.legs[i].cut_height;
        if (legs[i].kerf_top && legs[i].kerf_bottom) {
            out.push_back(tune::measured_taper(height, *legs[i].kerf_top, *legs[i].kerf_bottom, thickness));
        } else if (legs[i].square) {
            out.push_back(tune::looks_square(height));
        }
    }
    return out;
}

// Sets the height to go on with, and what to say of it.
void place_height(HeightsResult& r, const tune::SquareHeight& square, const tune::Coupon& coupon) {
    const auto by_height = [](const tune::Leg& a, const tune::Leg& b) { return a.cut_height < b.cut_height; };
    const auto [lowest, highest] = std::minmax_element(coupon.legs.begin(), coupon.legs.end(), by_height);
    const Length least{tune::reading_rules().height_least_mm, mm};
    const Length span = highest->cut_height - lowest->cut_height;
    const Length half_step = span / (2.0 * static_cast<double>(coupon.legs.size() - 1));
    const Length from = std::max(least, lowest->cut_height - half_step);
    const Length to = highest->cut_height + half_step;
    const Length held = std::clamp(square.height, from, to);
    r.height = Length{std::round(held.in(mm) / settable_mm) * settable_mm, mm};
    r.low = std::max(Length{}, square.low);
    r.high = square.high;
    r.deg_per_mm = square.deg_per_mm;
    if (square.height < least) {
        r.advice = words::tune::heights_strike;
    } else if (square.height < from) {
        r.advice = words::tune::heights_below;
    } else if (square.height > to) {
        r.advice = words::tune::heights_above;
    } else if (square.high - square.low > span) {
        r.advice = words::tune::heights_wide;
    } else {
        r.advice = words::tune::heights_set;
    }
}

std::vector<tune::TestCut> rows_of(const Workbook& workbook, const tune::Coupon& coupon,
                                   std::span<const HeightLeg> legs) {
    std::vector<tune::TestCut> rows;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const HeightLeg& leg = legs[i];
        if (!leg.arc && !leg.kerf_top && !leg.kerf_bottom) {
            continue;
        }
        rows.push_back(leg_row(workbook, coupon.legs[i]));
        rows.back().arc = leg.arc;
        rows.back().kerf_top = leg.kerf_top;
        rows.back().kerf_bottom = leg.kerf_bottom;
    }
    return rows;
}

bool two_heights(const std::vector<tune::TestCut>& rows) {
    const auto read = [](const tune::TestCut& row) { return row.arc.has_value(); };
    return std::count_if(rows.begin(), rows.end(), read) >= 2; // each leg has a height of its own
}

} // namespace

Outcome<HeightsResult> read_heights(const Workbook& workbook, const tune::Coupon& coupon,
                                    std::span<const HeightLeg> legs, const ShopModel& model) {
    if (auto fault = refusal(coupon, legs)) {
        return *fault;
    }
    const Job& job = workbook.job;
    HeightsResult r;
    r.rows = rows_of(workbook, coupon, legs);
    const std::vector<tune::TaperAt> seen = tapers(coupon, legs, job.thickness);
    if (const auto square = tune::square_height(seen)) {
        place_height(r, *square, coupon);
    } else {
        r.advice = seen.empty() ? words::tune::heights_mark : words::tune::heights_alike;
    }
    Shop after = workbook.shop;
    after.tests.insert(after.tests.end(), r.rows.begin(), r.rows.end());
    const MetalModel metal{after, job.material, model};
    cut::CutSetup plate = metal.plate(job.thickness, job.current);
    plate.height = r.height.value_or(plate.height);
    r.arc = metal.arc_volts(plate);
    r.controller = supply::at_controller(r.arc.value, after.height_control.divider_ratio);
    if (two_heights(r.rows)) {
        r.gradient = tune::arc_gradient(metal.posterior());
    }
    return r;
}

} // namespace torchside
