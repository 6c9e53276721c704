// Coupons and their programs, run by an interpreter that knows nothing of how they were written.
#include <algorithm>
#include <cmath>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/piece.hpp"
#include "core/part/trace.hpp"
#include "core/tune/coupon.hpp"
#include "core/tune/program.hpp"
#include "tests/core/program_interpreter.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using torchside::test::Interpreter;
using torchside::test::Run;

namespace {

CouponSettings settings() {
    CouponSettings s;
    s.feed = Speed{1400, mm_min};
    return s;
}

Run run(const Coupon& c, const Controller& w, UnitSystem units) {
    const auto text = program(c, w, units, words::verbatim("mild steel 6 mm, 45 A"));
    REQUIRE(text.ok());
    const Run r = Interpreter(w).run(text.value());
    for (const std::string& f : r.faults) {
        FAIL_CHECK(f.c_str());
    }
    return r;
}

std::vector<Coupon> all_coupons(const CouponSettings& s) {
    return {ladder_coupon(s, {7, 1.12, s.feed}).value(), height_coupon(s).value(), kerf_coupon(s).value(),
            swirl_coupon(s).value()};
}

} // namespace

TEST_CASE("Feeds of a ladder, and the choice among clean legs") {
    // Own worked examples.
    const double expected[] = {655, 733, 821, 920, 1030, 1154, 1293};
    const std::vector<Speed> feeds = ladder_feeds({7, 1.12, Speed{920, mm_min}});
    REQUIRE(feeds.size() == 7);
    for (std::size_t i = 0; i < 7; ++i) {
        CHECK_THAT(feeds[i].in(mm_min), WithinAbs(expected[i], 0.5));
    }
    CHECK_THAT(ladder_choice(Speed{800, mm_min}, Speed{1150, mm_min}).in(mm_min), WithinAbs(959.2, 0.05));
}

TEST_CASE("Kerf from a square and from a hole cut on the line") {
    const Length w = kerf_from(Length{50, mm}, Length{48.35, mm}, false);
    CHECK_THAT(w.in(mm), WithinAbs(1.65, 1e-12));
    CHECK_THAT((0.5 * w).in(mm), WithinAbs(0.825, 1e-12));
    CHECK_THAT(kerf_from(Length{20, mm}, Length{21.6, mm}, true).in(mm), WithinAbs(1.6, 1e-12));
}

TEST_CASE("Every program runs clean in both units and every choice of words") {
    Controller seconds;
    Controller own{"M62 P1", "M63 P1", "M64 P2", "M65 P2", DwellUnit::millisecond, true, Length{20, mm}, {}};
    Controller flat;
    flat.z_words = false;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
        for (const Coupon& c : all_coupons(settings())) {
            for (const Controller* w : {&seconds, &own, &flat}) {
                if (!w->z_words && c.kind == CouponKind::heights) {
                    continue;
                }
                CAPTURE(static_cast<int>(c.kind), static_cast<int>(units), w->torch_on.c_str());
                const Run r = run(c, *w, units);
                CHECK(r.pierces == static_cast<int>(c.legs.size()));
                CHECK_THAT(r.dwell_s, WithinRel(0.5 * r.pierces, 1e-9));
                CHECK(r.fastest_mm_min <= settings().table.max_feed.in(mm_min));
                CHECK_THAT(r.torch_on_mm, WithinAbs(c.cut_length.in(mm), 0.05));
                CHECK(r.left >= -0.01);
                CHECK(r.bottom >= -0.01);
                CHECK(r.right <= c.width.in(mm) + 0.01);
                CHECK(r.top <= c.height.in(mm) + 0.01);
                if (w->z_words) {
                    CHECK(r.lowest_mm >= 0.5);
                }
            }
        }
    }
}

TEST_CASE("A ladder's legs are cut at the feeds it promises, every second one first") {
    const Coupon c = ladder_coupon(settings(), {5, 1.12, Speed{920, mm_min}}).value();
    const Run r = run(c, {}, UnitSystem::metric);
    REQUIRE(r.feeds.size() == 5);
    const double expected[] = {733, 920, 1154, 821, 1030};
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK_THAT(r.feeds[i], WithinAbs(expected[i], 0.6));
    }
    // 5 legs of 60 mm at those feeds take 20.0 s; the rest is 5 pierces of 0.5 s, 5 touch-offs of 3 s, and moves of 60 to
    // 78 mm at 10 000 mm/min, half of them at 500 mm/s2 up and down: 0.7 s each.
    CHECK_THAT(c.time.in(second), WithinAbs(19.96 + 2.5 + 15.0 + 3.5, 1.0));
}

TEST_CASE("A height ladder's legs are cut at its heights") {
    const Run r = run(height_coupon(settings()).value(), {}, UnitSystem::metric);
    const double expected[] = {0.9, 1.5, 2.1, 1.2, 1.8};
    REQUIRE(r.heights.size() == 5);
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK_THAT(r.heights[i], WithinAbs(expected[i], 1e-9));
    }
}

