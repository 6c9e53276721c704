// Time along a path.
#include <cmath>
#include <numbers>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/motion/travel.hpp"

using namespace torchside;
using namespace torchside::motion;
using Catch::Approx;
using part::Role;
using part::Run;
using part::Vertex;

namespace {

Run square(double side, Role role = Role::outer) {
    Run run;
    run.role = role;
    for (const auto& [x, y] : {std::pair{0.0, 0.0}, {side, 0.0}, {side, side}, {0.0, side}, {0.0, 0.0}}) {
        run.path.push_back({{x, y}, 0.0});
    }
    return run;
}

Run circle(double diameter, Role role = Role::outer) {
    const double r = 0.5 * diameter;
    Run run;
    run.role = role;
    run.hole_mm = role == Role::inner ? diameter : 0.0;
    run.path = {{{r, 0}, 1.0}, {{-r, 0}, 1.0}, {{r, 0}, 0.0}};
    return run;
}

Drive at(double feed_mm_s) {
    Drive d;
    const Speed feed{feed_mm_s, mm_s};
    d.feed = {feed, feed, feed, {}};
    return d;
}

double seconds(const Estimate<Duration>& e) {
    return e.value.in(second);
}

} // namespace

TEST_CASE("Worked examples of straight lines, corners and arcs", "[motion][published]") {
    // a = 500 mm/s2 throughout; computed by hand (own work).
    const Acceleration a{500, mm_s2};
    for (const auto& [length, time] : {std::pair{100.0, 2.100}, {4.0, 0.178885}}) { // up to 50 mm/s; not up to it
        Run straight;
        straight.path = {{{0.0, 0.0}}, {{length, 0.0}}};
        CHECK(seconds(travel({{straight}}, at(50)).cutting) == Approx(time).epsilon(1e-5));
    }
    const std::pair<double, double> corners[] = {{10, 80.90}, {30, 26.62}, {90, 7.769}, {150, 2.955}};
    for (const auto& [degrees, speed] : corners) {
        CHECK(corner_speed(degrees * std::numbers::pi / 180, Length{0.05, mm}, a, Length{100, mm}).in(mm_s) ==
              Approx(speed).epsilon(2e-4));
    }
    const std::pair<double, double> arcs[] = {{2, 31.62}, {5, 50.00}, {10, 70.71}, {25, 111.80}};
    for (const auto& [r, speed] : arcs) {
        const double length = 2 * std::numbers::pi * r, ramp = speed * speed / 500;
        if (ramp < length) { // long enough to reach it: then the time tells the speed
            CHECK(seconds(travel({{circle(2 * r)}}, at(1000)).cutting) ==
                  Approx(2 * speed / 500 + (length - ramp) / speed).epsilon(1e-4));
        }
    }
}

TEST_CASE("A 100 mm square and a full circle", "[motion][published]") {
    CHECK(seconds(travel({{square(100)}}, at(50)).cutting) == Approx(8.314).margin(6e-4));
    CHECK(seconds(travel({{circle(20)}}, at(25)).cutting) == Approx(2.563).margin(6e-4));
    const Report r = travel({{square(100)}}, at(50));
    CHECK(r.cut.in(mm) == Approx(400));
    CHECK(r.starts == 1);
    // Each corner: below 40 mm/s for (1600 - 60.4) / 1000 mm on either side; start and end for 1.6 mm.
    const double side = (1600 - 500 * 0.05 * std::numbers::sqrt2 / 2 / (1 - std::numbers::sqrt2 / 2)) / 1000;
    CHECK(r.slow_share == Approx((6 * side + 3.2) / 400).epsilon(1e-9));
    REQUIRE(r.slow.size() == 5);
    CHECK(r.slow[1].from_mm == Approx(100 - side));
    CHECK(r.slow[1].to_mm == Approx(100 + side));
    CHECK(r.slow[1].lowest == Approx(7.769 / 50).epsilon(1e-4));
    CHECK(r.slow[0].lowest == 0.0);
}

TEST_CASE("A curve of short pieces is driven as the curve, not as if it were straight", "[motion]") {
    Run run; // radius 3 mm in 1 degree steps
    for (int i = 0; i <= 360; ++i) {
        run.path.push_back({{3 * std::cos(i * std::numbers::pi / 180), 3 * std::sin(i * std::numbers::pi / 180)}, 0.0});
    }
    CHECK(seconds(travel({{run}}, at(100)).cutting) ==
          Approx(seconds(travel({{circle(6)}}, at(100)).cutting)).epsilon(0.005));
}

TEST_CASE("Holes are cut slower, up to ten thicknesses across", "[motion]") {
    const Length t{6, mm};
    CHECK(hole_share(13, t) == 0.6);
    CHECK(hole_share(30, t) == 0.6);
    CHECK(hole_share(45, t) == Approx(0.8));
    CHECK(hole_share(60, t) == 1.0);
    CHECK(hole_share(600, t) == 1.0);
    const double hole = seconds(travel({{circle(20, Role::inner)}}, at(25)).cutting);
    CHECK(hole == Approx(seconds(travel({{circle(20)}}, at(15)).cutting)));
    CHECK(hole > seconds(travel({{circle(20)}}, at(25)).cutting));
}

