// Shapes by their sizes, and what they measure, against closed forms.
#include <cmath>
#include <numbers>
#include <sstream>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"
#include "core/part/shapes.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

PartSpec spec(Shape shape) {
    PartSpec s;
    s.shape = shape;
    return s;
}

Outline drawn(const PartSpec& s) {
    auto o = make_outline(s);
    INFO((o ? "" : o.fault().field + ": " + test::said(o.fault().text)));
    REQUIRE(o.ok());
    return o.value();
}

std::string refused(const PartSpec& s) {
    const auto o = make_outline(s);
    REQUIRE_FALSE(o.ok());
    CHECK_FALSE(test::said(o.fault().text).empty());
    return o.fault().field;
}

} // namespace

TEST_CASE("The flange's areas and lengths are those of its circles", "[part]") {
    const Outline o = drawn(spec(Shape::flange)); // 120 mm, bore 40 mm, four 11 mm holes on 90 mm
    REQUIRE(o.contours.size() == 6);
    CHECK_THAT(area_mm2(o), WithinRel(pi * (3600 - 400 - 4 * 30.25), 1e-9));
    CHECK_THAT(length_mm(o), WithinRel(pi * (120 + 40 + 4 * 11), 1e-9));
    CHECK_THAT(area_mm2(o.contours[0]), WithinRel(pi * 3600, 1e-9));
    CHECK_THAT(area_mm2(o.contours[1]), WithinRel(-pi * 400, 1e-9));
    for (std::size_t i = 2; i < 6; ++i) {
        CHECK_THAT(length_mm(o.contours[i]), WithinRel(pi * 11, 1e-9));
        CHECK_THAT(equal_diameter_mm(o.contours[i]), WithinRel(11.0, 1e-9));
        CHECK_THAT(norm(centroid_of(o.contours[i]) - Point{60, 60}), WithinRel(45.0, 1e-9));
    }
    const Box box = box_of(o);
    CHECK_THAT(box.width(), WithinAbs(120, 1e-9));
    CHECK_THAT(box.height(), WithinAbs(120, 1e-9));
    CHECK_THAT(box.low.x, WithinAbs(0, 1e-9));
    CHECK_THAT(norm(centroid_of(o) - Point{60, 60}), WithinAbs(0, 1e-9));
    CHECK_THAT(mass_of(Area{area_mm2(o), mm2}, Length{10, mm}, Metal::mild_steel).in(kg),
               WithinRel(pi * (3600 - 400 - 121) * 10 * 7850e-9, 1e-9));
}

TEST_CASE("Plates, rings, gussets, slots and brackets have the area of their formula", "[part]") {
    PartSpec s = spec(Shape::plate);
    s.length = {200, mm};
    s.corner = {10, mm};
    Outline o = drawn(s);
    CHECK(o.contours.size() == 5);
    CHECK_THAT(area_mm2(o), WithinRel(20000 - (4 - pi) * 100 - 4 * pi * 30.25, 1e-12));
    CHECK_THAT(length_mm(o.contours[0]), WithinRel(2 * (180 + 80) + 2 * pi * 10, 1e-12));

    o = drawn(spec(Shape::ring));
    CHECK_THAT(area_mm2(o), WithinRel(3200 * pi, 1e-12));
    CHECK_THAT(length_mm(o), WithinRel(160 * pi, 1e-12));
    CHECK_THAT(area_mm2(drawn(spec(Shape::disc))), WithinRel(3600 * pi, 1e-12));

    s = spec(Shape::gusset);
    CHECK_THAT(area_mm2(drawn(s)), WithinRel(5000.0, 1e-12));
    s.corner = {8, mm};
    // A rounded corner of interior angle a takes r^2 (cot(a/2) - (pi - a)/2) away.
    const double t8 = std::tan(pi / 8);
    CHECK_THAT(area_mm2(drawn(s)), WithinRel(5000 - 64 * ((1 - pi / 4) + 2 * (1 / t8 - 3 * pi / 8)), 1e-12));

    s = spec(Shape::slotted_plate);
    o = drawn(s);
    CHECK_THAT(area_mm2(o), WithinRel(10000 - 28 * 12 - pi * 36, 1e-12));
    CHECK(area_mm2(o.contours[1]) < 0);
    s.slot_length = s.slot_width;
    CHECK_THAT(area_mm2(drawn(s)), WithinRel(10000 - pi * 36, 1e-12));

    s = spec(Shape::bracket);
    s.corner = {6, mm};
    s.holes = 3;
    o = drawn(s);
    CHECK(o.contours.size() == 4);
    CHECK_THAT(area_mm2(o),
               WithinRel(10000 - 4900 - 5 * (1 - pi / 4) * 36 + (1 - pi / 4) * 25 - 3 * pi * 30.25, 1e-12));
}

