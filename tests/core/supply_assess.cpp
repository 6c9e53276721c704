// The circuit's report: the verdicts that matter most, and what each part of it says.
#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/supply/assess.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::supply;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

// An arc as a small air torch has it on 6 mm plate: 128.75 V at 45 A.
constexpr ArcLine plate_arc{Voltage{95, volt}, Resistance{0.75, ohm}};

Input shop(double line_v, double breaker_a, int awg, double output_a) {
    Input input;
    input.circuit.line = Voltage{line_v, volt};
    input.circuit.breaker = Current{breaker_a, ampere};
    input.circuit.run_awg = awg;
    input.circuit.run = Length{15, metre};
    input.circuit.marked_75c = true;
    input.output = Current{output_a, ampere};
    input.arc = plate_arc;
    return input;
}

const Check* find(const Report& report, CheckKind kind) {
    const auto at =
        std::find_if(report.checks.begin(), report.checks.end(), [&](const Check& c) { return c.kind == kind; });
    return at == report.checks.end() ? nullptr : &*at;
}

bool has(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

const Node& node(const Report& report, Stop stop) {
    return report.chain.nodes[static_cast<std::size_t>(stop)];
}

} // namespace

// Common practice, no source: the full output of a 50 A class machine on 120 V (about 30 A, no power-factor correction)
// draws over 40 A.
TEST_CASE("30 A from a 120 V outlet", "[supply]") {
    const Report report = assess(shop(120, 20, 12, 30));
    CHECK_THAT(report.input_at_rated_load.in(ampere), WithinRel(41.07, 1e-3));
    CHECK(report.input >
          report.input_at_rated_load); // the arc is above the rated load voltage, and the wires take some
    CHECK(report.verdict == CircuitVerdict::trips_soon);
    REQUIRE(report.trips_within);
    CHECK_THAT(report.trips_within->in(second), WithinAbs(120, 1e-9));
    REQUIRE(report.highest_current);
    CHECK(report.highest_current->in(ampere) > 9);
    CHECK(report.highest_current->in(ampere) < 17);
    CHECK(report.highest_below_machine);
    CHECK(has(test::summary(report.message), "trips within 2 min"));
    CHECK(has(test::summary(report.message), "on a 20 A breaker"));
    CHECK(has(test::said(report.message.remedy), "starts at 20 A"));
    CHECK(has(test::said(report.message.remedy), "240 V"));
    CHECK(report.chain.weakest == static_cast<int>(Stop::breaker));
}

TEST_CASE("the highest current draws just the breaker's rating", "[supply]") {
    Input input = shop(120, 20, 12, 30);
    input.output = *assess(input).highest_current;
    const Report at = assess(input);
    CHECK(at.verdict == CircuitVerdict::holds);
    CHECK_THAT(at.input.in(ampere), WithinRel(20.0, 1e-9));
    // By hand: 20 A leaves 120 - 20 x 2 x 0.09744 = 116.10 V, 2322.0 VA, 1300.3 W; 0.75 x^2 + 95 x = 1300.3: 12.462 A.
    CHECK_THAT(input.output.in(ampere), WithinAbs(12.462, 0.001));
}

TEST_CASE("240 V circuits that hold", "[supply]") {
    const Report small = assess(shop(240, 30, 10, 30));
    CHECK(small.verdict == CircuitVerdict::holds);
    CHECK_FALSE(small.trips_within);
    CHECK(*small.highest_current > Current{30, ampere});
    const Report large = assess(shop(240, 50, 8, 45));
    CHECK(large.verdict == CircuitVerdict::holds);
    CHECK(large.run_min_awg == 8);
    CHECK(large.run_min_awg_60c == 6);
    REQUIRE(find(large, CheckKind::run_device));
    CHECK(find(large, CheckKind::run_device)->ok);
    // Without the mark the 60 C column holds: 8 AWG allows 40 A.
    Input unmarked = shop(240, 50, 8, 45);
    unmarked.circuit.marked_75c = false;
    const Report nm = assess(unmarked);
    CHECK_FALSE(find(nm, CheckKind::run_device)->ok);
    CHECK(has(test::said(find(nm, CheckKind::run_device)->message), "6 AWG or thicker, or 8 AWG or thicker if"));
    CHECK_FALSE(nm.highest_current);
}

