#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <cmath>

#include "core/part/trace.hpp"

using namespace torchside::part;
using Catch::Matchers::WithinAbs;

TEST_CASE("half a circle becomes points within the tolerance", "[part][trace]") {
    const Vertex row[] = {{{0, 0}, 1}, {{20, 0}, 0}};
    const auto points = trace(row, false, 0.1);
    REQUIRE(points.size() == 13); // 180 / 16.2 degrees, rounded up: 12 steps
    for (std::size_t i = 0; i < points.size(); ++i) {
        CHECK_THAT(std::hypot(points[i].x - 10, points[i].y), WithinAbs(10, 1e-12));
        if (i > 0) {
            const double mx = (points[i].x + points[i - 1].x) / 2 - 10;
            const double my = (points[i].y + points[i - 1].y) / 2;
            CHECK(10 - std::hypot(mx, my) <= 0.1);
        }
    }
    CHECK(points.front() == Point{0, 0});
    CHECK(points.back() == Point{20, 0});
}

TEST_CASE("a stretch begins and ends where it says", "[part][trace]") {
    const Vertex square[] = {{{0, 0}, 0}, {{10, 0}, 0}, {{10, 10}, 0}, {{0, 10}, 0}};
    CHECK(trace(square, true, 0.1) == std::vector<Point>{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}});
    CHECK(trace(square, false, 0.1).size() == 4);
    CHECK(trace(square, true, 0.1, {5, 12}) == std::vector<Point>{{5, 0}, {10, 0}, {10, 2}});
    CHECK(trace(square, true, 0.1, {35, 99}) == std::vector<Point>{{0, 5}, {0, 0}});
    CHECK(trace(square, true, 0.1, {40, 50}).empty());
    CHECK(trace({}, true, 0.1).empty());
}
