// Joining, duplicates, nesting and crossings.
#include <cmath>
#include <numbers>
#include <span>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/drawing/drawing.hpp"
#include "core/drawing/wire.hpp"
#include "core/part/measure.hpp"
#include "tests/core/drawing_text.hpp"

using namespace torchside;
using namespace torchside::drawing;
using namespace torchside::part;
using namespace torchside::test;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

Drawing joined(const std::string& entities, double join = 0.05) {
    ReadSettings settings;
    settings.join_mm = join;
    return read(dxf(entities), settings);
}

std::size_t count(const Drawing& d, Role role) {
    std::size_t n = 0;
    for (const Contour& c : d.outline.contours) {
        n += c.role == role ? 1 : 0;
    }
    return n;
}

const Problem& first(const Drawing& d, std::string_view code) {
    for (const Problem& p : d.problems) {
        if (p.code == code) {
            return p;
        }
    }
    FAIL("no such problem");
    return d.problems.front();
}

} // namespace

TEST_CASE("a gap within the tolerance is joined in its middle, one beyond it is named") {
    const std::string lines =
        dxf_line(0, 0, 50, 0) + dxf_line(50, 50, 50, 0) + dxf_line(50, 50, 0, 50) + dxf_line(0, 50, 0, 0.04);
    const Drawing in = joined(lines, 0.05);
    REQUIRE(in.outline.contours.size() == 1);
    CHECK(in.outline.contours[0].role == Role::outer);
    CHECK(in.counts.gaps_joined == 1);
    CHECK_THAT(in.counts.largest_gap_mm, WithinAbs(0.04, 1e-12));
    CHECK_THAT(area_mm2(in.outline), WithinAbs(2500 - 0.5, 1e-9)); // a triangle of 50 by 0.02 less
    const Drawing out = joined(lines, 0.039);
    REQUIRE(out.outline.contours.size() == 1);
    CHECK(out.outline.contours[0].role == Role::open);
    CHECK(count(out, "open_contour") == 1);
    CHECK_THAT(first(out, "open_contour").size_mm, WithinAbs(0.04, 1e-12));
}

TEST_CASE("the same piece twice is taken out, also reversed, also an arc or a whole outline") {
    const Drawing d = joined(dxf_square(0, 0, 50) + dxf_line(50, 0, 0, 0) + dxf_line(0.01, 50.02, 0, 0.01));
    CHECK(count(d, Role::outer) == 1);
    CHECK(d.outline.contours.size() == 1);
    CHECK(d.counts.duplicates == 2);
    CHECK(count(d, "duplicate") == 2);
    const Drawing circles = joined(dxf_circle(9, 9, 5) + dxf_circle(9, 9, 5) + dxf_circle(9, 9, 3));
    CHECK(circles.outline.contours.size() == 2);
    CHECK(circles.counts.duplicates == 2);
    // Two half circles between the same ends are not the same piece.
    const std::string halves = dxf_pairs({{0, "ARC"},
                                          {10, "0"},
                                          {20, "0"},
                                          {40, "5"},
                                          {50, "0"},
                                          {51, "180"},
                                          {0, "ARC"},
                                          {10, "0"},
                                          {20, "0"},
                                          {40, "5"},
                                          {50, "180"},
                                          {51, "0"}});
    CHECK_THAT(area_mm2(joined(halves).outline), WithinRel(25 * pi, 1e-12));
}

TEST_CASE("pieces too short are named") {
    const Drawing d = joined(dxf_square(0, 0, 50) + dxf_line(20, 20, 20.02, 20));
    CHECK(d.outline.contours.size() == 1);
    CHECK(d.counts.short_pieces == 1);
    CHECK_THAT(first(d, "short_piece").size_mm, WithinAbs(0.02, 1e-9));
}

TEST_CASE("a stray line at a corner leaves the outline whole") {
    const Drawing d = joined(dxf_line(0, 0, -20, -20) + dxf_square(0, 0, 50) + dxf_line(50, 50, 60, 70));
    CHECK(count(d, Role::outer) == 1);
    CHECK(count(d, Role::open) == 2);
    CHECK_THAT(std::abs(area_mm2(d.outline)), WithinRel(2500.0, 1e-12));
    CHECK(count(d, "branch") == 2);
    CHECK(count(d, "open_contour") == 2);
}