TEST_CASE("the 80 % rule is for a shared circuit, Article 630 for a dedicated one", "[supply]") {
    Input input = shop(240, 30, 10, 30);
    Report report = assess(input);
    REQUIRE(find(report, CheckKind::plug_load));
    CHECK_FALSE(find(report, CheckKind::plug_load)->ok); // rated over 24 A
    CHECK_FALSE(find(report, CheckKind::welder_run));
    CHECK(has(test::said(report.message.remedy), "80 %"));

    input = shop(240, 50, 8, 45);
    input.circuit.dedicated = true;
    report = assess(input);
    CHECK_FALSE(find(report, CheckKind::plug_load));
    REQUIRE(find(report, CheckKind::welder_run));
    CHECK(find(report, CheckKind::welder_run)->ok);
    CHECK(find(report, CheckKind::welder_device)->ok);
    CHECK(test::said(report.message.remedy).empty());

    // 10 AWG on a 50 A breaker: never on a shared circuit; a dedicated one at little duty may.
    input.circuit.run_awg = 10;
    input.machine.duty_cycle = 0.35;
    CHECK(find(assess(input), CheckKind::welder_run)->ok);
    input.circuit.dedicated = false;
    CHECK_FALSE(find(assess(input), CheckKind::run_device)->ok);

    // The allowance is the NEC's alone.
    input.circuit.dedicated = true;
    input.country = Country::eu;
    report = assess(input);
    CHECK_FALSE(find(report, CheckKind::welder_run));
    CHECK_FALSE(find(report, CheckKind::plug_load));
}

TEST_CASE("a run that cannot deliver says what it could", "[supply]") {
    Input input = shop(120, 20, 14, 30);
    input.circuit.cord_awg = 16;
    input.circuit.cord = Length{60, metre};
    const Report report = assess(input);
    CHECK(report.verdict == CircuitVerdict::cannot_deliver);
    CHECK_FALSE(report.trips_within);
    REQUIRE(report.largest_deliverable);
    CHECK(*report.largest_deliverable < input.output);
    CHECK_FALSE(report.generator_min);
    CHECK(has(test::summary(report.message), "cannot deliver 30 A"));
    input.output = 0.999999 * *report.largest_deliverable;
    CHECK(assess(input).verdict != CircuitVerdict::cannot_deliver);
    input.output = 1.000001 * *report.largest_deliverable;
    CHECK(assess(input).verdict == CircuitVerdict::cannot_deliver);
}

TEST_CASE("other load, the compressor's motor among it", "[supply]") {
    Input input = shop(240, 50, 6, 40);
    const Report alone = assess(input);
    input.circuit.compressor_motor_hp = 2;
    input.circuit.other_load = Current{3, ampere};
    const Report shared = assess(input);
    CHECK(shared.other == Current{15, ampere});
    CHECK(shared.input > alone.input); // the motor's drop in the run makes the machine draw more
    CHECK_THAT(shared.load_ratio, WithinRel((shared.input.in(ampere) + 15) / 50, 1e-12));
    CHECK(*shared.highest_current < *alone.highest_current);
    CHECK(shared.verdict == CircuitVerdict::may_trip);
    CHECK(has(test::said(shared.message.remedy), "other load"));
    input.circuit.other_load = Current{60, ampere};
    const Report full = assess(input);
    CHECK_FALSE(full.highest_current);
    CHECK(has(test::said(full.message.remedy), "other load takes all"));
}

