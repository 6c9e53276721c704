// Properties of the cut model over random plates; fixed seeds.
#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch_test_macros.hpp>

#include "core/cut/capacity.hpp"
#include "core/cut/conduction.hpp"
#include "core/cut/pierce.hpp"
#include "core/cut/rules.hpp"
#include "core/stock/properties.hpp"
#include "tests/exact_conduction.hpp"

using namespace torchside;

namespace {

class Random {
public:
    explicit Random(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
    }
    double log_between(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
    Metal metal() { return all_metals[engine_() % std::size(all_metals)]; }
    bool coin() { return engine_() % 2 == 0; }

private:
    std::mt19937 engine_;
};

cut::CutSetup plate(Random& random) {
    cut::CutSetup p{random.metal(),
                    Length{random.log_between(0.2, 60), mm},
                    Current{random.between(10, 200), ampere},
                    {},
                    {},
                    Length{random.between(0.5, 6), mm}};
    if (random.coin()) {
        p.bore = Length{random.between(0.4, 4), mm};
    }
    if (random.coin()) {
        p.arc = Voltage{random.between(60, 250), volt};
    }
    return p;
}

const cut::Terms& terms(Random& random, Metal metal) {
    return random.coin() ? cut::small_air_torch(metal) : cut::handbook(metal);
}

} // namespace

TEST_CASE("The balance balances, below the limit of no conduction", "[cut][property]") {
    Random random{20240601};
    for (int i = 0; i < 20000; ++i) {
        const cut::CutSetup p = plate(random);
        const cut::Terms& t = terms(random, p.metal);
        const auto result = cut::balance(p, t);
        if (!result) { // only plate that carries all the heat away
            CHECK(result.fault().field == "job.thickness_mm");
            continue;
        }
        const auto& b = result.value();
        const double available = t.efficiency.value * b.power.in(watt);
        CHECK(std::abs((b.melt + b.conduction).in(watt)-available) <= 1e-9 * available);
        CHECK(b.melt.in(watt) < available); // v < v_hi
        CHECK(b.feed.in(mm_min) > 0.0);
        CHECK(b.conduction.in(watt) > 0.0);
    }
}

TEST_CASE("Feed rises with current and falls with thickness and bore", "[cut][property]") {
    Random random{20240602};
    for (int i = 0; i < 20000; ++i) {
        cut::CutSetup p = plate(random);
        const cut::Terms& t = cut::small_air_torch(p.metal);
        p.arc.reset();
        const Speed at = cut::balance_feed(p, t);
        if (at == Speed{}) {
            continue;
        }
        cut::CutSetup q = p;
        q.current = 1.01 * p.current;
        CHECK(cut::balance_feed(q, t) > at);
        q = p;
        q.thickness = 1.01 * p.thickness;
        CHECK(cut::balance_feed(q, t) < at);
        q = p;
        q.bore = 1.01 * cut::bore(p, t);
        CHECK(cut::balance_feed(q, t) < at);
    }
}

TEST_CASE("The conduction shape is continuous, rises, and its slope is its slope", "[cut][property]") {
    double before = cut::conduction_shape(1e-7);
    for (double p = 1.001e-7; p < 1e4; p *= 1.001) {
        const double g = cut::conduction_shape(p);
        CHECK(g > before);
        CHECK(g < 1.001 * before);
        before = g;
    }
    for (const double edge : {0.003, 12.0}) {
        CHECK(std::abs(cut::conduction_shape(edge * (1 - 1e-14)) / cut::conduction_shape(edge * (1 + 1e-14)) - 1) <
              1e-12);
    }
    for (const double p : {1e-5, 1e-3, 0.01, 0.5, 3.0, 11.0, 20.0, 300.0}) {
        constexpr double h = 1e-5;
        const double numeric =
            std::log(cut::conduction_shape(p * std::exp(h)) / cut::conduction_shape(p * std::exp(-h))) / (2 * h);
        CHECK(std::abs(cut::conduction_slope(p) - numeric) < 1e-8);
    }
}

TEST_CASE("The fit follows the exact series", "[cut][property]") {
    for (double p = 0.003; p <= 12.0; p *= 1.05) {
        CHECK(std::abs(cut::conduction_shape(p) / test::conduction_shape_exact(p) - 1.0) <= 0.0019);
    }
}

TEST_CASE("Limits rise with current", "[cut][property]") {
    for (const Metal metal : all_metals) {
        const cut::Terms& t = cut::small_air_torch(metal);
        cut::Limits before{};
        for (double i_a = 10; i_a <= 200; i_a += 5) {
            cut::CutSetup p;
            p.metal = metal;
            p.current = Current{i_a, ampere};
            const cut::Limits l = cut::limits(p, cut::PhysicsModel{t}, t);
            CHECK((l.clean > before.clean || l.capped));
            CHECK((l.pierce > before.pierce || l.capped));
            CHECK((l.sever > before.sever || l.capped));
            CHECK((l.pierce <= l.clean && l.clean < l.sever));
            CHECK(l.recommended <= l.clean);
            CHECK((l.recommended > before.recommended || l.capped));
            before = l;
        }
    }
}

TEST_CASE("Pierce delay rises with thickness, falls with current", "[cut][property]") {
    Random random{20240603};
    for (int i = 0; i < 300; ++i) {
        cut::CutSetup p;
        p.metal = random.metal();
        p.current = Current{random.between(20, 100), ampere};
        const cut::Terms& t = cut::small_air_torch(p.metal);
        p.thickness = random.between(0.1, 0.95) * cut::pierce_limit(p, t);
        const Duration at = cut::pierce_delay(p, t).value();
        cut::CutSetup q = p;
        q.thickness = 1.02 * p.thickness;
        CHECK(cut::pierce_delay(q, t).value() > at);
        q = p;
        q.current = 1.02 * p.current;
        CHECK(cut::pierce_delay(q, t).value() < at);
    }
}

TEST_CASE("No pierce that is asked for takes above 3 s", "[cut][property]") {
    for (const Metal metal : all_metals) {
        const cut::Terms& t = cut::small_air_torch(metal);
        cut::CutSetup p;
        p.metal = metal;
        for (double i_a = 10; i_a <= 200; i_a += 5) {
            p.current = Current{i_a, ampere};
            const cut::Limits limits = cut::limits(p, cut::PhysicsModel{t}, t);
            for (const double share : {0.1, 0.5, 0.9, 0.999}) {
                p.thickness = std::max(Length{0.2, mm}, share * limits.pierce);
                if (p.thickness >= cut::pierce_limit(p, t)) {
                    continue; // a current that pierces nothing
                }
                CAPTURE(static_cast<int>(metal), i_a, p.thickness.in(mm));
                CHECK(cut::pierce_delay(p, t).value() < Duration{3, second});
            }
        }
    }
}

TEST_CASE("Bands of the rules hold their value", "[cut][property]") {
    Random random{20240604};
    for (int i = 0; i < 2000; ++i) {
        const double w = random.between(0.5, 5);
        const Estimate<Length> kerf{
            Length{w, mm}, Length{w * random.between(0.5, 1), mm}, Length{w * random.between(1, 2), mm}, {}};
        const Length t{random.log_between(0.5, 50), mm};
        for (const auto& e : {cut::cut_height(), cut::pierce_height(t, cut::cut_height()), cut::lead_in(t, kerf),
                              cut::smallest_hole(t, kerf)}) {
            CHECK((e.low <= e.value && e.value <= e.high));
        }
    }
}
