// Cutting with pauses: no point is asked for more heat than its rating, more current never means a longer arc or a shorter rest, and
// what is advised is what the checks then accept.
#include <algorithm>

#include <catch2/catch_test_macros.hpp>

#include "core/supply/intermittent.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/low_voltage.hpp"
#include "tests/property/random_circuit.hpp"

using namespace torchside;

namespace {

supply::Input some_circuit(test::Rng& rng) {
    supply::Input input = test::random_input(rng);
    input.circuit.breaker = std::clamp(supply::largest_device(input), Current{10, ampere}, Current{100, ampere});
    input.output = std::min(input.output, input.machine.max_current);
    return input;
}

double mean_square(double on, double off, const supply::Bursts& b) {
    const double arc = b.arc.in(second);
    const double rest = b.rest.in(second);
    return (on * on * arc + off * off * rest) / (arc + rest);
}

} // namespace

TEST_CASE("with its pauses no point is heated past its rating", "[property][supply]") {
    test::Rng rng{31};
    int found = 0;
    int beyond = 0;
    for (int i = 0; i < 50000; ++i) {
        const supply::Input input = some_circuit(rng);
        const auto b = supply::bursts_at(input);
        if (!b) {
            continue;
        }
        ++found;
        beyond += b->beyond_tables ? 1 : 0;
        CAPTURE(i);
        const supply::Load load = supply::solve_load(input, input.output);
        const Current idle = std::min(input.machine.idle_input, load.draw.current);
        REQUIRE(b->arc >= Duration{1, second});
        REQUIRE(b->arc / (b->arc + b->rest) <= load.duty * (1 + 1e-12));
        REQUIRE(load.total <= 2.5 * input.circuit.breaker);
        REQUIRE(mean_square(load.total / input.circuit.breaker, (idle + load.line.other) / input.circuit.breaker, *b) <=
                1 + 1e-9);
        const Current rest = load.line.other + supply::motor_share(input, load);
        const Current run = supply::run_ampacity(input);
        REQUIRE(mean_square((load.draw.current + rest) / run, (idle + rest) / run, *b) <= 1 + 1e-9);
        if (const auto cord = supply::cord_carries(input)) {
            REQUIRE(mean_square(load.draw.current / *cord, idle / *cord, *b) <= 1 + 1e-9);
        }
        if (!b->beyond_tables && !supply::article_630_applies(input)) { // then it is the breaker's alone
            REQUIRE(supply::first_over(input, load) == supply::Cap::breaker);
        }
    }
    CHECK(found > 1000);
    CHECK(beyond > 100);
}

TEST_CASE("more current: no longer arc, no larger share of it", "[property][supply]") {
    test::Rng rng{32};
    int compared = 0;
    for (int i = 0; i < 30000; ++i) {
        supply::Input input = some_circuit(rng);
        const auto less = supply::bursts_at(input);
        input.output = 1.05 * input.output;
        const auto more = supply::bursts_at(input);
        if (!less || !more) {
            continue;
        }
        ++compared;
        CAPTURE(i);
        REQUIRE(more->arc <= less->arc * (1 + 1e-12));
        REQUIRE(more->arc / (more->arc + more->rest) <= less->arc / (less->arc + less->rest) * (1 + 1e-9));
    }
    CHECK(compared > 1000);
}

namespace {

supply::Input fed_by(supply::Input input, const supply::UsualSupply& s, const Machine& machine) {
    input.circuit.line = Voltage{s.line_v, volt};
    input.circuit.breaker = Current{s.breaker_a, ampere};
    input.circuit.breaker_rule = s.rule;
    input.circuit.run_mm2 = s.run_mm2;
    input.circuit.run_awg = s.run_awg.value_or(input.circuit.run_awg);
    input.circuit.plug.reset();
    input.circuit.other_load = {};
    input.circuit.compressor_motor_hp.reset();
    input.circuit.generator.reset();
    input.circuit.dedicated = false;
    input.machine = supply::machine_on(machine, input.circuit.line);
    return input;
}

bool carries(const supply::Input& input) {
    return supply::advise(input).most.value_or(Current{}) >= input.output;
}

} // namespace

TEST_CASE("the supply that would do holds by every check, and none smaller does", "[property][supply]") {
    test::Rng rng{33};
    int found = 0;
    int smaller = 0;
    for (int i = 0; i < 5000; ++i) {
        const supply::Input input = some_circuit(rng);
        Machine machine = input.machine;
        machine.low_voltage.max_current = Current{rng.uniform(10, 60), ampere};
        const auto least = supply::supply_for(input, machine);
        if (!least) {
            continue;
        }
        ++found;
        CAPTURE(i);
        const supply::Input there = fed_by(input, *least, machine);
        REQUIRE(there.output <= there.machine.max_current);
        const supply::Report report = supply::assess(there);
        REQUIRE(report.verdict == supply::CircuitVerdict::holds);
        REQUIRE(std::all_of(report.checks.begin(), report.checks.end(),
                            [](const supply::Check& c) { return c.ok || c.message.severity == Severity::note; }));
        for (const supply::UsualSupply& s : supply::all_usual_supplies()) {
            if (s.breaker_a < least->breaker_a && s.rule == least->rule && s.phases == least->phases) {
                ++smaller;
                REQUIRE_FALSE(carries(fed_by(input, s, machine)));
            }
        }
    }
    CHECK(found > 500);
    CHECK(smaller > 500);
}
