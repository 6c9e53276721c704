// Reading a height ladder: the square height, its volts, and rows of the log.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/square_height.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/read_heights.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;

namespace {

constexpr Length plate{6, mm};

tune::Coupon ladder(const Workbook& w) {
    return coupon(w, tune::CouponKind::heights).value();
}

// One entry a leg, lowest first, whatever the order of cutting.
std::vector<HeightLeg> in_order(const tune::Coupon& c, const std::vector<HeightLeg>& from_low) {
    std::vector<HeightLeg> legs(c.legs.size());
    for (std::size_t i = 0; i < legs.size(); ++i) {
        legs[i] = from_low[static_cast<std::size_t>(c.legs[i].number - 1)];
    }
    return legs;
}

HeightLeg kerf(double top, double bottom) {
    return {.kerf_top = Length{top, mm}, .kerf_bottom = Length{bottom, mm}};
}

} // namespace

TEST_CASE("The square height of a few legs is where a straight line crosses nought", "[heights]") {
    // Expected: NumPy, the normal equations of the same line; the band by trying four million heights.
    using tune::looks_square;
    using tune::measured_taper;
    const Length low{0.9, mm}, high{2.1, mm}, kerf{1.45, mm};
    const tune::TaperAt two[] = {measured_taper(low, kerf, Length{1.55, mm}, plate),
                                 measured_taper(high, Length{1.75, mm}, kerf, plate)};
    CHECK_THAT(two[0].angle_deg, WithinAbs(-0.47745, 1e-5));
    CHECK_THAT(two[1].angle_deg, WithinAbs(1.43210, 1e-5));
    CHECK_THAT(two[0].sd_deg, WithinAbs(0.67521, 1e-5));
    const auto measured = tune::square_height(two);
    REQUIRE(measured);
    CHECK_THAT(measured->height.in(mm), WithinAbs(1.19599, 1e-5));
    CHECK_THAT(measured->low.in(mm), WithinAbs(0.58479, 2e-5));
    CHECK_THAT(measured->high.in(mm), WithinAbs(1.59018, 2e-5));
    CHECK_THAT(measured->deg_per_mm, WithinAbs(1.55590, 1e-5));
    const tune::TaperAt one[] = {looks_square(Length{1.2, mm})};
    const auto seen = tune::square_height(one);
    REQUIRE(seen);
    CHECK_THAT(seen->height.in(mm), WithinAbs(1.2, 1e-9));
    CHECK_THAT(seen->low.in(mm), WithinAbs(0.25707, 2e-5));
    CHECK_THAT(seen->high.in(mm), WithinAbs(2.14293, 2e-5));
    const tune::TaperAt mixed[] = {looks_square(Length{1.2, mm}), looks_square(Length{1.5, mm}),
                                   measured_taper(high, Length{2.0, mm}, Length{1.5, mm}, Length{10, mm})};
    const auto both = tune::square_height(mixed);
    REQUIRE(both);
    CHECK_THAT(both->height.in(mm), WithinAbs(1.29812, 1e-5));
    CHECK_THAT(both->low.in(mm), WithinAbs(0.83833, 2e-5));
    CHECK_THAT(both->high.in(mm), WithinAbs(1.53459, 2e-5));
}

TEST_CASE("Legs that are all alike, or taper the wrong way, tell no height", "[heights]") {
    std::vector<tune::TaperAt> alike;
    for (const double h : {0.9, 1.2, 1.5, 1.8, 2.1}) {
        alike.push_back(tune::looks_square(Length{h, mm}));
    }
    CHECK_FALSE(tune::square_height(alike));
    CHECK_FALSE(tune::square_height({}));
    const tune::TaperAt wrong[] = {{Length{0.9, mm}, 4.0, 0.3}, {Length{2.1, mm}, -4.0, 0.3}};
    CHECK_FALSE(tune::square_height(wrong));
}

