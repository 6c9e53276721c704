// Faces of a cut: angles, and the ranges of ISO 9013.
#include <cmath>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/squareness.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinAbs;

namespace {

Length m(double value) {
    return Length{value, mm};
}

} // namespace

TEST_CASE("Angle of a face from the kerf at top and bottom") {
    // Own worked examples.
    CHECK_THAT(face_angle_deg(m(1.8), m(1.4), m(6)), WithinAbs(1.909, 5e-4));
    CHECK_THAT(face_angle_deg(m(2.4), m(1.5), m(12)), WithinAbs(2.148, 5e-4));
    CHECK(face_angle_deg(m(1.4), m(1.8), m(6)) < 0);
    // Without edge zones: 10 mm at 3 degrees, u 0.524 mm. With 0.6 mm left out at both edges it is 0.88 of it.
    CHECK_THAT(out_of_square(3, m(10)).in(mm), WithinAbs(0.524 * (10 - 1.2) / 10, 5e-4));
    CHECK_THAT(lag_angle_deg(m(1.0), m(6)), WithinAbs(9.46, 5e-3));
}

TEST_CASE("u ranges by thickness") {
    // ISO 9013:2017 (2002 alike), 12 mm, ranges 1 to 5.
    const double at_12[] = {0.086, 0.234, 0.520, 1.040, 1.620};
    // A published table in inches, 1.5 mm and 6.4 mm; its last figure for 6.4 mm is 0.0001 in off the formula.
    const double at_1_5[] = {0.0021, 0.0063, 0.0163, 0.0327, 0.0493};
    const double at_6_4[] = {0.0027, 0.0077, 0.0183, 0.0365, 0.0561};
    for (int r = 1; r <= 5; ++r) {
        CHECK_THAT(squareness_limit(r, m(12))->in(mm), WithinAbs(at_12[r - 1], 1e-12));
        CHECK_THAT(squareness_limit(r, m(1.5))->in(inch), WithinAbs(at_1_5[r - 1], 5e-5));
        CHECK_THAT(squareness_limit(r, m(6.4))->in(inch), WithinAbs(at_6_4[r - 1], 1e-4));
    }
    CHECK_FALSE(squareness_limit(6, m(6)));
    CHECK_FALSE(squareness_limit(3, m(0.3)));
}

TEST_CASE("The range of a measured u") {
    CHECK(squareness_range(m(0.90), m(6)) == 4); // limit 0.92
    CHECK(squareness_range(m(0.92), m(6)) == 4);
    CHECK(squareness_range(m(0.93), m(6)) == 5);
    CHECK(squareness_range(m(0.01), m(6)) == 1);
    CHECK_FALSE(squareness_range(m(3), m(6)));
    CHECK_FALSE(squareness_range(m(0.1), m(200)));
}

TEST_CASE("The zone at the edges that does not count") {
    // Table 1, from memory.
    const double rows[][2] = {{2, 0.2},  {3, 0.3}, {3.1, 0.3}, {6, 0.3}, {8, 0.6},
                              {10, 0.6}, {15, 1},  {40, 1.5},  {80, 2}};
    for (const auto& row : rows) {
        CHECK_THAT(edge_zone(m(row[0])).in(mm), WithinAbs(row[1], 1e-12));
    }
}

TEST_CASE("What both faces share, and what leans") {
    const Faces one = faces(4, 0);
    CHECK(one.alike_deg == 2);
    CHECK(one.leaning_deg == 2);
}
