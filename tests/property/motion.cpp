// Properties of the time along random paths; fixed seeds.
#include <cmath>
#include <numbers>

#include <catch2/catch_test_macros.hpp>

#include "core/motion/travel.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::motion;

namespace {

part::CutPath random_path(test::Rng& rng) {
    part::CutPath path;
    for (auto runs = 1 + rng.below(5); runs > 0; --runs) {
        part::Run run;
        run.role = rng.chance(0.5) ? part::Role::inner : part::Role::outer;
        run.hole_mm = run.role == part::Role::inner ? rng.by_factor(2.0, 300.0) : 0.0;
        run.edge_start = rng.chance(0.1);
        part::Point at{rng.uniform(-500, 500), rng.uniform(-500, 500)};
        const bool fine = rng.chance(0.4);
        for (auto n = 1 + rng.below(60); n > 0; --n) {
            run.path.push_back({at, rng.chance(0.3) ? rng.uniform(-1.5, 1.5) : 0.0});
            const double length = fine ? rng.by_factor(0.02, 2.0) : rng.by_factor(0.5, 300.0);
            const double heading = rng.uniform(0, 2 * std::numbers::pi);
            at = {at.x + length * std::cos(heading), at.y + length * std::sin(heading)};
        }
        path.runs.push_back(run);
    }
    return path;
}

Drive random_drive(test::Rng& rng) {
    Drive d;
    const Speed feed{rng.by_factor(100, 20000), mm_min};
    d.feed = {feed, 0.8 * feed, 1.3 * feed, {}};
    d.acceleration = Acceleration{rng.by_factor(20, 10000), mm_s2};
    d.corner_tolerance = Length{rng.by_factor(0.005, 2), mm};
    d.rapid = Speed{rng.by_factor(500, 60000), mm_min};
    d.pierce_delay = {Duration{0.5, second}, Duration{0.3, second}, Duration{1, second}, {}};
    d.thickness = Length{rng.by_factor(0.5, 30), mm};
    d.quantity = 1 + static_cast<int>(rng.below(500));
    d.arc_per_10_min = Duration{rng.uniform(60, 600), second};
    return d;
}

} // namespace

TEST_CASE("Less acceleration, tolerance or feed never saves time", "[motion][property]") {
    test::Rng rng{20240801};
    for (int i = 0; i < 2000; ++i) {
        const part::CutPath path = random_path(rng);
        const Drive drive = random_drive(rng);
        const Report fast = travel(path, drive);
        const double less = rng.uniform(0.2, 1.0), slack = 1 + 1e-12;
        CAPTURE(i, less);
        Drive weak = drive;
        weak.acceleration = less * drive.acceleration;
        CHECK(slack * travel(path, weak).cutting.value >= fast.cutting.value);
        CHECK(slack * travel(path, weak).moving >= fast.moving);
        CHECK(slack * travel(path, weak).batch >= fast.batch);
        Drive tight = drive;
        tight.corner_tolerance = less * drive.corner_tolerance;
        CHECK(slack * travel(path, tight).cutting.value >= fast.cutting.value);
        Drive slow = drive;
        slow.feed.value = less * drive.feed.value;
        CHECK(slack * travel(path, slow).cutting.value >= fast.cutting.value);
    }
}

TEST_CASE("Time is at least length over feed, and every figure is sound", "[motion][property]") {
    test::Rng rng{20240802};
    for (int i = 0; i < 2000; ++i) {
        const part::CutPath path = random_path(rng);
        const Drive drive = random_drive(rng);
        const Report r = travel(path, drive);
        CAPTURE(i);
        CHECK(1.0000001 * r.cutting.value >= travel_time(r.cut, drive.feed.value));
        CHECK((r.slow_share >= 0.0 && r.slow_share <= 1.0));
        CHECK((r.resting >= Duration{} && std::isfinite(r.batch.in(second))));
        for (const auto& e : {r.cutting, r.piercing, r.arc, r.total}) {
            CHECK((Duration{} <= e.low && e.low <= e.value && e.value <= e.high && std::isfinite(e.high.in(second))));
        }
        for (std::size_t s = 0; s < r.slow.size(); ++s) {
            const SlowSpan& span = r.slow[s];
            CHECK((span.from_mm >= 0.0 && span.from_mm < span.to_mm && span.lowest >= 0.0 && span.lowest < 0.8));
            if (s > 0 && r.slow[s - 1].run == span.run) {
                CHECK(r.slow[s - 1].to_mm < span.from_mm);
            }
        }
    }
}

TEST_CASE("The batch never takes less time for one part more", "[motion][property]") {
    test::Rng rng{20240803};
    for (int i = 0; i < 2000; ++i) {
        const Duration arc{rng.uniform(1, 400), second}, other{rng.uniform(0, 100), second},
            allowed{rng.uniform(30, 600), second};
        Duration last{};
        for (int q = 1; q < 40; ++q) {
            const Duration all = static_cast<double>(q) * (arc + other) + rests(arc, other, q, allowed);
            CHECK(1.0000001 * all >= last);
            last = all;
        }
    }
}
