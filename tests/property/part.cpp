// Offsets of random contours: out and back, order, and distance.
#include <algorithm>
#include <cmath>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/measure.hpp"
#include "core/part/near.hpp"
#include "core/part/offset.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;

namespace {

// A star of straight pieces and arcs that does not cross itself.
Contour star(test::Rng& rng) {
    const std::size_t n = 3 + rng.below(30);
    Contour c;
    for (std::size_t k = 0; k < n; ++k) {
        const double angle =
            6.283185307179586 * (static_cast<double>(k) + rng.uniform(-0.2, 0.2)) / static_cast<double>(n);
        const double r = rng.uniform(30, 60);
        const double bulge = rng.chance(0.5) ? 0.0 : rng.uniform(-0.5, 0.5) / static_cast<double>(n);
        c.points.push_back({{r * std::cos(angle), r * std::sin(angle)}, bulge});
    }
    return c;
}

// Sides and corners all rounder than 2 mm: nothing vanishes by an offset of less, either way.
Contour rounded(test::Rng& rng) {
    const Offset out = offset(star(rng), 4.0);
    if (out.loops.size() != 1) {
        return rounded(rng);
    }
    const Offset in = offset(out.loops[0], -2.0); // inside corners of 2 mm
    return in.loops.size() == 1 ? in.loops[0] : rounded(rng);
}

double worst_distance(const Contour& from, const Contour& to) {
    const Outline o{{to}};
    Near near(o);
    double worst = 0.0;
    for (std::size_t i = 0; i < from.points.size(); ++i) {
        for (int k = 0; k < 4; ++k) {
            worst = std::max(worst, near.nearest(point_at(piece_of(from, i), k / 4.0)).mm);
        }
    }
    return worst;
}

} // namespace

TEST_CASE("Out and back in gives the outline again where nothing vanishes", "[part]") {
    test::Rng rng(31);
    for (int i = 0; i < 300; ++i) {
        Contour c = rounded(rng);
        const Offset once = offset(c, 1.0);
        REQUIRE(once.loops.size() == 1);
        const Offset back = offset(once.loops[0], -1.0);
        REQUIRE(back.loops.size() == 1);
        CHECK(worst_distance(back.loops[0], c) < 2e-3);
        CHECK_THAT(area_mm2(back.loops[0]), WithinAbs(area_mm2(c), 1e-3 * length_mm(c)));
    }
}

TEST_CASE("Out and back never loses metal, in and back never wins any", "[part]") {
    test::Rng rng(32);
    for (int i = 0; i < 400; ++i) {
        const Contour c = star(rng);
        const double d = rng.uniform(0.3, 3);
        double area = 0;
        for (const Contour& loop : offset(c, d).loops) {
            for (const Contour& again : offset(loop, -d).loops) {
                area += area_mm2(again);
            }
        }
        CHECK(area > area_mm2(c) - 1e-2);
        area = 0;
        for (const Contour& loop : offset(c, -d).loops) {
            for (const Contour& again : offset(loop, d).loops) {
                area += area_mm2(again);
            }
        }
        CHECK(area < area_mm2(c) + 1e-2);
    }
}

TEST_CASE("The farther outside, the larger; every place as far away as asked", "[part]") {
    test::Rng rng(33);
    for (int i = 0; i < 300; ++i) {
        const Contour c = star(rng);
        const Outline drawn{{c}};
        Near near(drawn);
        double last = area_mm2(c);
        for (const double d : {0.4, 0.8, 1.6, 3.2}) {
            double area = 0;
            const Offset o = offset(c, d);
            CHECK(o.whole);
            for (const Contour& loop : o.loops) {
                area += area_mm2(loop);
                for (std::size_t k = 0; k < loop.points.size(); ++k) {
                    for (const double share : {0.0, 0.3, 0.7}) {
                        const double away = near.nearest(point_at(piece_of(loop, k), share)).mm;
                        CHECK(away > d - 1e-3);
                        CHECK(away < d + 2e-3);
                    }
                }
            }
            CHECK(area > last);
            last = area;
        }
    }
}
