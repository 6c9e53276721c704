// The curve beside a contour: closed forms, narrow places, near coincidences.
#include <cmath>
#include <numbers>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/measure.hpp"
#include "core/part/meet.hpp"
#include "core/part/offset.hpp"
#include "core/part/shapes.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

Contour polygon(std::initializer_list<Point> points, Role role = Role::outer) {
    Contour c{{}, role};
    for (const Point p : points) {
        c.points.push_back({p, 0.0});
    }
    return c;
}

double area_of(const Offset& o) {
    double sum = 0.0;
    for (const Contour& c : o.loops) {
        sum += area_mm2(c);
    }
    return sum;
}

} // namespace

TEST_CASE("A square gets quarter circles at its corners, a circle stays one", "[part]") {
    const Contour square = polygon({{0, 0}, {50, 0}, {50, 50}, {0, 50}});
    Offset o = offset(square, 0.825);
    REQUIRE(o.loops.size() == 1);
    CHECK(o.whole);
    CHECK(o.loops[0].points.size() == 8);
    CHECK_THAT(area_of(o), WithinRel(2500 + 165 + pi * 0.825 * 0.825, 1e-12));
    CHECK_THAT(length_mm(o.loops[0]), WithinRel(200 + 2 * pi * 0.825, 1e-12));
    o = offset(square, -0.825);
    CHECK(o.loops[0].points.size() == 4);
    CHECK_THAT(area_of(o), WithinRel(48.35 * 48.35, 1e-12));

    const Contour hole = circle({7, -3}, 10, Role::inner); // clockwise: to the right is inwards
    o = offset(hole, 0.825);
    REQUIRE(o.loops.size() == 1);
    CHECK(o.loops[0].points.size() == 2);
    CHECK(o.loops[0].points[0].bulge == -1.0);
    CHECK_THAT(length_mm(o.loops[0]), WithinRel(2 * pi * 9.175, 1e-12));
    CHECK(offset(hole, 0.0).loops[0] == hole);
}

TEST_CASE("What is narrower than the kerf gives no loop, a neck gives two", "[part]") {
    CHECK(offset(circle({0, 0}, 0.8, Role::inner), 0.8).loops.empty());
    CHECK(offset(circle({0, 0}, 0.5, Role::inner), 0.8).loops.empty());
    CHECK(offset(polygon({{0, 0}, {0, 1.5}, {30, 1.5}, {30, 0}}, Role::inner), 0.8).loops.empty());
    // Two rooms of 20 x 20 mm and a neck of 1.5 mm between them.
    const Contour rooms = polygon({{0, 0},
                                   {0, 20},
                                   {20, 20},
                                   {20, 10.75},
                                   {30, 10.75},
                                   {30, 20},
                                   {50, 20},
                                   {50, 0},
                                   {30, 0},
                                   {30, 9.25},
                                   {20, 9.25},
                                   {20, 0}},
                                  Role::inner);
    Offset o = offset(rooms, 0.8);
    REQUIRE(o.loops.size() == 2);
    CHECK(o.whole);
    // Each goes a little into the neck: where the circles about the two corners of its mouth meet.
    const double mouth = std::sqrt(0.64 - 0.5625);
    for (const Contour& loop : o.loops) {
        CHECK(area_mm2(loop) < -18.4 * 18.4);
        CHECK(area_mm2(loop) > -18.4 * 18.4 - 1.5);
        CHECK_THAT(box_of(loop).width(), WithinAbs(18.4 + 0.8 - mouth, 1e-9));
    }
    CHECK(offset(rooms, 0.7).loops.size() == 1);
}

TEST_CASE("A slot of exactly the kerf is closed, whichever way its figures are rounded", "[part]") {
    for (const double x : {10.0, 10.1, 33.3, 1.0 / 3.0}) {
        const Contour slotted =
            polygon({{0, 0}, {60, 0}, {60, 40}, {x + 1.6, 40}, {x + 1.6, 5}, {x, 5}, {x, 40}, {0, 40}});
        const Offset o = offset(slotted, 0.8);
        REQUIRE(o.loops.size() == 1);
        CHECK(o.whole);
        CHECK_THAT(length_mm(o.loops[0]), WithinAbs(200 - 1.6 + 2.4 * pi, 1e-6));
        CHECK(o.kept[4] == 0); // the slot's bottom
        CHECK(o.kept[0] == 1);
    }
}

TEST_CASE("Collinear, tiny and double pieces do no harm", "[part]") {
    const Contour square = polygon({{0, 0},
                                    {10, 0},
                                    {10, 0},
                                    {20, 0},
                                    {20 + 1e-9, 0},
                                    {50, 0},
                                    {50, 1e-6},
                                    {50, 50},
                                    {49.9999, 50},
                                    {0, 50},
                                    {0, 0}});
    for (const double d : {0.825, -0.825, 3.0, -24.9}) {
        const Offset o = offset(square, d);
        CHECK(o.whole);
        REQUIRE(o.loops.size() == 1);
        const double corners = d > 0 ? pi * d * d : 4 * d * d;
        CHECK_THAT(area_of(o), WithinAbs(2500 + 200 * d + corners, 1e-3));
    }
    CHECK(offset(square, -25.1).loops.empty());
    CHECK(offset(polygon({{1, 1}, {1, 1}, {1, 1}}), 0.8).loops.empty());
    CHECK(offset(Contour{}, 0.8).loops.empty());
    CHECK(offset(polygon({{1, 1}, {5, 1}}), 0.8).loops.size() <= 1); // there and back
}

