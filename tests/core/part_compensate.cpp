// From a part to the torch's path: sides, direction, order, leads, and what is said of narrow places.
#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/compensate.hpp"
#include "core/part/measure.hpp"
#include "core/part/near.hpp"
#include "core/part/shapes.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

CompensateSettings settings(double kerf_mm) {
    CompensateSettings s;
    s.kerf = {kerf_mm, mm};
    return s;
}

Compensated compensated(const Outline& o, const CompensateSettings& s) {
    auto c = compensate(o, s);
    REQUIRE(c.ok());
    return c.value();
}

Outline shape_part(Shape shape) {
    PartSpec s;
    s.shape = shape;
    return make_outline(s).value();
}

Contour polygon(std::initializer_list<Point> points, Role role = Role::outer) {
    Contour c{{}, role};
    for (const Point p : points) {
        c.points.push_back({p, 0.0});
    }
    return c;
}

std::string codes(const Compensated& c) {
    std::string all;
    for (const Problem& p : c.problems) {
        all += (all.empty() ? "" : " ") + std::string(p.code);
    }
    return all;
}

Contour closed_part(const Run& run) {
    Contour c{{run.path.begin() + static_cast<std::ptrdiff_t>(run.contour_begin),
               run.path.begin() + static_cast<std::ptrdiff_t>(run.contour_end)},
              run.role};
    return c;
}

// Every place of every lead keeps half a kerf from the part.
double least_clearance(const Outline& drawn, const Run& run) {
    Near near(drawn);
    double least = 1e300;
    for (std::size_t i = 0; i + 1 < run.path.size(); ++i) {
        if (i >= run.contour_begin && i < run.contour_end) {
            continue;
        }
        const Piece p{run.path[i].at, run.path[i + 1].at, run.path[i].bulge};
        for (int k = 0; k <= 50; ++k) {
            least = std::min(least, near.nearest(point_at(p, k / 50.0)).mm);
        }
    }
    return least;
}

} // namespace

TEST_CASE("A square is cut outside, a hole inside its line, by half a kerf", "[part]") {
    PartSpec spec;
    spec.length = spec.width = {50, mm};
    spec.holes = 1;
    spec.hole = {20, mm};
    const Outline o = make_outline(spec).value();
    const Compensated c = compensated(o, settings(1.65));
    CHECK(codes(c).empty());
    REQUIRE(c.outline.contours.size() == 2);
    CHECK(c.source == std::vector<std::size_t>{0, 1});
    CHECK_THAT(box_of(c.outline.contours[0]).width(), WithinAbs(51.65, 1e-9));
    CHECK_THAT(equal_diameter_mm(c.outline.contours[1]), WithinAbs(18.35, 1e-9));
    REQUIRE(c.path.runs.size() == 2);
    const Run& hole = c.path.runs[0];
    const Run& outside = c.path.runs[1];
    CHECK(hole.role == Role::inner);
    CHECK(hole.source == 1);
    CHECK_THAT(hole.hole_mm, WithinAbs(20, 1e-9));
    CHECK(outside.hole_mm == 0.0);
    // Clockwise swirl: the part is on the right of travel.
    CHECK(area_mm2(closed_part(outside)) < 0);
    CHECK(area_mm2(closed_part(hole)) > 0);
    CHECK_THAT(std::abs(area_mm2(closed_part(outside))), WithinRel(area_mm2(c.outline.contours[0]), 1e-12));
    CHECK_THAT(area_mm2(closed_part(hole)), WithinRel(pi * 9.175 * 9.175, 1e-12));
    CHECK(hole.path[hole.contour_begin].at == hole.path[hole.contour_end].at);
    CHECK(hole.contour_end + 1 == hole.path.size()); // no lead-out in a hole
    CHECK(outside.contour_begin == 1);
    CHECK(outside.contour_end + 2 == outside.path.size());
    const Piece in{outside.path[0].at, outside.path[1].at, outside.path[0].bulge};
    CHECK_THAT(length_of(in), WithinAbs(5, 1e-9));
    // Tangent where it meets the contour.
    const Piece next{outside.path[1].at, outside.path[2].at, outside.path[1].bulge};
    CHECK_THAT(dot(direction_at(in, 1.0), direction_at(next, 0.0)), WithinAbs(1, 1e-9));
    CHECK(least_clearance(o, outside) > 0.824);
    CHECK(least_clearance(o, hole) > 0.824);

    CompensateSettings other = settings(1.65);
    other.clockwise_swirl = false;
    other.overburn = {3, mm};
    const Compensated d = compensated(o, other);
    CHECK(area_mm2(closed_part(d.path.runs[1])) > 0);
    CHECK(area_mm2(closed_part(d.path.runs[0])) < 0);
    CHECK(least_clearance(o, d.path.runs[1]) > 0.824);
    const Run& burnt = d.path.runs[0];
    REQUIRE(burnt.contour_end + 2 == burnt.path.size());
    const Piece over{burnt.path[burnt.contour_end].at, burnt.path.back().at, burnt.path[burnt.contour_end].bulge};
    CHECK_THAT(length_of(over), WithinAbs(3, 1e-9));
    CHECK_THAT(norm(over.to - Point{25, 25}), WithinAbs(9.175, 1e-9));
}

