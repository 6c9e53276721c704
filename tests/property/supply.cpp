// Properties of circuit and air over random shops; fixed seeds.
#include <cmath>

#include <catch2/catch_test_macros.hpp>

#include "core/air/assess.hpp"
#include "core/supply/assess.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/machine_input.hpp"
#include "tests/property/random_circuit.hpp"

using namespace torchside;
using supply::CircuitVerdict;

namespace {

constexpr int rounds = 4000;
constexpr int run_gauges[] = {14, 12, 10, 8, 6, 4, 3, 2};

using test::random_input;

bool delivered(const supply::Report& report, const supply::Input& input) {
    return report.verdict != CircuitVerdict::cannot_deliver || input.circuit.generator;
}

} // namespace

TEST_CASE("thinner or longer wire never lowers the input current", "[property][supply]") {
    test::Rng rng{11};
    int seen = 0;
    for (int i = 0; i < rounds; ++i) {
        supply::Input input = random_input(rng);
        input.circuit.run_mm2.reset();
        input.circuit.generator.reset();
        const supply::Report before = assess(input);
        if (rng.chance(0.5)) {
            input.circuit.run_awg = run_gauges[rng.below(8)] > input.circuit.run_awg ? 14 : input.circuit.run_awg;
        } else {
            input.circuit.run = 1.3 * input.circuit.run;
        }
        if (input.circuit.cord_awg && rng.chance(0.5)) {
            input.circuit.cord_awg = 18;
        }
        const supply::Report after = assess(input);
        if (!delivered(before, input)) {
            CHECK(!delivered(after, input)); // worse wire never starts to deliver
            continue;
        }
        if (!delivered(after, input)) {
            continue;
        }
        ++seen;
        CHECK(after.input >= before.input);
        CHECK(after.machine <= before.machine);
        CHECK(after.highest_current.value_or(Current{}) <= before.highest_current.value_or(Current{}));
    }
    CHECK(seen > rounds / 3);
}

TEST_CASE("more duty never lowers the effective current", "[property][supply]") {
    test::Rng rng{12};
    for (int i = 0; i < rounds; ++i) {
        supply::Input input = random_input(rng);
        const Current before = assess(input).effective;
        input.machine.duty_cycle = rng.uniform(input.machine.duty_cycle, 1);
        const supply::Report after = assess(input);
        CHECK(after.effective.in(ampere) >= before.in(ampere) * (1 - 1e-15));
        CHECK(after.effective.in(ampere) <= after.input.in(ampere) * (1 + 1e-15));
    }
}

TEST_CASE("circuit reports are finite and agree with themselves", "[property][supply]") {
    test::Rng rng{14};
    for (int i = 0; i < rounds; ++i) {
        const supply::Input input = random_input(rng);
        const supply::Report report = assess(input);
        CAPTURE(i);
        for (const double figure :
             {report.input.in(ampere), report.input_at_rated_load.in(ampere), report.effective.in(ampere),
              report.machine.in(volt), report.drop_share, report.load_ratio, report.arc_per_10_min.in(second)}) {
            CHECK(std::isfinite(figure));
            CHECK(figure >= -1e-12);
        }
        CHECK(report.drop_share >= report.run_drop_share - 1e-12);
        CHECK(report.arc_per_10_min <= Duration{600, second});
        CHECK(report.trips_within.has_value() ==
              (report.verdict == CircuitVerdict::trips_within_hour || report.verdict == CircuitVerdict::trips_soon));
        if (report.trips_within_interpolated) {
            CHECK(*report.trips_within_interpolated <= *report.trips_within);
        }
        for (const supply::Node& node : report.chain.nodes) {
            CHECK(std::isfinite(node.used));
            CHECK(node.used <= report.chain.nodes[static_cast<std::size_t>(report.chain.weakest)].used);
        }
        for (std::size_t k = 1; k < report.band.upper.size(); ++k) {
            CHECK(report.band.upper[k].multiple > report.band.upper[k - 1].multiple);
            CHECK(report.band.upper[k].within < report.band.upper[k - 1].within);
        }
    }
}