TEST_CASE("a generator by its volt-amperes", "[supply]") {
    Input input = shop(240, 50, 8, 40);
    const Report panel = assess(input);
    REQUIRE(panel.generator_min);
    CHECK_THAT(panel.generator_min->in(volt_ampere), WithinRel(panel.input.in(ampere)*240 / 0.8, 1e-12));
    // The least generator holds, a shade less does not, and half of it cannot.
    input.circuit.generator = (1 + 1e-12) * *panel.generator_min;
    CHECK(assess(input).verdict == CircuitVerdict::holds);
    CHECK(node(assess(input), Stop::panel).used > 0.99);
    input.circuit.generator = 0.99 * *panel.generator_min;
    CHECK(assess(input).verdict == CircuitVerdict::may_trip);
    CHECK(has(test::summary(assess(input).message), "Generator"));
    input.circuit.generator = 0.5 * *panel.generator_min;
    const Report half = assess(input);
    CHECK(half.verdict == CircuitVerdict::cannot_deliver);
    REQUIRE(half.largest_deliverable);
    CHECK(*half.largest_deliverable > *half.highest_current);
}

TEST_CASE("the nameplate goes before the estimate, physics before the nameplate", "[supply]") {
    Input input = shop(240, 50, 8, 45);
    const Report estimate = assess(input);
    CHECK(estimate.power_basis == PowerBasis::estimate);
    input.machine.plate_i1max = Current{30, ampere}; // 50 A at 100 V from 240 V: 0.694
    const Report plate = assess(input);
    CHECK(plate.power_basis == PowerBasis::nameplate);
    CHECK_THAT(plate.input_at_rated_load.in(ampere), WithinRel(30 * (45 * 98.0) / (50 * 100.0), 1e-12));
    CHECK(plate.input < estimate.input);
    input.machine.power_factor_corrected = true;
    CHECK(assess(input).power_basis == PowerBasis::nameplate);
    input.machine.plate_i1max = Current{20, ampere}; // 5000 W from 4800 VA
    const Report refuted = assess(input);
    CHECK(refuted.power_basis == PowerBasis::plate_refuted);
    REQUIRE(find(refuted, CheckKind::nameplate));
    CHECK_FALSE(find(refuted, CheckKind::nameplate)->ok);
    input.machine.plate_i1max.reset();
    CHECK(assess(input).power_basis == PowerBasis::corrected);
    CHECK_THAT(assess(input).input_at_rated_load.in(ampere), WithinRel(45 * 98 / (0.8 * 0.99 * 240), 1e-12));
    input.machine.plate_i1eff = Current{18, ampere};
    CHECK(assess(input).effective == Current{18, ampere});
    CHECK(assess(input).effective_from_plate);
}

TEST_CASE("three phases", "[supply]") {
    Input input = shop(400, 16, 10, 45);
    input.circuit.breaker_rule = BreakerRule::iec60898c;
    input.circuit.run = Length{0, metre};
    input.machine.phases = 3;
    const Report report = assess(input);
    CHECK_THAT(report.input.in(ampere), WithinRel(45 * 128.75 / 0.56 / (std::sqrt(3.0) * 400), 1e-12));
    CHECK(report.verdict == CircuitVerdict::holds); // 14.9 A
    input.circuit.run = Length{30, metre};
    const Report run = assess(input);
    // Line-to-line drop is sqrt(3) times one wire's.
    CHECK_THAT((400 - run.machine.in(volt)) / run.input.in(ampere),
               WithinRel(std::sqrt(3.0) * 1.24 * 30 / 304.8, 1e-9));
}

TEST_CASE("metric wiring", "[supply]") {
    Input input = shop(230, 16, 10, 20);
    input.circuit.breaker_rule = BreakerRule::iec60898c;
    input.circuit.run_mm2 = 2.5;
    const Report report = assess(input);
    CHECK(report.verdict == CircuitVerdict::may_trip); // 17.0 A on a C16
    CHECK(report.load_ratio > 1);
    CHECK(report.run_min_mm2 == 2.5);
    CHECK(has(test::said(node(report, Stop::run).detail), "2.5 mm²"));
    input.circuit.run_mm2 = 1.0; // no ampacity known
    const Report thin = assess(input);
    CHECK_FALSE(find(thin, CheckKind::run_device)->ok);
    CHECK(node(thin, Stop::run).used > 1);
}

