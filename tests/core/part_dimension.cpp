// Every size of a shape that can be seen lies where its dimension says, and grows with the end that moves.
#include <array>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <span>
#include <string_view>

#include "core/part/dimension.hpp"
#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"

using namespace torchside;
using namespace torchside::part;

namespace {

constexpr std::string_view keys[] = {"length_mm", "width_mm",      "outside_mm",     "inside_mm",
                                     "hole_mm",   "hole_edge_mm",  "corner_mm",      "hole_circle_mm",
                                     "leg_mm",    "slot_width_mm", "slot_length_mm", "inner_corner_mm"};

Length& size_of(PartSpec& s, std::string_view key) {
    Length* const all[] = {&s.length, &s.width,       &s.outside, &s.inside,     &s.hole,        &s.hole_edge,
                           &s.corner, &s.hole_circle, &s.leg,     &s.slot_width, &s.slot_length, &s.inner_corner};
    for (std::size_t i = 0; i < std::size(keys); ++i) {
        if (keys[i] == key) {
            return *all[i];
        }
    }
    return s.length;
}

double far(Point a, Point b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// The point lies on a contour, or is the middle of one, or a corner that was rounded away.
bool is_on(const Outline& o, Point p, double corner) {
    for (const Contour& c : o.contours) {
        const Box box = box_of(c);
        if (far(p, {(box.low.x + box.high.x) / 2, (box.low.y + box.high.y) / 2}) < 1e-6) {
            return true;
        }
        for (const Vertex& v : c.points) {
            if (far(p, v.at) < 1e-6 + corner * 1.0001) {
                return true;
            }
        }
        const bool on_box = std::abs(p.x - box.low.x) < 1e-6 || std::abs(p.x - box.high.x) < 1e-6 ||
                            std::abs(p.y - box.low.y) < 1e-6 || std::abs(p.y - box.high.y) < 1e-6;
        if (on_box && p.x > box.low.x - 1e-6 && p.x < box.high.x + 1e-6 && p.y > box.low.y - 1e-6 &&
            p.y < box.high.y + 1e-6) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("a dimension is as long as its size and ends on the part, and its end moves as it says") {
    int seen = 0;
    for (const Shape shape :
         {Shape::plate, Shape::disc, Shape::ring, Shape::flange, Shape::gusset, Shape::slotted_plate, Shape::bracket}) {
        for (const int holes : {1, 2, 3, 4}) {
            PartSpec spec{.shape = shape};
            spec.corner = Length{4, mm};
            spec.holes = holes;
            REQUIRE(make_outline(spec).ok());
            for (const std::string_view key : keys) {
                const auto d = dimension_of(spec, key);
                if (!d) {
                    continue;
                }
                ++seen;
                INFO(static_cast<int>(shape) << ' ' << key << ", holes " << holes);
                const double size = size_of(spec, key).in(mm);
                CHECK(std::abs(far(d->from, d->to) - size) < 1e-9);
                CHECK(std::abs(std::hypot(d->way.x, d->way.y) - 1) < 1e-12);
                const auto outline = make_outline(spec).value();
                if (key != "hole_circle_mm" && !d->outer) {
                    CHECK(is_on(outline, d->to, 0));
                }
                PartSpec larger = spec;
                size_of(larger, key) = Length{size + 0.5, mm};
                const auto grown = dimension_of(larger, key);
                REQUIRE(grown);
                const Point moved{grown->to.x - d->to.x, grown->to.y - d->to.y};
                CHECK(std::abs(moved.x * d->way.x + moved.y * d->way.y - 0.5 / d->gain) < 1e-9);
            }
        }
    }
    CHECK(seen > 60);
}

TEST_CASE("a size that cannot be seen on the part has no dimension") {
    CHECK_FALSE(dimension_of({.shape = Shape::plate}, "holes"));
    CHECK_FALSE(dimension_of({.shape = Shape::plate, .holes = 1}, "hole_edge_mm"));
    CHECK_FALSE(dimension_of({.shape = Shape::plate, .holes = 0}, "hole_mm"));
    CHECK_FALSE(dimension_of({.shape = Shape::flange, .inside = Length{0, mm}}, "inside_mm"));
    CHECK_FALSE(dimension_of({.shape = Shape::disc}, "length_mm"));
    CHECK_FALSE(dimension_of({.shape = Shape::drawing}, "length_mm"));
}

TEST_CASE("where an end is dragged to means a size") {
    const auto plate = dimension_of({.shape = Shape::plate}, "length_mm");
    REQUIRE(plate);
    CHECK(dragged_mm(*plate, 100, {13, 40}, 5) == 115);
    CHECK(dragged_mm(*plate, 100, {-13, 0}, 1) == 87);
    const auto bore = dimension_of({.shape = Shape::ring}, "inside_mm"); // the middle stays
    REQUIRE(bore);
    CHECK(dragged_mm(*bore, 40, {3, 0}, 0.5) == 46);
}

TEST_CASE("a size is dragged by steps that a hand can tell apart") {
    CHECK(drag_step_mm(10, true) == 0.5);
    CHECK(drag_step_mm(3, true) == 1);
    CHECK(drag_step_mm(2, true) == 5);
    CHECK(drag_step_mm(0.001, true) == 100);
    CHECK(drag_step_mm(2, false) == 25.4 / 16);
    CHECK(drag_step_mm(0.5, false) == 25.4 / 4);
}