TEST_CASE("a solved voltage gives back its power", "[property][supply]") {
    test::Rng rng{15};
    for (int i = 0; i < rounds; ++i) {
        const supply::Input input = random_input(rng);
        const supply::Report report = assess(input);
        if (report.verdict == CircuitVerdict::cannot_deliver) {
            continue;
        }
        const double share = supply::conversion(input.machine, input.circuit.line).share;
        const double asked = supply::apparent_power(input.output, input.arc.at(input.output), share).in(volt_ampere);
        const double phases = input.machine.phases == 3 ? std::sqrt(3.0) : 1.0;
        CHECK(std::abs(phases * report.machine.in(volt)*report.input.in(ampere) / asked - 1) < 1e-12);
    }
}

TEST_CASE("a divider that a clean reading came from is found again", "[property][supply]") {
    test::Rng rng{16};
    constexpr double ratios[] = {1, 16, 20, 30, 40, 50};
    for (int i = 0; i < rounds; ++i) {
        const double ratio = ratios[rng.below(6)];
        const Voltage arc{rng.uniform(80, 200), volt};
        const auto match = supply::identify_divider(arc, rng.uniform(0.95, 1.05) * (arc / ratio));
        REQUIRE(match);
        CHECK(match.value().ratio == ratio);
    }
}

TEST_CASE("air: no negative time, and a cycle that holds together", "[property][air]") {
    test::Rng rng{17};
    int verdicts[4] = {};
    for (int i = 0; i < rounds; ++i) {
        air::AirSystem system;
        system.duty = rng.uniform(0.1, 1);
        system.compressor = Flow{rng.by_factor(10, 5000), litre_min};
        system.receiver = Volume{rng.by_factor(1, 5000), litre};
        system.cut_in = Pressure{rng.uniform(1, 15), bar};
        system.cut_out = system.cut_in + Pressure{rng.uniform(0, 4), bar};
        system.hose_bore = Length{rng.uniform(4, 50), mm};
        system.hose = Length{rng.uniform(0, 200), metre};
        system.torch = Flow{rng.uniform(20, 1000), litre_min};
        system.torch_pressure = Pressure{rng.uniform(2, 10), bar};
        system.intake_c = rng.uniform(-20, 50);
        system.humidity = rng.unit();
        const air::Report report = assess(system);
        CAPTURE(i);
        ++verdicts[static_cast<int>(report.verdict)];
        if (report.runs) {
            CHECK(report.runs->in(second) >= 0);
        }
        if (report.recovers) {
            CHECK(report.recovers->in(second) >= 0);
        }
        CHECK(report.runs.has_value() >= report.recovers.has_value());
        CHECK((report.hose_drop.low <= report.hose_drop.value && report.hose_drop.value <= report.hose_drop.high));
        CHECK(report.receiver_min.value >= system.torch_pressure);
        CHECK(report.water_g_h >= 0);
        CHECK(report.dew_point_c <= system.intake_c + 1e-9);
        REQUIRE(report.cycle.size() >= 2);
        for (std::size_t k = 1; k < report.cycle.size(); ++k) {
            CHECK(report.cycle[k].at >= report.cycle[k - 1].at);
            CHECK(report.cycle[k].tank <= system.cut_out);
        }
        const bool enough = system.compressor >= system.torch && report.receiver_min.value <= system.cut_in;
        const bool rests = system.torch.in(litre_min) <= system.duty * system.compressor.in(litre_min);
        CHECK((report.verdict == air::AirVerdict::sustained) == (enough && rests));
        CHECK((report.verdict == air::AirVerdict::overworked) == (enough && !rests));
        CHECK((report.arc_share == 1.0) == (rests && system.compressor >= system.torch));
    }
    for (const int count : verdicts) {
        CHECK(count > 100);
    }
}

TEST_CASE("air: a larger receiver never runs shorter, a larger compressor never worsens it", "[property][air]") {
    test::Rng rng{18};
    for (int i = 0; i < rounds; ++i) {
        air::AirSystem system;
        system.compressor = Flow{rng.uniform(20, 140), litre_min};
        system.receiver = Volume{rng.uniform(10, 500), litre};
        const air::Report before = assess(system);
        REQUIRE(before.runs);
        system.receiver = rng.uniform(1, 3) * system.receiver;
        const air::Report larger = assess(system);
        CHECK(larger.runs->in(second) >= before.runs->in(second) * (1 - 1e-12));
        system.compressor = rng.uniform(1, 1.05) * system.compressor;
        const air::Report stronger = assess(system);
        CHECK(stronger.runs->in(second) >= larger.runs->in(second) * (1 - 1e-12));
        CHECK(stronger.recovers->in(second) <= larger.recovers->in(second) * (1 + 1e-12));
    }
}