TEST_CASE("A corner radius of half the side makes round ends without leftovers", "[part]") {
    PartSpec s = spec(Shape::plate);
    s.length = {140, mm};
    s.width = {40, mm};
    s.corner = {20, mm};
    s.holes = 0;
    const Outline o = drawn(s);
    CHECK(o.contours[0].points.size() == 6);
    CHECK_THAT(area_mm2(o), WithinRel(100 * 40 + pi * 400, 1e-12));
    CHECK_THAT(length_mm(o), WithinRel(200 + pi * 40, 1e-12));
}

TEST_CASE("The field that does not fit is named", "[part]") {
    PartSpec s = spec(Shape::plate);
    s.corner = {51, mm};
    CHECK(refused(s) == "job.part.corner_mm");
    s = spec(Shape::plate);
    s.hole = {30, mm};
    CHECK(refused(s) == "job.part.hole_mm");
    s.hole = {29.9, mm};
    CHECK(make_outline(s).ok());
    s.holes = 40; // closer than their width
    CHECK(refused(s) == "job.part.hole_mm");
    s = spec(Shape::plate);
    s.hole_edge = {120, mm};
    CHECK(refused(s) == "job.part.hole_edge_mm");
    s = spec(Shape::ring);
    s.inside = {120, mm};
    CHECK(refused(s) == "job.part.inside_mm");
    for (const double outside : {33.3, 8.2, 120.0}) { // 33.3 x 100 is a trace below 3330 in binary
        s.outside = {outside, mm};
        s.inside = s.outside;
        CAPTURE(outside);
        std::ostringstream most;
        most << "less than " << outside << " mm";
        CHECK(test::said(make_outline(s).fault().text).find(most.str()) != std::string::npos);
    }
    s.outside = {120, mm};
    s.inside = {0, mm};
    CHECK(refused(s) == "job.part.inside_mm");
    s = spec(Shape::flange);
    s.hole_circle = {20, mm};
    CHECK(refused(s) == "job.part.hole_circle_mm"); // in the bore
    s.hole_circle = {115, mm};
    CHECK(refused(s) == "job.part.hole_mm");
    s = spec(Shape::slotted_plate);
    s.slot_length = {100, mm};
    CHECK(refused(s) == "job.part.slot_length_mm");
    s.slot_length = {10, mm};
    CHECK(refused(s) == "job.part.slot_length_mm");
    s = spec(Shape::slotted_plate);
    s.slot_length = {98, mm};
    s.corner = {49, mm};
    CHECK(make_outline(s).ok()); // rounded close to the slot's ends, but clear of them
    s = spec(Shape::bracket);
    s.leg = {100, mm};
    CHECK(refused(s) == "job.part.leg_mm");
    s.leg = {30, mm};
    s.inner_corner = {80, mm};
    CHECK(refused(s) == "job.part.inner_corner_mm");
    CHECK(refused(spec(Shape::drawing)) == "job.part.drawing");
}

TEST_CASE("A size that a refusal names is accepted, in millimetres and in inches", "[part]") {
    const auto named = [](const PartSpec& s, UnitSystem units) {
        const std::string words = test::said(make_outline(s).fault().text, units);
        const auto at = words.find_first_of("0123456789");
        INFO(words);
        REQUIRE(at != std::string::npos);
        return Length{std::stod(words.substr(at)), units == UnitSystem::metric ? mm : inch};
    };
    int sizes = 0;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
        for (double width = 40.0; width < 60.0; width += 0.37) {
            PartSpec plate = spec(Shape::plate), slotted = spec(Shape::slotted_plate), bracket = spec(Shape::bracket);
            PartSpec ring = spec(Shape::ring);
            const double hair = 1e-6; // "less than" the size, where it is the limit itself
            const auto holds = [&](PartSpec s, Length PartSpec::*size, Length much) {
                s.*size = much;
                REQUIRE_FALSE(make_outline(s).ok());
                const Length most = named(s, units);
                s.*size = Length{most.in(mm)-hair, mm};
                INFO(width << ": " << most.in(mm));
                ++sizes;
                return make_outline(s).ok();
            };
            plate.width = slotted.width = {width, mm};
            plate.hole = {0, mm};
            CHECK(holds(plate, &PartSpec::corner, {45, mm}));
            slotted.slot_width = {2, mm};
            slotted.slot_length = {20, mm};
            slotted.length = {width * 2, mm};
            CHECK(holds(slotted, &PartSpec::slot_length, {300, mm}));
            bracket.hole = {0, mm};
            bracket.length = {width + 20, mm};
            bracket.width = {width, mm};
            bracket.leg = {20, mm};
            bracket.corner = bracket.inner_corner = {0, mm};
            CHECK(holds(bracket, &PartSpec::inner_corner, {70, mm}));
            CHECK(holds(bracket, &PartSpec::leg, {70, mm}));
            ring.outside = {width, mm};
            CHECK(holds(ring, &PartSpec::inside, {70, mm}));
        }
    }
    CHECK(sizes > 400);
}