TEST_CASE("Arcs that meet flatly: a rounded plate with its tangents off by a hair", "[part]") {
    test::Rng rng(7);
    for (int i = 0; i < 400; ++i) {
        PartSpec s;
        s.holes = 0;
        s.length = {rng.uniform(20, 90), mm};
        s.width = {rng.uniform(20, 90), mm};
        s.corner = {rng.uniform(0.9, 9.9), mm};
        Contour c = make_outline(s).value().contours[0];
        const double hair = rng.by_factor(1e-9, 1e-3);
        for (Vertex& v : c.points) {
            v.at = v.at + Point{rng.uniform(-hair, hair), rng.uniform(-hair, hair)};
            v.bulge *= 1.0 + rng.uniform(-hair, hair);
        }
        for (const double d : {0.8, -0.8}) {
            const Offset o = offset(c, d);
            CHECK(o.whole);
            REQUIRE(o.loops.size() == 1);
            // Steiner: the area grows by length x d + pi d^2, exactly for a convex contour.
            CHECK_THAT(area_of(o), WithinAbs(area_mm2(c) + d * length_mm(c) + pi * d * d, 1e-6 + 8 * hair));
        }
    }
}

TEST_CASE("Pieces meet where they should, flat arcs too", "[part]") {
    Crossings m = meet({{0, 0}, {2, 0}, 0}, {{1, -1}, {1, 1}, 0});
    REQUIRE(m.count == 1);
    CHECK(m.found[0].at == Point{1, 0});
    CHECK(m.found[0].share_a == 0.5);
    m = meet({{-2, 0.5}, {2, 0.5}, 0}, {{1, 0}, {-1, 0}, 1}); // upper half circle
    REQUIRE(m.count == 2);
    CHECK_THAT(std::abs(m.found[0].at.x), WithinAbs(std::sqrt(0.75), 1e-15));
    m = meet({{1, 0}, {-1, 0}, 1}, {{2, 0}, {0, 0}, 1}); // two half circles of radius 1, a radius apart
    REQUIRE(m.count == 1);
    CHECK_THAT(norm(m.found[0].at - Point{0.5, std::sqrt(0.75)}), WithinAbs(0, 1e-15));
    CHECK_THAT(m.found[0].share_a, WithinAbs(1.0 / 3, 1e-15));
    m = meet({{-1, 1}, {1, 1}, 0}, {{1, 0}, {-1, 0}, 1}); // touches
    REQUIRE(m.count == 1);
    CHECK_THAT(norm(m.found[0].at - Point{0, 1}), WithinAbs(0, 1e-7));
    m = meet({{0, 0}, {3, 0}, 0}, {{1, 0}, {5, 0}, 0});
    CHECK(m.overlap);
    REQUIRE(m.count == 3);
    CHECK(m.found[0].at == Point{1.5, 0});
    m = meet({{1, 0}, {-1, 0}, 1}, {{0, 1}, {0, -1}, 1});
    CHECK(m.overlap);
    m = meet({{1, 0}, {-1, 0}, 1}, {{-1, 0}, {1, 0}, 1}); // two halves of a circle
    CHECK_FALSE(m.overlap);
    CHECK(m.count == 2);
    m = meet({{0, 0}, {3, 0}, 0}, {{3, 0}, {5, 0}, 0}); // end to end
    CHECK_FALSE(m.overlap);
    CHECK(m.count == 1);
    CHECK(meet({{0, 0}, {3, 0}, 0}, {{1, 5e-7}, {1, 4}, 0}, 1e-6).count == 1);
    CHECK(meet({{0, 0}, {3, 0}, 0}, {{1, 5e-7}, {1, 4}, 0}).count == 0);
    CHECK(meet({{0, 0}, {3, 0}, 0}, {{0, 1}, {3, 1}, 0}).count == 0);
    CHECK(meet({{0, 0}, {3, 0}, 0}, {{3.1, 0}, {5, 0}, 0}).count == 0);

    test::Rng rng(11);
    int doubts = 0;
    for (int i = 0; i < 600; ++i) {
        const auto any = [&] { return Point{rng.uniform(-10, 10), rng.uniform(-10, 10)}; };
        const auto bulge = [&] {
            return rng.chance(0.3) ? 0.0 : (rng.chance(0.5) ? -1 : 1) * rng.by_factor(1e-8, 3.0);
        };
        const Piece a{any(), any(), bulge()};
        const Piece b{any(), any(), bulge()};
        m = meet(a, b);
        for (int k = 0; k < m.count; ++k) {
            CHECK(norm(nearest_on(a, m.found[k].at) - m.found[k].at) < 1e-7);
            CHECK(norm(nearest_on(b, m.found[k].at) - m.found[k].at) < 1e-7);
            CHECK(norm(point_at(a, m.found[k].share_a) - m.found[k].at) < 1e-6);
            CHECK(norm(point_at(b, m.found[k].share_b) - m.found[k].at) < 1e-6);
        }
        // Chopped into chords, they cross as often, but for touches and ends.
        int found = 0;
        constexpr int steps = 64;
        for (int s = 0; s < steps; ++s) {
            for (int t = 0; t < steps; ++t) {
                const Point p0 = point_at(a, s / 64.0), p1 = point_at(a, (s + 1) / 64.0);
                const Point q0 = point_at(b, t / 64.0), q1 = point_at(b, (t + 1) / 64.0);
                const double c0 = cross(p1 - p0, q0 - p0), c1 = cross(p1 - p0, q1 - p0);
                const double d0 = cross(q1 - q0, p0 - q0), d1 = cross(q1 - q0, p1 - q0);
                found += (c0 > 0) != (c1 > 0) && (d0 > 0) != (d1 > 0);
            }
        }
        // Almost never otherwise: chords miss a touch, or an end on the other piece.
        CHECK(std::abs(found - m.count) <= 2);
        doubts += found != m.count;
    }
    CHECK(doubts < 12);
}