TEST_CASE("Legs at the table's own limit are not rounded past it") {
    CouponSettings s = settings();
    s.table.max_feed = Speed{7620, mm_min}; // 300 in/min
    const Coupon c = ladder_coupon(s, {5, 1.12, Speed{7620 / (1.12 * 1.12) * 0.9999999, mm_min}}).value();
    CHECK(run(c, {}, UnitSystem::inch).fastest_mm_min <= 7620);
    CHECK(run(c, {}, UnitSystem::metric).fastest_mm_min <= 7620);
}

TEST_CASE("Feeds past 10 000 and lengths past 10 m are written without gaps") {
    CouponSettings s = settings();
    s.table.max_feed = Speed{40000, mm_min};
    const Coupon c = ladder_coupon(s, {5, 1.12, Speed{20000, mm_min}}).value();
    const std::string text = program(c, {}, UnitSystem::metric, {}).value();
    CHECK(text.find(" F20000.0\n") != std::string::npos);
    CHECK(std::all_of(text.begin(), text.end(), [](char l) { return l == '\n' || (l >= ' ' && l <= '~'); }));
    CHECK(run(c, {}, UnitSystem::metric).fastest_mm_min > 20000);
}

TEST_CASE("A hole is two halves of a circle, anticlockwise, led in from its middle") {
    const Coupon c = kerf_coupon(settings()).value();
    REQUIRE(c.path.runs.size() == c.legs.size());
    const part::Run& hole = c.path.runs.front();
    REQUIRE(hole.path.size() == 4);
    const part::Point centre = hole.path.front().at;
    const double radius = 0.5 * c.legs.front().size->in(mm);
    CHECK(hole.path[1].at == hole.path[3].at);
    for (const part::Point& p : part::trace(std::span(hole.path).subspan(1), false, 0.01)) {
        CHECK_THAT(std::hypot(p.x - centre.x, p.y - centre.y), WithinAbs(radius, 1e-9));
    }
    const part::Point quarter = part::point_at({hole.path[1].at, hole.path[2].at, hole.path[1].bulge}, 0.5);
    CHECK_THAT(quarter.y, WithinAbs(centre.y + radius, 1e-9));
}

TEST_CASE("Programs say what they are and what to check") {
    const std::string text =
        program(all_coupons(settings())[0], {}, UnitSystem::metric, words::verbatim("mild steel (hot), 6 mm")).value();
    CHECK(text.find("Check before you run") != std::string::npos);
    CHECK(text.find("(mild steel  hot , 6 mm)") != std::string::npos);
    CHECK(text.find("\nG21\n") != std::string::npos);
    CHECK(text.substr(text.size() - 6) == "M5\nM2\n");
}

TEST_CASE("What does not fit is refused by name") {
    CouponSettings s = settings();
    CHECK(ladder_coupon(s, {4, 1.12, s.feed}).fault().field == "legs");
    CHECK(ladder_coupon(s, {5, 1.0, s.feed}).fault().field == "ratio");
    CHECK(ladder_coupon(s, {9, 1.5, Speed{3000, mm_min}}).fault().field == "feed_mm_min");
    CHECK(height_coupon(s, 9, Length{0.5, mm}).fault().field == "cut_height_mm");
    s.pierce_delay = Duration{};
    CHECK(kerf_coupon(s).fault().field == "pierce_delay_s");
    s = settings();
    s.pierce_height = Length{1, mm};
    CHECK(swirl_coupon(s).fault().field == "pierce_height_mm");
    const Coupon c = height_coupon(settings()).value();
    Controller w;
    w.torch_on = " ";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_on");
    w.torch_on = "M3\nG0 X0";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_on");
    w = {};
    w.height_on = "M64";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_off");
    w = {};
    w.torch_off = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_off");
    w = {};
    w.height_off = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_off");
    w.height_on = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_on");
    w = {};
    w.z_words = false;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.z_words");
    w = {};
    w.safe_height = Length{2, mm};
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.safe_height_mm");
}

TEST_CASE("Two squares tell tilt from swirl") {
    // Faces made from known parts: part faces alike + tilt at the bottom, - tilt at the top; swirl helps clockwise.
    const double alike = 2.0;
    const double tilt = 0.7;
    const double swirl = 1.1;
    const TiltAndSwirl r =
        read_swirl({alike - tilt - swirl, alike + tilt - swirl, alike - tilt + swirl, alike + tilt + swirl});
    CHECK_THAT(r.alike_deg, WithinAbs(alike, 1e-12));
    CHECK_THAT(r.tilt_deg, WithinAbs(tilt, 1e-12));
    CHECK_THAT(r.swirl_deg, WithinAbs(swirl, 1e-12));
    CHECK(r.clockwise_better);
    CHECK_FALSE(read_swirl({3, 3, 1, 1}).clockwise_better);
}