TEST_CASE("two squares that meet in a corner stay two") {
    const Drawing d = joined(dxf_square(0, 0, 10) + dxf_square(10, 10, 10));
    CHECK(count(d, Role::outer) == 2);
    CHECK(count(d, "branch") == 1);
    CHECK(count(d, "crossing") == 1); // they touch
}

TEST_CASE("a vertex given twice, or nearly, is no crossing") {
    const auto square = [](const std::string& more) {
        return "0\nLWPOLYLINE\n8\n0\n90\n5\n70\n1\n10\n0\n20\n0\n10\n10\n20\n0\n" + more +
               "10\n10\n20\n10\n10\n0\n20\n10\n";
    };
    CHECK(joined(square("10\n10\n20\n0\n")).problems.empty());
    CHECK(joined(square("10\n10.0000005\n20\n0\n")).problems.empty());
    CHECK(count(joined(square("10\n5\n20\n20\n")), "crossing") == 1);
}

TEST_CASE("crossings and overlaps are found once each") {
    const Drawing d = joined(dxf_square(0, 0, 20) + dxf_square(10, 10, 20));
    CHECK(count(d, Role::outer) + count(d, Role::inner) == 2);
    CHECK(count(d, "crossing") == 2);
    CHECK(count(joined(dxf_circle(0, 0, 10) + dxf_circle(15, 0, 10)), "crossing") == 2);
    CHECK(count(joined(dxf_circle(0, 0, 10) + dxf_circle(20, 0, 10)), "crossing") == 1);    // touch
    CHECK(count(joined(dxf_circle(0, 0, 10) + dxf_circle(20.01, 0, 10)), "crossing") == 0); // do not
    CHECK(count(joined(dxf_square(0, 0, 20) + dxf_circle(20, 10, 5)), "crossing") == 2);
    const Drawing beside = joined(dxf_square(0, 0, 20) + dxf_square(20, 5, 10));
    CHECK(count(beside, "overlap") == 1);
    CHECK(count(beside, "crossing") == 0);
    CHECK(count(joined(dxf_square(0, 0, 20) + dxf_line(5, 0, 15, 0)), "overlap") == 1);
    // A bow tie crosses itself.
    const Drawing tie =
        joined(dxf_line(0, 0, 10, 10) + dxf_line(10, 10, 10, 0) + dxf_line(10, 0, 0, 12) + dxf_line(0, 12, 0, 0));
    CHECK(count(tie, "crossing") == 1);
    CHECK_THAT(first(tie, "crossing").at.x, WithinAbs(12 / 2.2, 1e-9));
}

TEST_CASE("nesting alternates") {
    const Drawing d =
        joined(dxf_circle(0, 0, 60) + dxf_circle(0, 0, 20) + dxf_circle(0, 0, 10) + dxf_circle(200, 0, 5));
    const Role roles[] = {Role::outer, Role::inner, Role::outer, Role::outer};
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(d.outline.contours[i].role == roles[i]);
    }
}

TEST_CASE("a line drawn there and back has no area") {
    const Drawing d = joined(dxf_pairs(
        {{0, "LWPOLYLINE"}, {90, "3"}, {70, "1"}, {10, "0"}, {20, "0"}, {10, "10"}, {20, "0"}, {10, "20"}, {20, "0"}}));
    CHECK(count(d, "no_area") == 1);
    CHECK(count(d, Role::open) == 1);
}

TEST_CASE("many problems are listed up to a hundred of a kind, and counted") {
    std::string many = dxf_square(0, 0, 10);
    for (int i = 0; i < 250; ++i) {
        many += dxf_square(0, 0, 10);
    }
    const Drawing d = joined(many);
    CHECK(d.outline.contours.size() == 1);
    CHECK(d.counts.duplicates == 1000);
    CHECK(count(d, "duplicate") == 100);
}

