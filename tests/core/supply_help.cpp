// A small supply: the machine's rating there, cutting with pauses, the supply that would do.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

#include "core/supply/intermittent.hpp"
#include "core/supply/low_voltage.hpp"
#include "core/worksheet/supply_help.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// Draws as many amperes as it gives: 120 V of arc at 120 V, no loss anywhere.
supply::Input one_to_one(double output_a) {
    supply::Input in;
    in.circuit.line = Voltage{120, volt};
    in.circuit.breaker = Current{20, ampere};
    in.circuit.run_awg = 8;
    in.circuit.marked_75c = true;
    in.circuit.run = Length{};
    in.machine.efficiency = 1.0;
    in.machine.power_factor = 1.0;
    in.machine.duty_cycle = 1.0;
    in.machine.idle_input = Current{};
    in.arc = {Voltage{120, volt}, Resistance{}};
    in.output = Current{output_a, ampere};
    return in;
}

Workbook on_120(double current_a) {
    Workbook w;
    w.shop.circuit.line = Voltage{120, volt};
    w.shop.circuit.breaker = Current{20, ampere};
    w.shop.circuit.run_awg = 12;
    w.job.current = Current{current_a, ampere};
    w.job.thickness = Length{3, mm};
    return w;
}

} // namespace

TEST_CASE("a machine for two voltages has its low rating on a low line, and no other there") {
    Machine m;
    m.max_current = Current{40, ampere};
    m.duty_cycle = 0.6;
    m.plate_i1max = Current{28, ampere};
    CHECK(supply::rating_of(m, Voltage{240, volt}) == supply::Rating::full);
    CHECK(supply::rating_of(m, Voltage{120, volt}) == supply::Rating::assumed);
    CHECK(supply::machine_on(m, Voltage{240, volt}).plate_i1max == m.plate_i1max);
    CHECK_FALSE(supply::machine_on(m, Voltage{120, volt}).plate_i1max.has_value());
    CHECK(supply::machine_on(m, Voltage{120, volt}).max_current == m.max_current);

    m.low_voltage.max_current = Current{15, ampere};
    CHECK(supply::rating_of(m, Voltage{120, volt}) == supply::Rating::entered);
    Machine low = supply::machine_on(m, Voltage{120, volt});
    CHECK(low.max_current == Current{15, ampere});
    CHECK(low.min_current == Current{15, ampere}); // its smallest setting is 20 A
    CHECK(low.duty_cycle == 0.6);
    CHECK(low.duty_current == Current{15, ampere});

    m.low_voltage = {Current{20, ampere}, 0.35, Current{18, ampere}, Current{25, ampere}, Current{15, ampere}};
    CHECK(supply::rating_of(m, Voltage{120, volt}) == supply::Rating::plate);
    low = supply::machine_on(m, Voltage{120, volt});
    CHECK(low.duty_cycle == 0.35);
    CHECK(low.duty_current == Current{18, ampere});
    CHECK(low.plate_i1eff == Current{15, ampere});
    CHECK(supply::machine_on(m, Voltage{150, volt}).max_current == Current{40, ampere});
}

TEST_CASE("on a low line the input follows from its I1max: 25 x 110 x 20 / (88 x 20) = 31.25 A") {
    supply::Input in = one_to_one(20);
    in.machine = {};
    in.machine.low_voltage = {Current{20, ampere}, 0.35, std::nullopt, Current{25, ampere}, std::nullopt};
    in.machine = supply::machine_on(in.machine, in.circuit.line);
    in.arc = {Voltage{110, volt}, Resistance{}};
    CHECK_THAT(supply::assess(in).input.in(ampere), WithinRel(31.25, 1e-12));
}

TEST_CASE("40 A on a breaker of 20 A: 4.32 s of arc, then 18.71 s without") {
    const auto b = supply::bursts_at(one_to_one(40));
    REQUIRE(b.has_value());
    CHECK_THAT(b->arc.in(second), WithinAbs(-15 * std::log(0.75), 1e-9));
    CHECK_THAT(b->rest.in(second),
               WithinAbs(-30 * std::log(1 - (1 - std::sqrt(0.75)) / 0.25) + 15 * std::log(0.75), 1e-9));
    CHECK_THAT(b->arc.in(second), WithinAbs(4.32, 0.005));
    CHECK_THAT(b->rest.in(second), WithinAbs(18.71, 0.005));
    CHECK_FALSE(b->beyond_tables);
    CHECK_THAT(4 * b->arc.in(second) / (b->arc + b->rest).in(second), WithinAbs(0.75, 0.005)); // mean square
}