TEST_CASE("the cord", "[supply]") {
    Input input = shop(240, 50, 8, 30);
    input.circuit.cord_awg = 14;
    input.circuit.cord = Length{10, metre};
    const Report report = assess(input);
    CHECK_FALSE(find(report, CheckKind::cord_load)->ok);
    CHECK(report.cord_min_awg == 10);
    CHECK(report.chain.weakest == static_cast<int>(Stop::cord));
    CHECK(report.capped_by == Cap::cord);
    CHECK(test::summary(report.message).starts_with("Cord overloaded. 14 AWG cord carries 18 A"));
    CHECK(has(test::said(report.message.remedy), "more overloads the cord. Or use a thicker cord."));
    CHECK(report.drop_share > report.run_drop_share);
    input.circuit.cord_awg.reset(); // its length alone is no cord
    CHECK(assess(input).drop_share == assess(input).run_drop_share);
    CHECK_FALSE(node(assess(input), Stop::cord).present);
}

TEST_CASE("duty", "[supply]") {
    Input input = shop(240, 50, 8, 50);
    CHECK_THAT(assess(input).arc_per_10_min.in(second), WithinRel(360.0, 1e-12));
    input.output = Current{30, ampere};
    CHECK_THAT(assess(input).arc_per_10_min.in(second), WithinRel(600.0, 1e-12));
    input.output = Current{45, ampere};
    CHECK_THAT(assess(input).arc_per_10_min.in(second), WithinRel(600 * 0.6 / 0.81, 1e-12));
    CHECK(has(test::said(assess(input).duty_note), "40 °C"));
}

TEST_CASE("the breaker's band has upper times, and one least time by IEC", "[supply]") {
    const Band ul = assess(shop(240, 30, 10, 30)).band;
    REQUIRE(ul.upper.size() == 2);
    CHECK(ul.holds_to == 1.0);
    CHECK(ul.upper[0].multiple == 1.35);
    CHECK(ul.upper[1].multiple == 2.0);
    CHECK(ul.between.empty());
    CHECK_FALSE(ul.least);
    Input input = shop(230, 16, 10, 20);
    input.circuit.breaker_rule = BreakerRule::iec60898b;
    const Band iec = assess(input).band;
    REQUIRE(iec.upper.size() == 3);
    CHECK(iec.upper[2].multiple == 5.0);
    CHECK(iec.holds_to == 1.0);
    REQUIRE(iec.least); // the one least time there is
    CHECK(iec.least->multiple == 2.55);
    CHECK(iec.least->within == Duration{1, second});
    REQUIRE(iec.between.size() > 2);
    CHECK_THAT(iec.between.front().within.in(second), WithinRel(3600.0, 1e-9));
    CHECK_THAT(iec.between.back().within.in(second), WithinRel(60.0, 1e-9));
    for (std::size_t i = 1; i < iec.between.size(); ++i) {
        CHECK(iec.between[i].within < iec.between[i - 1].within);
    }
}

TEST_CASE("every circuit report says what it rests on and who decides", "[supply]") {
    for (const bool dedicated : {false, true}) {
        for (const auto rule : {BreakerRule::ul489, BreakerRule::iec60898d}) {
            Input input = shop(240, 30, 10, 45);
            input.circuit.dedicated = dedicated;
            input.circuit.breaker_rule = rule;
            const Report report = assess(input);
            REQUIRE(report.basis.size() >= 4);
            CHECK(test::said(report.basis.back()) == "Local code and a licensed electrician decide");
            CHECK(std::any_of(report.basis.begin(), report.basis.end(),
                              [](const Text& b) { return has(test::said(b), "not checked"); }));
            for (const Check& check : report.checks) {
                CHECK_FALSE(check.message.title.empty());
                CHECK_FALSE(check.source.empty());
            }
            CHECK_FALSE(test::summary(report.message).empty());
        }
    }
}