TEST_CASE("what is all over each other ends all the same") {
    std::string many;
    for (int i = 0; i < 2000; ++i) {
        many += dxf_line(0, i * 0.1, 300, 300 - i * i * 4e-5);
    }
    const Drawing d = joined(many);
    CHECK(count(d, "crossing") == 100);
    CHECK(count(d, "unchecked") == 1);
    std::string rings;
    for (int i = 1; i <= 1000; ++i) {
        rings += dxf_circle(0, 0, i * 0.1);
    }
    CHECK(count(joined(rings), Role::inner) == 500);
}

TEST_CASE("a drawing is handed over as numbers to the last bit, and nothing else is taken") {
    const Drawing d =
        joined(dxf_square(0, 0, 50) + dxf_line(50, 0, 0, 0) + dxf_circle(25, 25, 4.1) + dxf_line(60, 0, 70, 0.3));
    std::vector<double> row = pack(d);
    const auto back = unpack(row);
    REQUIRE(back);
    CHECK(back->outline == d.outline);
    CHECK(back->unit == d.unit);
    CHECK(back->unit_known);
    CHECK(back->counts.duplicates == 1);
    REQUIRE(back->problems.size() == d.problems.size());
    for (std::size_t i = 0; i < d.problems.size(); ++i) {
        CHECK(back->problems[i].title == d.problems[i].title);
        CHECK(back->problems[i].at == d.problems[i].at);
    }
    CHECK(pack(*back) == row);
    for (std::size_t i = 0; i < row.size(); ++i) {
        CHECK_FALSE(unpack(std::span(row).first(i)));
        std::vector<double> wrong = row;
        wrong[i] = -1e300;
        static_cast<void>(unpack(wrong)); // may be a drawing still: a coordinate
    }
    row.push_back(0);
    CHECK_FALSE(unpack(row));
}

TEST_CASE("a curve drawn as lines shorter than the tolerance, each on its own, is kept whole") {
    // Such lines used to be dropped one by one before anything was joined.
    const auto chords = [](Point centre, double r, double from, double sweep, int n) {
        std::string out;
        const auto at = [&](int k) {
            const double a = from + sweep * k / n;
            return Point{centre.x + r * std::cos(a), centre.y + r * std::sin(a)};
        };
        for (int k = 0; k < n; ++k) {
            out += dxf_line(at(k).x, at(k).y, at(k + 1).x, at(k + 1).y);
        }
        return out;
    };
    const std::string circle = chords({9, 9}, 5, 0, 2 * pi, 720);
    for (const std::string& lines : {circle, circle + circle}) { // the second time they are duplicates
        const Drawing d = joined(lines);
        REQUIRE(d.outline.contours.size() == 1);
        CHECK(d.outline.contours[0].points.size() == 720);
        CHECK_THAT(area_mm2(d.outline), WithinAbs(360 * 25 * std::sin(pi / 360), 1e-3)); // places are to 1e-6
        CHECK(d.counts.gaps_joined == 0);
        CHECK(d.counts.short_pieces == 0);
        CHECK(d.counts.duplicates == (lines.size() > circle.size() ? 720 : 0));
    }
    // A side of 20 mm, of which 2 mm are lines of 0.04; a corner of 2 mm radius in lines of 0.03.
    std::string part = dxf_line(0, 0, 9, 0) + dxf_line(11, 0, 18, 0) + chords({18, 2}, 2, -pi / 2, pi / 2, 105) +
                       dxf_line(20, 2, 20, 20) + dxf_line(20, 20, 0, 20) + dxf_line(0, 20, 0, 0);
    for (int k = 0; k < 50; ++k) {
        part += dxf_line(9 + 0.04 * k, 0, 9 + 0.04 * (k + 1), 0);
    }
    const Drawing d = joined(part + dxf_line(5, 5, 5, 5.02));
    REQUIRE(d.outline.contours.size() == 1);
    CHECK(d.outline.contours[0].role == Role::outer);
    CHECK_THAT(area_mm2(d.outline), WithinAbs(400 - (4 - pi), 1e-3));
    CHECK(d.counts.short_pieces == 1); // what is loose is still dropped, and named
    CHECK_THAT(first(d, "short_piece").size_mm, WithinAbs(0.02, 1e-9));
}
