// Worked examples of the consumables' arithmetic; all computed by hand or by an independent program (own work, no
// measured lives behind them).
#include <cmath>
#include <vector>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/wear/damage.hpp"
#include "core/wear/life.hpp"

using namespace torchside;
using namespace torchside::wear;
using Catch::Approx;

namespace {

std::vector<ConsumableSet> sets(std::initializer_list<std::pair<int, double>> rows) {
    std::vector<ConsumableSet> out;
    for (const auto& [starts, minutes] : rows)
        out.push_back({starts, Duration{minutes, minute}, Ended::worn});
    return out;
}

const auto four = sets({{300, 60}, {200, 110}, {420, 35}, {250, 80}});

} // namespace

TEST_CASE("Least squares of four sets", "[wear][published]") {
    const auto r = fit_rates(four);
    REQUIRE(r);
    CHECK(r->per_start == Approx(0.00198405).margin(6e-9));
    CHECK(r->per_minute == Approx(0.0058646).epsilon(1e-5));
    const double fitted[] = {0.947, 1.042, 1.039, 0.965};
    for (std::size_t i = 0; i < 4; ++i) {
        const Use use = use_of(four[i]);
        CHECK(r->per_start * use.starts + r->per_minute * use.minutes == Approx(fitted[i]).margin(6e-4));
    }
    // Life at a mean cut of 20 s and of 60 s.
    CHECK(life_starts(*r, Duration{20, second}) == Approx(253.9).margin(0.06));
    CHECK(life_starts(*r, Duration{60, second}) == Approx(127.4).margin(0.06));
    // 120 starts and 40 minutes so far.
    CHECK(r->per_start * 120 + r->per_minute * 40 == Approx(0.4727).margin(6e-5));
}

TEST_CASE("A rate that would come out below nothing is nothing", "[wear][published]") {
    const auto r = fit_rates(sets({{300, 20}, {300, 60}, {310, 100}}));
    REQUIRE(r);
    CHECK(r->per_minute == 0.0);
    CHECK(r->per_start == Approx(0.00329591).epsilon(2e-6));
    CHECK(1 / r->per_start == Approx(303.4).margin(0.05));
}

TEST_CASE("The same four sets with the priors", "[wear][published]") {
    const Belief b = learn(four, 0.2);
    CHECK(b.per_start == Approx(0.00196498).epsilon(3e-6));
    CHECK(b.per_minute == Approx(0.0061421).epsilon(1e-5));
    CHECK(std::sqrt(b.var_start) == Approx(0.000476).margin(6e-7));
    CHECK(std::sqrt(b.var_minute) == Approx(0.001866).margin(6e-7));
}

TEST_CASE("Failures over an exposure", "[wear][published]") {
    const GammaRate g = GammaRate{2, 800}.after(3, 1500);
    CHECK(g.rate() == Approx(0.0021739).margin(6e-8));
    CHECK(g.rate_sd() == Approx(0.000972).margin(6e-7));
    CHECK(g.mean_life() == Approx(575.0).epsilon(1e-12));
}

TEST_CASE("Weibull through five lives", "[wear][published]") {
    const double lives[] = {310, 355, 395, 440, 500};
    const auto w = fit_weibull(lives);
    REQUIRE(w);
    CHECK(w->shape == Approx(6.725).margin(6e-4));
    CHECK(w->scale == Approx(428.40).margin(6e-3));
    CHECK(w->mean() == Approx(399.9).margin(0.06));
    CHECK(w->quantile(0.1) == Approx(306.6).margin(0.06));
    CHECK(w->survives(350, 400) == Approx(0.688).margin(6e-4));
}