TEST_CASE("In a small hole the pierce goes no farther than the middle", "[part]") {
    // An 8 mm hole used to be pierced past its centre, nearer to the far side than need be.
    const Outline round{{polygon({{0, 0}, {60, 0}, {60, 60}, {0, 60}}), circle({30, 30}, 4, Role::inner)}};
    for (const double lead : {3.0, 5.0, 20.0}) {
        CompensateSettings s = settings(1.5);
        s.lead_in = {lead, mm};
        const Compensated c = compensated(round, s);
        REQUIRE(c.path.runs.size() == 2);
        REQUIRE(c.path.runs[0].role == Role::inner);
        const double from_centre = norm(c.path.runs[0].path[0].at - Point{30, 30});
        CHECK_THAT(from_centre, WithinAbs(std::max(0.0, 3.25 - lead), 1e-3));
        CHECK(codes(c).empty());
    }
    // A slot of 8 mm: its middle line.
    const Outline slot{{polygon({{0, 0}, {90, 0}, {90, 60}, {0, 60}}),
                        polygon({{20, 26}, {20, 34}, {70, 34}, {70, 26}}, Role::inner)}};
    CompensateSettings s = settings(1.5);
    s.lead_in = {12, mm};
    const Compensated c = compensated(slot, s);
    CHECK_THAT(c.path.runs[0].path[0].at.y, WithinAbs(30, 1e-3));
}

TEST_CASE("Every shape is cut inner first, leads in scrap", "[part]") {
    for (const Shape shape :
         {Shape::plate, Shape::disc, Shape::ring, Shape::flange, Shape::gusset, Shape::slotted_plate, Shape::bracket}) {
        const Outline o = shape_part(shape);
        for (const double kerf : {0.0, 1.1, 2.4}) {
            const Compensated c = compensated(o, settings(kerf));
            CHECK(codes(c).empty());
            REQUIRE(c.path.runs.size() == o.contours.size());
            CHECK(c.path.runs.back().role == Role::outer);
            for (std::size_t i = 0; i + 1 < c.path.runs.size(); ++i) {
                CHECK(c.path.runs[i].role == Role::inner);
            }
            for (const Run& run : c.path.runs) {
                CHECK(least_clearance(o, run) > 0.5 * kerf - 2e-3);
                CHECK(run.contour_begin == 1);
                // The pierce is in scrap: out of the part, or in a hole.
                const Point pierce = run.path[0].at;
                CHECK(holds(o.contours[run.source], pierce) == (run.role == Role::inner));
            }
        }
    }
}

TEST_CASE("What does not come out as drawn is named, where it is and how wide", "[part]") {
    Outline o{{polygon({{0, 0}, {60, 0}, {60, 40}, {31, 40}, {31, 10}, {30, 10}, {30, 40}, {0, 40}})}};
    Compensated c = compensated(o, settings(1.6));
    REQUIRE(codes(c) == "closes");
    CHECK_THAT(c.problems[0].size_mm, WithinAbs(1.0, 1e-6));
    CHECK_THAT(c.problems[0].at.x, WithinAbs(30.5, 0.2));
    CHECK(codes(compensated(o, settings(0.9))).empty());

    // The same slot with a room behind it.
    o = {{polygon({{0, 0},
                   {60, 0},
                   {60, 40},
                   {31, 40},
                   {31, 20},
                   {40, 20},
                   {40, 8},
                   {20, 8},
                   {20, 20},
                   {30, 20},
                   {30, 40},
                   {0, 40}})}};
    c = compensated(o, settings(1.6));
    CHECK(codes(c) == "splits closes");
    CHECK(c.outline.contours.size() == 2);
    CHECK(c.path.runs.size() == 2);

    o = shape_part(Shape::plate);
    o.contours[2] = circle({15, 15}, 0.6, Role::inner);
    c = compensated(o, settings(1.6));
    REQUIRE(codes(c) == "vanishes");
    CHECK(c.problems[0].severity == Severity::stop);
    CHECK_THAT(c.problems[0].size_mm, WithinAbs(1.2, 1e-3));
    CHECK(c.path.runs.size() == 4);
    CHECK(c.source == std::vector<std::size_t>{0, 1, 3, 4});

    o.contours[2] = circle({15, 15}, 1.0, Role::inner); // 2 mm: the pierce is nearer than a kerf to its edge
    CHECK(codes(compensated(o, settings(1.6))) == "no_lead_in");

    PartSpec bracket;
    bracket.shape = Shape::bracket;
    bracket.inner_corner = {0.5, mm};
    o = make_outline(bracket).value();
    c = compensated(o, settings(1.6));
    REQUIRE(codes(c) == "small_radius");
    CHECK_THAT(c.problems[0].size_mm, WithinAbs(0.5, 1e-9));

    o = {{polygon({{0, 0}, {50, 0}, {50, 50}}), polygon({{0, 1}, {49, 50}, {0, 50}})}};
    CHECK(codes(compensated(o, settings(1.6))) == "kerfs_meet");
    CHECK(codes(compensated(o, settings(0.6))).empty());

    Contour open = polygon({{0, 0}, {30, 10}}, Role::open);
    c = compensated({{open}}, settings(1.6));
    CHECK(c.outline.contours[0] == open);
    CHECK(c.path.runs[0].path == open.points);
    c = compensated({{polygon({{0, 0}, {30, 0}, {60, 0}})}}, settings(1.6));
    CHECK(codes(c) == "no_area");
}

