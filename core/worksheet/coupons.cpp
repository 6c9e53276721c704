#include "core/worksheet/coupons.hpp"

#include <cmath>

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "core/tune/program.hpp"
#include "core/worksheet/set_wear.hpp"
#include "core/worksheet/tuning.hpp"
#include "generated/words/coupon_note.hpp"
#include "generated/words/refusal.hpp"

namespace torchside {
namespace {

// Its lowest leg is 0.6 mm lower, and no coupon is cut under 0.5 mm.
constexpr Length lowest_ladder{1.1, mm};

// The kerf that a measured size tells; none when nothing of this coupon measures so.
std::optional<Length> kerf_of(const tune::Leg& leg, Length measured, bool inside) {
    const Length kerf = tune::kerf_from(*leg.size, measured, inside);
    const bool fits = kerf.in(mm) >= 0.1 && kerf <= std::min(Length{15, mm}, 0.5 * *leg.size);
    return fits ? std::optional(kerf) : std::nullopt;
}

} // namespace

Outcome<tune::Coupon> coupon(const Workbook& workbook, tune::CouponKind kind, const ShopModel& model) {
    const Shop& shop = workbook.shop;
    const Job& job = workbook.job;
    const MetalModel metal{shop, job.material, model};
    const cut::CutSetup plate = metal.plate(job.thickness, job.current);
    const auto reach = metal.cuts(plate);
    if (!reach) {
        return reach.fault();
    }
    const auto settings = metal.settings(plate, reach.value());
    if (!settings->pierce_delay) {
        return Fault{"job.thickness_mm",
                     words::refusal::CouponThick{.limit = words::limit(metal.limits(job.current).pierce)}};
    }
    tune::CouponSettings s;
    s.plate = plate;
    s.feed = to_dial(settings->feed.value, shop.table.max_feed, shop.display.units);
    s.cut_height = settings->cut_height.value;
    s.pierce_height = settings->pierce_height.value;
    s.pierce_delay = settings->pierce_delay->value;
    s.kerf = settings->kerf.value;
    s.lead_in = settings->lead_in.value;
    s.least_hole = settings->min_hole.value;
    s.table = shop.table;
    s.dwell = *settings->dwell;
    s.touch_off = shop.height_control.touch_off + settings->start_lag.value;
    switch (kind) {
    case tune::CouponKind::heights:
        s.cut_height = std::max(s.cut_height, lowest_ladder);
        return tune::height_coupon(s);
    case tune::CouponKind::kerf:
        return tune::kerf_coupon(s);
    case tune::CouponKind::swirl:
        return tune::swirl_coupon(s);
    case tune::CouponKind::ladder:
        break;
    }
    const auto seen = outlook(metal, workbook);
    if (!seen) {
        return seen.fault();
    }
    return tune::ladder_coupon(s, seen.value().legs);
}

tune::TestCut leg_row(const Workbook& workbook, const tune::Leg& leg) {
    const Job& job = workbook.job;
    tune::TestCut row;
    row.material = job.material;
    row.thickness = job.thickness;
    row.current = job.current;
    row.feed = Speed{std::floor(leg.feed.in(mm_min)*10.0) / 10.0, mm_min}; // as its program says
    row.cut_height = leg.cut_height;
    row.starts = starts_now(workbook.shop);
    return row;
}

UnitSystem program_units(const Shop& shop) {
    return shop.controller.units.value_or(shop.display.units);
}

Outcome<std::string> coupon_program(const Workbook& workbook, const tune::Coupon& coupon, const Language& language) {
    const Job& job = workbook.job;
    return tune::program(coupon, workbook.shop.controller, Speech(language, program_units(workbook.shop)),
                         words::coupon_note::Stock{.current = job.current,
                                                   .metal = stock::name(job.material),
                                                   .thickness = words::size(job.thickness)});
}

Outcome<MeasuredKerf> read_kerf(const Workbook& workbook, const tune::Coupon& coupon, std::optional<Length> square,
                                std::optional<Length> hole) {
    const tune::Leg& inner = coupon.legs.front();
    const tune::Leg& outer = coupon.legs.back();
    if (coupon.kind != tune::CouponKind::kerf || (!square && !hole)) {
        return Fault{"square_mm", words::refusal::no_size};
    }
    MeasuredKerf r;
    if (square) {
        r.square = kerf_of(outer, *square, false);
    }
    if (hole) {
        r.hole = kerf_of(inner, *hole, true);
    }
    if ((square && !r.square) || (hole && !r.hole)) {
        return Fault{square && !r.square ? "square_mm" : "hole_mm", words::refusal::other_size};
    }
    const Length kerf = r.square ? *r.square : *r.hole;
    r.offset = 0.5 * kerf;
    r.row = leg_row(workbook, r.square ? outer : inner);
    r.row.kerf_top = kerf;
    r.row.kerf_bottom = kerf;
    return r;
}

std::optional<LadderResult> read_ladder(const Workbook& workbook, const tune::Coupon& coupon,
                                        std::span<const bool> clean) {
    std::optional<Speed> slowest;
    std::optional<Speed> fastest;
    for (std::size_t i = 0; i < coupon.legs.size() && i < clean.size(); ++i) {
        const Speed feed = coupon.legs[i].feed;
        if (!clean[i]) {
            continue;
        }
        slowest = slowest ? std::min(*slowest, feed) : feed;
        fastest = fastest ? std::max(*fastest, feed) : feed;
    }
    if (coupon.kind != tune::CouponKind::ladder || !slowest) {
        return std::nullopt;
    }
    LadderResult r;
    r.go_on = tune::ladder_choice(*slowest, *fastest);
    for (std::size_t i = 0; i < coupon.legs.size() && i < clean.size(); ++i) {
        const Speed feed = coupon.legs[i].feed;
        if (!clean[i] && feed > *slowest && feed < *fastest) {
            continue;
        }
        r.rows.push_back(leg_row(workbook, coupon.legs[i]));
        r.rows.back().verdict = clean[i]          ? tune::Verdict::clean
                                : feed < *slowest ? tune::Verdict::too_slow
                                                  : tune::Verdict::too_fast;
    }
    return r;
}

} // namespace torchside
