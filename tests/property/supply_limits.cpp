// The advised current: at it no check fails, a step above one does, and worse wire or warmer air never raises it.
#include <algorithm>

#include <catch2/catch_test_macros.hpp>

#include "core/supply/limits.hpp"
#include "tests/property/random_circuit.hpp"

using namespace torchside;
using supply::CircuitVerdict;

namespace {

constexpr int circuits = 100000;
constexpr int run_gauges[] = {14, 12, 10, 8, 6, 4, 3, 2};

// Notes are advice, or speak of the machine's rating whatever it is set to.
bool all_kept(const supply::Report& report) {
    return report.verdict == CircuitVerdict::holds &&
           std::all_of(report.checks.begin(), report.checks.end(),
                       [](const supply::Check& c) { return c.ok || c.message.severity == Severity::note; });
}

// As shops are: two of three have a breaker that the run allows.
supply::Input some_circuit(test::Rng& rng) {
    supply::Input input = test::random_input(rng);
    if (rng.chance(0.67)) {
        input.circuit.breaker = std::clamp(supply::largest_device(input), Current{10, ampere}, Current{100, ampere});
    }
    return input;
}

Current advised(const supply::Input& input) {
    return supply::advise(input).most.value_or(Current{});
}

supply::Input with_thinner_run(supply::Input input) {
    if (input.circuit.run_mm2) {
        input.circuit.run_mm2 = std::max(1.0, 0.6 * *input.circuit.run_mm2);
    } else {
        input.circuit.run_awg =
            *std::prev(std::max(std::begin(run_gauges) + 1,
                                std::find(std::begin(run_gauges), std::end(run_gauges), input.circuit.run_awg)));
    }
    return input;
}

} // namespace

TEST_CASE("at the advised current no check fails, one step above one does", "[property][supply]") {
    test::Rng rng{21};
    int capped[7] = {};
    int none = 0;
    for (int i = 0; i < circuits; ++i) {
        supply::Input input = some_circuit(rng);
        const supply::Advised found = supply::advise(input);
        CAPTURE(i, static_cast<int>(found.cap));
        if (!found.most) {
            ++none;
            input.output = Current{1e-6, ampere};
            REQUIRE_FALSE(all_kept(assess(input)));
            continue;
        }
        ++capped[static_cast<int>(found.cap)];
        input.output = *found.most;
        REQUIRE(all_kept(assess(input)));
        REQUIRE(*found.most <= input.machine.max_current);
        if (found.cap == supply::Cap::machine) {
            REQUIRE(*found.most == input.machine.max_current);
            continue;
        }
        input.output = (1 + 1e-6) * *found.most;
        REQUIRE_FALSE(all_kept(assess(input)));
    }
    CHECK(none < circuits / 2);
    for (const int count : capped) {
        CHECK(count > circuits / 1000);
    }
}

TEST_CASE("thinner wire, a longer run, warmer air never raise the advised current", "[property][supply]") {
    test::Rng rng{22};
    int lower = 0;
    for (int i = 0; i < 20000; ++i) {
        const supply::Input input = some_circuit(rng);
        const double before = advised(input).in(ampere);
        supply::Input longer = input;
        longer.circuit.run = 1.2 * input.circuit.run + Length{1, metre};
        longer.circuit.cord = 1.2 * input.circuit.cord;
        supply::Input warmer = input;
        warmer.circuit.ambient_c = std::min(55.0, input.circuit.ambient_c + 7);
        supply::Input unmarked = input;
        unmarked.circuit.marked_75c = false;
        supply::Input thinner_cord = input;
        if (input.circuit.cord_mm2) {
            thinner_cord.circuit.cord_mm2 = std::max(0.5, 0.6 * *input.circuit.cord_mm2);
        } else if (input.circuit.cord_awg) {
            thinner_cord.circuit.cord_awg = std::min(18, *input.circuit.cord_awg + 2);
        }
        CAPTURE(i, before);
        for (const supply::Input& worse : {with_thinner_run(input), longer, warmer, unmarked, thinner_cord}) {
            const double after = advised(worse).in(ampere);
            REQUIRE(after <= before * (1 + 1e-11));
            lower += after < before;
        }
    }
    CHECK(lower > 20000);
}

TEST_CASE("the verdict holds at 1.00 ratings and never above", "[property][supply]") {
    test::Rng rng{23};
    for (int i = 0; i < 20000; ++i) {
        const supply::Report report = assess(test::random_input(rng));
        if (report.verdict == CircuitVerdict::holds) {
            REQUIRE(report.load_ratio <= 1.0);
        }
    }
}
