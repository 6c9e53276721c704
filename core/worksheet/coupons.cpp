#include "core/worksheet/coupons.hpp"

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "core/tune/program.hpp"
#include "core/worksheet/advice.hpp"

namespace torchside {

Outcome<tune::Coupon> coupon(const Workbook& workbook, tune::CouponKind kind) {
    const Shop& shop = workbook.shop;
    const Job& job = workbook.job;
    const Advice advice{shop, job.material};
    const cut::Plate plate = advice.plate(job.thickness, job.current);
    const auto settings = advice.settings(plate, cut::reach(job.thickness, advice.limits(job.current)));
    if (!settings)
        return Fault{"job.thickness_mm",
                     "thicker than this current parts, accepted is a thinner plate or more current"};
    tune::CouponSettings s;
    s.plate = plate;
    s.feed = settings->feed.value;
    s.cut_height = settings->cut_height.value;
    s.pierce_height = settings->pierce_height.value;
    s.pierce_delay = settings->pierce_delay.value;
    s.kerf = settings->kerf.value;
    s.lead_in = settings->lead_in.value;
    s.least_hole = settings->min_hole.value;
    s.table = shop.table;
    switch (kind) {
    case tune::CouponKind::heights:
        return tune::height_coupon(s);
    case tune::CouponKind::kerf:
        return tune::kerf_coupon(s);
    case tune::CouponKind::swirl:
        return tune::swirl_coupon(s);
    case tune::CouponKind::ladder:
        break;
    }
    const auto outlook = tune::look(advice.posterior(), plate, shop.table);
    if (!outlook)
        return outlook.fault();
    return tune::ladder_coupon(s, outlook.value().legs);
}

UnitSystem program_units(const Shop& shop) {
    return shop.controller.units.value_or(shop.display.units);
}

Outcome<std::string> coupon_program(const Workbook& workbook, const tune::Coupon& coupon) {
    const Job& job = workbook.job;
    const UnitSystem units = program_units(workbook.shop);
    const std::string thickness = units == UnitSystem::inch ? print_trimmed(job.thickness.in(inch), 3) + " in, "
                                                            : print_trimmed(job.thickness.in(mm), 2) + " mm, ";
    return tune::program(coupon, workbook.shop.controller, units,
                         std::string(stock::name(job.material)) + ' ' + thickness +
                             print_trimmed(job.current.in(ampere), 1) + " A");
}

} // namespace torchside
