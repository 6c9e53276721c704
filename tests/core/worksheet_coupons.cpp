// The coupons of a job: every metal, thickness and kind has one or is refused by name.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/worksheet/coupons.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;
using tune::CouponKind;

namespace {

constexpr CouponKind kinds[] = {CouponKind::ladder, CouponKind::heights, CouponKind::kerf, CouponKind::swirl};

}

TEST_CASE("The default shop's ladder is seven legs about its own feed") {
    const Workbook w;
    const auto made = coupon(w, CouponKind::ladder);
    REQUIRE(made.ok());
    CHECK(made.value().legs.size() == 7);
    CHECK_THAT(made.value().width.in(mm), WithinAbs(60.0, 1e-9));
    const std::string text = coupon_program(w, made.value()).value();
    CHECK(text.starts_with("(Test coupon: feed ladder)\n(Mild steel 6 mm, 45 A)\n(Check before you run"));
    CHECK(text.find("\nG21\n") != std::string::npos);
}

TEST_CASE("A program is in the controller's units, or those on screen") {
    Workbook w;
    const auto made = coupon(w, CouponKind::kerf);
    w.shop.display.units = UnitSystem::inch;
    CHECK(program_units(w.shop) == UnitSystem::inch);
    CHECK(coupon_program(w, made.value()).value().find("\nG20\n") != std::string::npos);
    w.shop.controller.units = UnitSystem::metric;
    CHECK(coupon_program(w, made.value()).value().find("\nG21\n") != std::string::npos);
}

TEST_CASE("Every plate has its coupons or is refused by a key") {
    Workbook w;
    int made = 0;
    for (const Metal metal : all_metals) {
        for (const double t : {0.3, 0.8, 1.5, 3.0, 6.0, 10.0, 16.0, 25.0, 60.0, 150.0}) {
            for (const CouponKind kind : kinds) {
                w.job.material = metal;
                w.job.thickness = Length{t, mm};
                CAPTURE(static_cast<int>(metal), t, static_cast<int>(kind));
                const auto c = coupon(w, kind);
                if (!c) {
                    CHECK((c.fault().field == "job.thickness_mm" || c.fault().field == "pierce_delay_s"));
                    CHECK(t >= (metal == Metal::copper ? 3.0 : 10.0));
                    continue;
                }
                ++made;
                CHECK(coupon_program(w, c.value()).ok());
                for (const tune::Leg& leg : c.value().legs)
                    CHECK(leg.feed.in(mm_min) <= w.shop.table.max_feed.in(mm_min) * (1 + 1e-9));
            }
        }
    }
    CHECK(made >= 80);
}

TEST_CASE("A program that this shop cannot run is refused by the key to change") {
    Workbook w;
    const auto made = coupon(w, CouponKind::heights);
    w.shop.controller.z_words = false;
    CHECK(coupon_program(w, made.value()).fault().field == "shop.controller.z_words");
    w.shop.controller = {};
    w.shop.controller.torch_off = "M3";
    CHECK(coupon_program(w, made.value()).fault().field == "shop.controller.torch_off");
}
