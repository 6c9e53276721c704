// Checks of a part, ISO 9013 deviations, and what a coupon says of the kerf.
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/checks.hpp"
#include "core/part/kerf.hpp"
#include "core/part/piece.hpp"
#include "core/part/shapes.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;

namespace {

std::string codes(const std::vector<Problem>& problems) {
    std::string all;
    for (const Problem& p : problems) {
        all += (all.empty() ? "" : " ") + std::string(p.code);
    }
    return all;
}

Contour polygon(std::initializer_list<Point> points, Role role = Role::outer) {
    Contour c{{}, role};
    for (const Point p : points) {
        c.points.push_back({p, 0.0});
    }
    return c;
}

std::vector<Problem> hole_in_plate(double d_mm, double t_mm) {
    const Outline o{{polygon({{0, 0}, {100, 0}, {100, 100}, {0, 100}}), circle({50, 50}, 0.5 * d_mm, Role::inner)}};
    return check_part(o, Length{t_mm, mm}, Length{1.6, mm});
}

double allowed(double size_mm, double t_mm) {
    const Deviation d = deviation(Length{size_mm, mm}, Length{t_mm, mm});
    REQUIRE(d.state == Deviation::State::given);
    return d.either_way.in(mm);
}

} // namespace

TEST_CASE("Holes: common practice and the standard's table", "[part]") {
    CHECK(codes(hole_in_plate(5, 6)) == "small_hole");
    CHECK(codes(hole_in_plate(2, 8)) == "small_hole outside_9013");
    CHECK(codes(hole_in_plate(12, 6)).empty());
    CHECK(codes(hole_in_plate(6, 6)).empty());
    const auto slot =
        check_part({{polygon({{0, 0}, {0, 5}, {40, 5}, {40, 0}}, Role::inner)}}, Length{6, mm}, Length{1, mm});
    REQUIRE(codes(slot) == "small_hole");
    CHECK(slot[0].size_mm == 5);
}

TEST_CASE("Limit deviations of ISO 9013:2017 class 2", "[part]") { // a reproduction of the table, seen
    CHECK(allowed(100, 6) == 0.9);
    CHECK(allowed(5, 6) == 0.8);
    CHECK(allowed(2.99, 6.3) == 0.7);
    CHECK(allowed(3, 6.31) == 1.0);
    CHECK(allowed(0.5, 1) == 0.5);
    CHECK(allowed(3999, 20) == 4.2);
    CHECK(allowed(7999, 20) == 4.5);
    using State = Deviation::State;
    CHECK(deviation(Length{2, mm}, Length{12, mm}).state == State::outside_table);
    CHECK(deviation(Length{5000, mm}, Length{1, mm}).state == State::outside_table);
    CHECK(deviation(Length{8000, mm}, Length{6, mm}).state == State::outside_table);
    CHECK(deviation(Length{100, mm}, Length{20.1, mm}).state == State::not_at_hand);
    CHECK(deviation(Length{0, mm}, Length{6, mm}).state == State::not_at_hand);
    CHECK(std::string(deviation_edition) == "ISO 9013:2017, class 2");
}

TEST_CASE("Bridges narrower than two kerfs, at their narrowest", "[part]") {
    const Length t{3, mm};
    const Length kerf{1.6, mm};
    // A hole 2 mm from the edge, another 4 mm; between them 20 mm.
    Outline o{{polygon({{0, 0}, {100, 0}, {100, 50}, {0, 50}}), circle({20, 12}, 10, Role::inner),
               circle({60, 14}, 10, Role::inner)}};
    auto found = check_part(o, t, kerf);
    REQUIRE(codes(found) == "thin_bridge");
    CHECK_THAT(found[0].size_mm, WithinAbs(2.0, 1e-6));
    CHECK_THAT(norm(found[0].at - Point{20, 1}), WithinAbs(0, 1e-3));
    // Two holes side by side, 1 mm apart.
    o.contours[1] = circle({39, 25}, 10, Role::inner);
    o.contours[2] = circle({60, 25}, 10, Role::inner);
    found = check_part(o, t, kerf);
    REQUIRE(codes(found) == "thin_bridge");
    CHECK_THAT(found[0].size_mm, WithinAbs(1.0, 1e-6));
    CHECK_THAT(norm(found[0].at - Point{49.5, 25}), WithinAbs(0, 1e-3));
    // A neck of the outline itself, and none in its square corners.
    o = {{polygon({{0, 0},
                   {40, 0},
                   {40, 19},
                   {60, 19},
                   {60, 0},
                   {100, 0},
                   {100, 40},
                   {60, 40},
                   {60, 21},
                   {40, 21},
                   {40, 40},
                   {0, 40}})}};
    found = check_part(o, t, kerf);
    REQUIRE_FALSE(found.empty());
    for (const Problem& p : found) {
        CHECK(p.code == std::string("thin_bridge"));
        CHECK_THAT(p.size_mm, WithinAbs(2.0, 1e-6));
        CHECK_THAT(p.at.y, WithinAbs(20, 1e-6));
    }
    CHECK(check_part(o, t, Length{0.9, mm}).empty());
    CHECK(check_part({{polygon({{0, 0}, {50, 0}, {20, 40}})}}, t, kerf).empty());
    CHECK(codes(check_part({{polygon({{0, 0}, {80, 0}, {0, 10}})}}, t, kerf)) == "thin_bridge"); // a tip of 7 degrees
    // A hole as near to the left edge as to the right: wherever the plate lies, the same place is named.
    for (int i = 0; i < 40; ++i) {
        const Point by{0.37 * i, 0.71 * i};
        const Outline shifted{{polygon({by, by + Point{22, 0}, by + Point{22, 60}, by + Point{0, 60}}),
                               circle(by + Point{11, 30}, 10, Role::inner)}};
        found = check_part(shifted, t, kerf);
        REQUIRE(codes(found) == "thin_bridge");
        CHECK(found[0].at.x - by.x > 20.0);
    }
    PartSpec flange;
    flange.shape = Shape::flange;
    CHECK(check_part(make_outline(flange).value(), Length{6, mm}, kerf).empty());
}

TEST_CASE("Sizes: drawn, on the line, what to draw, deviation", "[part]") {
    PartSpec s;
    s.holes = 1;
    s.hole = {20, mm};
    const auto sizes = sizes_of(make_outline(s).value(), Length{6, mm}, Length{1.6, mm});
    REQUIRE(sizes.size() == 3);
    CHECK(sizes[0].what == PartSize::What::width);
    CHECK_THAT(sizes[0].on_line.in(mm), WithinAbs(98.4, 1e-12));
    CHECK_THAT(sizes[0].draw.in(mm), WithinAbs(101.6, 1e-12));
    CHECK(sizes[0].deviation.either_way == Length{0.9, mm});
    CHECK(sizes[2].what == PartSize::What::diameter);
    CHECK(sizes[2].contour == 1);
    CHECK_THAT(sizes[2].on_line.in(mm), WithinAbs(21.6, 1e-9));
    CHECK_THAT(sizes[2].draw.in(mm), WithinAbs(18.4, 1e-9));
}

TEST_CASE("Kerf from a size, and what to draw", "[part]") {
    CHECK_THAT(kerf_from(Length{50, mm}, Length{48.35, mm}, false).in(mm), WithinAbs(1.65, 1e-12));
    CHECK_THAT(draw_for(Length{50, mm}, Length{1.65, mm}, false).in(mm), WithinAbs(51.65, 1e-12));
}