TEST_CASE("A setting out of range is named", "[part]") {
    CHECK(compensate({}, settings(-1)).fault().field == "kerf_mm");
    CHECK(compensate({}, settings(16)).fault().field == "kerf_mm");
    CompensateSettings s;
    s.lead_in = {201, mm};
    CHECK(compensate({}, s).fault().field == "lead_in_mm");
    s = {};
    s.lead_out = {std::nan(""), mm};
    CHECK(compensate({}, s).fault().field == "lead_out_mm");
    CHECK(compensate({}, {}).value().path.runs.empty());
}

TEST_CASE("A part in a hole of another is cut before the hole, the hole before its part", "[part]") {
    Outline o{{circle({100, 100}, 90, Role::outer), circle({100, 100}, 60, Role::inner),
               circle({100, 100}, 40, Role::outer), circle({100, 100}, 10, Role::inner),
               circle({250, 100}, 20, Role::outer)}};
    const Compensated c = compensated(o, settings(1.6));
    std::vector<std::size_t> order;
    for (const Run& run : c.path.runs) {
        order.push_back(run.source);
    }
    CHECK(order == std::vector<std::size_t>{3, 2, 1, 0, 4});
    for (const Run& run : c.path.runs) {
        CHECK(least_clearance(o, run) > 0.799);
    }
}

TEST_CASE("An edge start begins beside the part; what cannot is pierced and said so", "[part]") {
    CompensateSettings s = settings(1.6);
    s.edge_start = true;
    const Outline o = shape_part(Shape::flange);
    const Compensated c = compensated(o, s);
    CHECK(c.path.runs.back().edge_start);
    CHECK(norm(c.path.runs.back().path[0].at - Point{60, 60}) > 66);
    CHECK(codes(c) == "needs_pierce needs_pierce needs_pierce needs_pierce needs_pierce");
    CHECK_FALSE(c.path.runs.front().edge_start);
}

TEST_CASE("Leads never come nearer than half a kerf to any part, on crowded sheets too", "[part]") {
    test::Rng rng(2024);
    int leads = 0;
    for (int i = 0; i < 150; ++i) {
        Outline o;
        const double pitch = rng.uniform(14, 40);
        const double kerf = rng.uniform(0.8, 2.4);
        for (int x = 0; x < 4; ++x) {
            for (int y = 0; y < 3; ++y) {
                const Point at{x * pitch, y * pitch};
                const double r = 0.5 * pitch - rng.uniform(1.0, 6.0) * kerf;
                if (r < 4) {
                    continue;
                }
                o.contours.push_back(circle(at, r, Role::outer));
                if (rng.chance(0.7)) {
                    o.contours.push_back(
                        circle(at + Point{rng.uniform(-1, 1), 0}, rng.uniform(0.2, r - 3), Role::inner));
                }
            }
        }
        CompensateSettings s = settings(kerf);
        s.clockwise_swirl = rng.chance(0.5);
        const Compensated c = compensated(o, s);
        for (const Run& run : c.path.runs) {
            if (run.contour_begin == 0) {
                continue; // no lead-in, and that is a problem
            }
            ++leads;
            CHECK(least_clearance(o, run) > 0.5 * kerf - 2e-3);
            CHECK(holds(o.contours[run.source], run.path[0].at) == (run.role == Role::inner));
        }
    }
    CHECK(leads > 500);
}