TEST_CASE("A height ladder gives height, volts and rows for the log", "[heights]") {
    Workbook w;
    w.shop.height_control.divider_ratio = 50;
    const tune::Coupon c = ladder(w);
    REQUIRE(c.legs.size() == 5);
    std::vector<HeightLeg> showed(5);
    showed[0] = kerf(1.45, 1.55);
    showed[4] = kerf(1.75, 1.45);
    showed[0].arc = Voltage{120, volt};
    showed[2].arc = Voltage{124, volt};
    showed[4].arc = Voltage{129, volt};
    const auto read = read_heights(w, c, in_order(c, showed));
    REQUIRE(read.ok());
    const HeightsResult& r = read.value();
    REQUIRE(r.height);
    CHECK_THAT(r.height->in(mm), WithinAbs(1.2, 1e-9)); // 1.196 in steps of 0.05
    CHECK(r.rows.size() == 3);
    for (const tune::TestCut& row : r.rows) {
        CHECK_FALSE(row.verdict);
        CHECK(row.arc.has_value());
        CHECK(row.cut_height.has_value());
    }
    // 120 to 129 V over 1.2 mm are 7.5 V/mm; the prior of 5 draws it down.
    REQUIRE(r.gradient);
    CHECK(r.gradient->value.in(volt_per_mm) > 5.5);
    CHECK(r.gradient->value.in(volt_per_mm) < 7.5);
    CHECK(r.gradient->low < r.gradient->value);
    CHECK(r.arc.value.in(volt) > 120.0);
    CHECK(r.arc.value.in(volt) < 124.0);
    CHECK_THAT(r.controller.in(volt), WithinAbs(r.arc.value.in(volt) / 50, 1e-9));
    // What is logged says nothing of the feed, and all of the volts.
    Workbook logged = w;
    logged.shop.tests = r.rows;
    logged.shop.height_control.cut_height = r.height;
    const Worksheet before = evaluate(w), after = evaluate(logged);
    CHECK(after.settings->cut_height.value == *r.height);
    CHECK(after.settings->cut_height.basis.entered);
    CHECK_THAT(after.settings->pierce_height.value.in(mm), WithinAbs(1.2 * 2.46, 1e-9));
    CHECK(after.settings->arc.value == r.arc.value);
    CHECK(after.settings->feed.basis.tests == 0);
    CHECK(before.settings->arc.high - before.settings->arc.low >
          2.0 * (after.settings->arc.high - after.settings->arc.low));
}

TEST_CASE("A marked leg gives a height and no row; all marked give neither", "[heights]") {
    const Workbook w;
    const tune::Coupon c = ladder(w);
    std::vector<HeightLeg> showed(5);
    showed[1].square = true;
    const auto one = read_heights(w, c, in_order(c, showed));
    REQUIRE(one.ok());
    CHECK_THAT(one.value().height->in(mm), WithinAbs(1.2, 1e-9));
    CHECK(one.value().rows.empty());
    CHECK_FALSE(one.value().gradient);
    CHECK(test::said(one.value().advice).find("wider than the ladder") != std::string::npos);
    for (HeightLeg& leg : showed) {
        leg.square = true;
    }
    const auto all = read_heights(w, c, in_order(c, showed));
    REQUIRE(all.ok());
    CHECK_FALSE(all.value().height);
    CHECK(test::said(all.value().advice).find("do not tell") != std::string::npos);
    CHECK(all.value().arc.value == evaluate(w).settings->arc.value); // at the height it has
}

TEST_CASE("A square height past the legs is held back", "[heights]") {
    const Workbook w;
    const tune::Coupon c = ladder(w);
    std::vector<HeightLeg> showed(5);
    showed[0] = kerf(1.45, 1.75);
    showed[4] = kerf(1.45, 1.55);
    const auto above = read_heights(w, c, in_order(c, showed));
    CHECK_THAT(above.value().height->in(mm), WithinAbs(2.25, 1e-9));
    CHECK(test::said(above.value().advice).find("above the ladder") != std::string::npos);
    showed[0] = kerf(1.6, 1.5);
    showed[4] = kerf(2.0, 1.4);
    const auto below = read_heights(w, c, in_order(c, showed));
    CHECK_THAT(below.value().height->in(mm), WithinAbs(0.8, 1e-9));
    CHECK(test::said(below.value().advice).find("hit the plate") != std::string::npos);
}

TEST_CASE("What is not a reading of a height ladder is refused by name", "[heights]") {
    const Workbook w;
    const tune::Coupon c = ladder(w);
    std::vector<HeightLeg> legs(5);
    CHECK(read_heights(w, c, legs).fault().field == "legs");
    legs[0].arc = Voltage{19, volt};
    CHECK(read_heights(w, c, legs).fault().field == "arc_v");
    legs[0].arc = Voltage{401, volt};
    CHECK(read_heights(w, c, legs).fault().field == "arc_v");
    legs[0].arc = Voltage{400, volt};
    CHECK(read_heights(w, c, legs).ok());
    legs[0].kerf_top = Length{0.05, mm};
    CHECK(read_heights(w, c, legs).fault().field == "kerf_mm");
    legs[0].kerf_top = Length{15, mm};
    CHECK(read_heights(w, c, legs).ok());
    CHECK(read_heights(w, c, std::span(legs).first(4)).fault().field == "legs");
    const tune::Coupon other = coupon(w, tune::CouponKind::ladder).value();
    CHECK(read_heights(w, other, std::vector<HeightLeg>(other.legs.size())).fault().field == "legs");
}