TEST_CASE("A piece knows its points, its nearest one and its length", "[part]") {
    const Piece half{{0, 0}, {2, 0}, 1.0};
    CHECK_THAT(length_of(half), WithinRel(pi, 1e-15));
    CHECK_THAT(norm(point_at(half, 0.5) - Point{1, -1}), WithinAbs(0, 1e-15));
    CHECK_THAT(norm(direction_at(half, 0.5) - Point{1, 0}), WithinAbs(0, 1e-15));
    CHECK_THAT(norm(nearest_on(half, {1, -3}) - Point{1, -1}), WithinAbs(0, 1e-15));
    CHECK_THAT(norm(nearest_on(half, {1.5, 2}) - Point{2, 0}), WithinAbs(0, 1e-15));
    for (const double bulge : {1e-8, -1e-3, 0.3, -0.99, 1.0, 2.5, -40.0}) {
        const Piece p{{3, -1}, {7, 4}, bulge};
        double sum = 0;
        for (int i = 0; i < 64; ++i) {
            sum += norm(point_at(p, (i + 1) / 64.0) - point_at(p, i / 64.0));
        }
        CHECK(sum <= length_of(p) * (1 + 1e-12));
        CHECK(sum > length_of(p) * 0.998);
        const Point on = point_at(p, 0.3);
        CHECK_THAT(norm(nearest_on(p, on) - on), WithinAbs(0, 1e-7));
        const Piece first{p.from, on, bulge_of_share(bulge, 0.3)};
        CHECK_THAT(length_of(first), WithinRel(0.3 * length_of(p), 1e-9));
    }
}

TEST_CASE("A point in or out of arcs, also level with their tops and ends", "[part]") {
    const Contour disc = circle({0, 0}, 10, Role::outer);
    for (const double y : {-10.1, -10.0 + 1e-6, -5.0, 0.0, 3.0, 10.0 - 1e-6, 10.1}) {
        for (const double x : {-11.0, -9.0, -1.0, 0.0, 2.0, 9.0, 11.0}) {
            CHECK(holds(disc, {x, y}) == (x * x + y * y < 100));
        }
    }
    Contour c = circle({0, 0}, 10, Role::outer);
    c.points[0].bulge = -1.0; // no area left: over the upper half and back
    CHECK_FALSE(holds(c, {0, 5}));
    CHECK_FALSE(holds(c, {0, -5}));
    const Contour moon{{{{-10, 0}, 1.0}, {{10, 0}, -0.5}}, Role::outer}; // half a disc less a flat segment
    CHECK(holds(moon, {0, -9}));
    CHECK_FALSE(holds(moon, {0, -4}));
    CHECK(holds(moon, {9, -4}));
    const Contour back = reversed(moon);
    CHECK_THAT(area_mm2(back), WithinRel(-area_mm2(moon), 1e-14));
    CHECK(holds(back, {0, -9}));
    CHECK(reversed(back) == moon);
}

TEST_CASE("Far from the origin nothing is lost, and a half disc has its centroid at 4 r / 3 pi", "[part]") {
    const Point far{8e5, -6e5};
    Contour half{{{far + Point{-10, 0}, 1.0}, {far + Point{10, 0}, 0.0}}, Role::outer};
    CHECK_THAT(area_mm2(half), WithinRel(50 * pi, 1e-9));
    CHECK_THAT(centroid_of(half).y - far.y, WithinAbs(-40 / (3 * pi), 1e-8));
    half.points[0].bulge = 1e-4; // so flat that it is a parabola: 2/5 of the height
    CHECK_THAT(centroid_of(half).y - far.y, WithinAbs(-0.4 * 1e-3, 1e-8));
}
