// The air's report: the three verdicts, the two slopes of a run-down, and what the drawing shows.
#include <algorithm>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/air/assess.hpp"
#include "core/air/cycle.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::air;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

AirSystem shop(double compressor_l_min, double torch_bar = 4.5) {
    AirSystem system;
    system.compressor = Flow{compressor_l_min, litre_min};
    system.torch_pressure = Pressure{torch_bar, bar};
    return system;
}

bool has(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

} // namespace

// The worked example of core/air/cycle.hpp: 100 L, 8 and 6 bar, 150 out, 100 in, 4.5 bar wanted in the tank.
TEST_CASE("the compressor starts at cut-in, so a run-down has two slopes", "[air]") {
    const Cycle cycle = cycle_of(shop(100), Pressure{4.5, bar});
    CHECK(cycle.verdict == AirVerdict::runs_then_waits);
    REQUIRE(cycle.points.size() == 4);
    CHECK_THAT(cycle.points[1].at.in(second), WithinAbs(78.95, 0.01));
    CHECK(cycle.points[1].tank == Pressure{6, bar});
    CHECK(cycle.points[1].compressor);
    CHECK_THAT(cycle.runs->in(second), WithinAbs(78.95 + 177.65, 0.01));
    CHECK_FALSE(cycle.points[2].cutting);
    CHECK_THAT(cycle.recovers->in(second), WithinAbs(207.25, 0.01));
    CHECK_THAT(cycle.points[3].at.in(second), WithinRel((*cycle.runs + *cycle.recovers).in(second), 1e-12));
    CHECK(cycle.points[3].tank == Pressure{8, bar});
}

TEST_CASE("a compressor that keeps up", "[air]") {
    for (const double delivery : {250.0, 251.0, 400.0}) { // 150 used: it runs 60 % of the time or less
        const Report report = assess(shop(delivery));
        CHECK(report.verdict == AirVerdict::sustained);
        CHECK_FALSE(report.runs);
        CHECK_FALSE(report.recovers);
        CHECK(report.arc_share == 1.0);
        CHECK(report.cycle.size() == 3);
        CHECK(has(test::summary(report.message), "Enough air"));
    }
    CHECK(assess(shop(149)).verdict == AirVerdict::runs_then_waits);
}

TEST_CASE("a compressor that would run too long is said to overwork", "[air]") {
    // 180 delivered, 150 used: it runs 83 % of a steady cut; made for 60 % it rests enough at 72 % of arc.
    const Report report = assess(shop(180));
    CHECK(report.verdict == AirVerdict::overworked);
    CHECK_FALSE(report.runs);
    CHECK_THAT(report.demand_share, WithinRel(150.0 / 180, 1e-12));
    CHECK_THAT(report.arc_share, WithinRel(0.6 * 180 / 150, 1e-12));
    CHECK(has(test::summary(report.message), "83"));
    CHECK(has(test::summary(report.message), "60"));
    CHECK(has(test::said(report.message.remedy), "72"));
    CHECK(std::any_of(report.basis.begin(), report.basis.end(),
                      [](const Text& line) { return has(test::said(line), "rule of thumb"); }));
    // A screw compressor may run all the time.
    AirSystem screw = shop(180);
    screw.duty = 1;
    CHECK(assess(screw).verdict == AirVerdict::sustained);
    CHECK(assess(screw).arc_share == 1.0);
    screw.duty = 150.0 / 180;
    CHECK(assess(screw).verdict == AirVerdict::sustained);
    CHECK(assess(shop(150)).verdict == AirVerdict::overworked);
    // Too little pressure is the worse news.
    CHECK(assess(shop(180, 8.5)).verdict == AirVerdict::not_enough_pressure);
}

TEST_CASE("a compressor that does not", "[air]") {
    const Report report = assess(shop(100));
    REQUIRE(report.runs);
    REQUIRE(report.recovers);
    CHECK(report.receiver_min.value > Pressure{4.5, bar}); // the hose takes its part
    CHECK_THAT((report.receiver_min.value - report.hose_drop.value).in(bar), WithinRel(4.5, 1e-12));
    CHECK(report.runs->in(second) < 256.6);
    CHECK_THAT(report.arc_share, WithinRel(0.6 * 2 / 3, 1e-12));
    CHECK(has(test::summary(report.message), "Air lasts 4 min"));
    CHECK(has(test::summary(report.message), "then wait 3 min"));
    CHECK(has(test::said(report.message.remedy), "40"));
    CHECK(has(test::said(report.message.remedy), "250 L/min"));
}

TEST_CASE("not enough pressure at the torch", "[air]") {
    // Needs more than cut-in: between the two the torch starves and the compressor stands.
    const Report starved = assess(shop(400, 6.5));
    CHECK(starved.verdict == AirVerdict::not_enough_pressure);
    REQUIRE(starved.runs);
    CHECK(starved.runs->in(second) < 79);
    CHECK_FALSE(starved.recovers);
    CHECK(has(test::summary(starved.message), "The compressor starts at 6 bar"));
    CHECK(has(test::said(starved.message.remedy), "cut-in"));
    // More than even a full tank has.
    const Report never = assess(shop(400, 8.5));
    CHECK(never.verdict == AirVerdict::not_enough_pressure);
    CHECK_FALSE(never.runs);
    CHECK(has(test::summary(never.message), "Full, it has 8 bar"));
    // A thin hose alone does it.
    AirSystem thin = shop(400, 5.0);
    CHECK(assess(thin).verdict == AirVerdict::sustained);
    thin.hose_bore = Length{5, mm};
    const Report hose = assess(thin);
    CHECK(hose.verdict == AirVerdict::not_enough_pressure);
    CHECK(has(test::said(hose.message.remedy), "hose"));
    CHECK(hose.inlet_at_cut_in < Pressure{5, bar});
}

TEST_CASE("a hose drop near the edge is said to decide", "[air]") {
    AirSystem system = shop(400, 5.93);
    CHECK(assess(system).hose_decides);
    CHECK(assess(shop(400, 5.0)).hose_decides == false);
}

TEST_CASE("post-flow and water", "[air]") {
    AirSystem system = shop(100);
    system.post_flow = Duration{20, second};
    CHECK_THAT(assess(system).post_flow_air.in(litre), WithinRel(50.0, 1e-12));
    CHECK_THAT(assess(system).post_flow_refill.in(second), WithinRel(30.0, 1e-12));
    // 25 C, 60 %: 13.78 g/m3 in, 22.97 / 7.909 = 2.90 kept; 9 m3 an hour: 97.9 g.
    CHECK_THAT(assess(system).water_g_h, WithinAbs(97.9, 0.1));
    CHECK_THAT(assess(system).dew_point_c, WithinAbs(25, 1e-9));
    CHECK(assess(system).water_class == 0);
    system.humidity = 0;
    CHECK(assess(system).water_g_h == 0);
    CHECK(assess(system).water_class == 1);
    system.humidity = 0.05; // dry air: no water, and a dew point below the room's
    CHECK(assess(system).water_g_h == 0);
    CHECK(assess(system).dew_point_c < 25);
}

TEST_CASE("the sentences speak the shop's units", "[air]") {
    CHECK(has(test::summary(assess(shop(400, 6.5)).message, UnitSystem::inch), "87 psi"));
    CHECK(has(test::said(assess(shop(400)).dryness), "at least 25 °C"));
    CHECK(has(test::said(assess(shop(400)).dryness, UnitSystem::inch), "77 °F"));
    CHECK(has(test::said(assess(shop(400)).basis.back()), "licensed electrician decide"));
}