TEST_CASE("pauses are for a load that is too much, and not for one that is far too much") {
    CHECK_FALSE(supply::bursts_at(one_to_one(20)).has_value()); // holds for ever
    CHECK_FALSE(supply::bursts_at(one_to_one(51)).has_value()); // 2.55 times the breaker
    supply::Input other = one_to_one(40);
    other.circuit.other_load = Current{20, ampere}; // takes all of it
    CHECK_FALSE(supply::bursts_at(other).has_value());
    supply::Input unsound = one_to_one(40);
    unsound.circuit.run_awg = 14; // carries less than the breaker lets through
    CHECK_FALSE(supply::bursts_at(unsound).has_value());
}

TEST_CASE("while the arc is on a wire may carry more than its table allows: said") {
    supply::Input in = one_to_one(30);
    in.circuit.run_awg = 12;
    const auto b = supply::bursts_at(in);
    REQUIRE(b.has_value());
    CHECK(b->beyond_tables);
}

TEST_CASE("the machine's own duty lengthens the pauses") {
    supply::Input in = one_to_one(25);
    const auto full = supply::bursts_at(in);
    in.machine.duty_cycle = 0.2;
    in.machine.duty_current = in.output;
    const auto short_duty = supply::bursts_at(in);
    REQUIRE((full && short_duty));
    CHECK(short_duty->arc == full->arc);
    CHECK_THAT(short_duty->rest / short_duty->arc, WithinRel(4.0, 1e-9));
}

TEST_CASE("what would do is a supply whose checks then hold") {
    Workbook w = on_120(45);
    const Worksheet sheet = evaluate(w);
    const SupplyHelp help = supply_help(w, sheet);
    CHECK(help.asks);
    CHECK(help.rating == supply::Rating::assumed);
    REQUIRE(help.would_do.has_value());
    CHECK(help.would_do->line_v == 240);
    CHECK(help.would_do->breaker_a == 50);
    CHECK(test::said(help.says.back()) == "For 45 A use 240 V, 50 A, 6 AWG. A licensed electrician decides.");
    w.shop.circuit.line = Voltage{help.would_do->line_v, volt};
    w.shop.circuit.breaker = Current{help.would_do->breaker_a, ampere};
    w.shop.circuit.run_awg = *help.would_do->run_awg;
    CHECK(evaluate(w).circuit.verdict == supply::CircuitVerdict::holds);
    CHECK_FALSE(supply_help(w, evaluate(w)).asks);
}

TEST_CASE("more than the machine gives: what is looked for is a supply for all it gives") {
    Workbook w = on_120(60); // on a machine of 50 A
    const SupplyHelp help = supply_help(w, evaluate(w));
    REQUIRE(w.shop.machine.max_current == Current{50, ampere});
    REQUIRE(help.would_do.has_value());
    CHECK(test::said(help.says.back()).starts_with("For 50 A use "));
}

TEST_CASE("nameplate currents of the higher voltage are not the low line's: said") {
    Workbook w = on_120(20);
    const auto first = [&w] { return test::said(supply_help(w, evaluate(w)).says.front()); };
    CHECK(first().find("nameplate currents") == std::string::npos);
    w.shop.machine.plate_i1max = Current{22, ampere};
    CHECK(first().ends_with("The nameplate currents entered count for the higher voltage only."));
}

TEST_CASE("above the low rating the plate is judged by what the machine gives there") {
    Workbook w = on_120(45);
    w.shop.machine.low_voltage = {Current{20, ampere}, 0.35, std::nullopt, Current{22, ampere}, std::nullopt};
    const Worksheet sheet = evaluate(w);
    const auto above = std::find_if(sheet.warnings.begin(), sheet.warnings.end(),
                                    [](const Message& m) { return m.code == "current_above_machine"; });
    CHECK(above != sheet.warnings.end());
    CHECK(sheet.circuit.highest_current.value_or(Current{}) <= Current{20, ampere});
    CHECK(sheet.capacity.suggested_current.value_or(Current{}) <= Current{20, ampere});
    const SupplyHelp help = supply_help(w, sheet);
    CHECK(help.rating == supply::Rating::plate);
    CHECK(test::said(help.says.front()) ==
          "Your machine at 120 V: up to 20 A, 35 % duty at 20 A. It draws 22 A (I1max) at its rated 20 A. We scale "
          "that by the arc's power.");
    REQUIRE(help.bursts.has_value());
    CHECK(help.bursts->output == Current{20, ampere});
    CHECK(help.in_bursts->clean > Length{2, mm});
}

TEST_CASE("a circuit that holds asks for nothing") {
    Workbook w;
    w.job.current = Current{30, ampere};
    w.shop.circuit.breaker = Current{50, ampere};
    w.shop.circuit.run_awg = 6;
    const SupplyHelp help = supply_help(w, evaluate(w));
    CHECK_FALSE(help.asks);
    CHECK(help.says.empty());
}