TEST_CASE("Pierces, moves and touch-off", "[motion]") {
    Drive d = at(50);
    d.pierce_delay = {Duration{0.5, second}, Duration{0.3, second}, Duration{0.8, second}, {}};
    d.touch_off = Duration{2, second};
    d.rapid = Speed{100, mm_s};
    Run far = square(100);
    for (Vertex& v : far.path) {
        v.at.x += 200;
    }
    Report r = travel({{square(100), far}}, d);
    CHECK(r.starts == 2);
    CHECK(seconds(r.piercing) == Approx(1.0));
    CHECK(r.piercing.high.in(second) == Approx(1.6));
    // 200 mm to the second, then from 200 on to the next part at 0 + 300: 2.2 s and 1.2 s, rest to rest.
    CHECK(r.moving.in(second) == Approx(4 + 2.2 + 1.2));
    CHECK(seconds(r.total) == Approx(seconds(r.cutting) + 1.0 + r.moving.in(second)));
    CHECK((r.arc.high - r.arc.value).in(second) == Approx(0.6)); // the feed is sure here
    far.edge_start = true;
    r = travel({{square(100), far}}, d);
    CHECK(r.starts == 2);
    CHECK(seconds(r.piercing) == Approx(0.5));
    CHECK(r.to_drill == 0);
    // A plate that cannot be pierced: the start inside is at a drilled hole, said and not counted as a pierce.
    d.pierce_delay = {};
    r = travel({{square(100), far}}, d);
    CHECK(r.starts == 2);
    CHECK(r.to_drill == 1);
    CHECK(seconds(r.piercing) == 0.0);
}

TEST_CASE("A feed that is not sure leaves the time open", "[motion]") {
    Drive d = at(50);
    d.feed.low = Speed{40, mm_s};
    d.feed.high = Speed{60, mm_s};
    const Report r = travel({{square(100)}}, d);
    // First order; the true times at 40 and 60 mm/s lie within 1 % of it.
    CHECK(r.cutting.high.in(second) == Approx(seconds(travel({{square(100)}}, at(40)).cutting)).epsilon(0.01));
    CHECK(r.cutting.low.in(second) == Approx(seconds(travel({{square(100)}}, at(60)).cutting)).epsilon(0.01));
    // A hole so small that acceleration alone decides: a better feed would not help.
    Drive fast = d;
    fast.feed = {Speed{500, mm_s}, Speed{400, mm_s}, Speed{600, mm_s}, {}};
    const Report small = travel({{circle(2)}}, fast);
    CHECK(small.cutting.high == small.cutting.value);
}

TEST_CASE("Gaps of grating and expanded metal are restarts", "[motion]") {
    Drive d = at(50);
    d.pierce_delay = {Duration{0.5, second}, Duration{0.5, second}, Duration{0.5, second}, {}};
    d.gaps_per_m = 50; // 0.4 m of cut: 20 gaps
    const Report r = travel({{square(100)}}, d);
    CHECK(r.starts == 21);
    CHECK(r.restarts == 20);
    CHECK(seconds(r.piercing) == Approx(21 * 0.5));
}

TEST_CASE("The duty cycle's rests", "[motion]") {
    const Duration arc{60, second}, other{10, second}, allowed{360, second};
    CHECK(rests(arc, other, 6, allowed) == Duration{});                  // 360 s fit
    CHECK(rests(arc, other, 7, allowed).in(second) == Approx(240 - 70)); // one window to wait for
    CHECK(rests(arc, other, 13, allowed).in(second) == Approx(480 - 130));
    CHECK(rests(arc, Duration{60, second}, 100, allowed) == Duration{}); // moves are rest enough
    CHECK(rests(arc, other, 100000, Duration{600, second}) == Duration{});
    Drive d = at(50);
    d.quantity = 1000;
    d.arc_per_10_min = Duration{300, second};
    d.touch_off = Duration{};
    const Report r = travel({{square(100)}}, d);
    CHECK(r.resting > Duration{});
    CHECK(r.batch.in(second) == Approx(1000 * seconds(r.total)));
}

TEST_CASE("By hand there is no table that holds back", "[motion]") {
    Drive d = at(50);
    d.by_hand = true;
    const Report r = travel({{square(100), circle(20, Role::inner)}}, d);
    CHECK(seconds(r.cutting) == Approx((400 + 20 * std::numbers::pi) / 50).epsilon(1e-6));
    CHECK(r.slow_share == 0.0);
    CHECK(r.slow.empty());
    CHECK(r.moving.in(second) == Approx(6.0));
}

TEST_CASE("Nothing to follow, and pieces without length", "[motion]") {
    const Report none = travel({}, at(50));
    CHECK(seconds(none.total) == 0.0);
    CHECK(none.slow_share == 0.0);
    CHECK(travel({{Run{}}}, at(50)).starts == 0);
    Run doubled = square(100);
    doubled.path.insert(doubled.path.begin() + 2, doubled.path[2]);
    CHECK(seconds(travel({{doubled}}, at(50)).cutting) == seconds(travel({{square(100)}}, at(50)).cutting));
}
