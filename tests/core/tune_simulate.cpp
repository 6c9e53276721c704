// The simulation of shops: the same numbers everywhere, and no worse than what it is kept to.
#include <cmath>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "tools/simulate/shop_draw.hpp"
#include "tools/simulate/simulate.hpp"

using namespace torchside::tune;
using Catch::Matchers::WithinAbs;

TEST_CASE("Few shops already show the order: told, Torchside, rule") {
    const SimulationReport r = simulate(30, 1, usual_population()).value();
    CHECK(r.shops == 30);
    CHECK(r.knowing_mean_cuts < r.mean_cuts);
    CHECK(r.told_mean_cuts < r.mean_cuts);
    CHECK(r.mean_cuts < 19.0);
    CHECK(r.rule_mean_cuts > 32.0);
    CHECK(r.ratio == r.rule_mean_cuts / r.mean_cuts);
    CHECK(r.coverage80 > 0.74);
    CHECK(r.coverage80 < 0.88);
    CHECK(r.truly_clean > 0.97);
    int cuts = 0;
    for (const Decile& d : r.calibration) {
        cuts += d.cuts;
    }
    CHECK(cuts == std::lround(r.mean_cuts * 30));
}

TEST_CASE("A seed gives the same shops on every machine") {
    const SimulationReport a = simulate(12, 7, usual_population()).value();
    const SimulationReport b = simulate(12, 7, usual_population()).value();
    CHECK(a.mean_cuts == b.mean_cuts);
    CHECK(a.calibration[3].said != simulate(12, 8, usual_population()).value().calibration[3].said);
    // Counted once on x86-64; native and wasm must agree to the cut.
    CHECK(std::lround(a.mean_cuts * 12) == 223);
    CHECK(std::lround(a.rule_mean_cuts * 12) == 426);
}

TEST_CASE("Draws have the spreads that the population says") {
    constexpr int shops = 500;
    double bias = 0.0;
    double bias_2 = 0.0;
    double stock_2 = 0.0;
    int misread = 0;
    for (int i = 0; i < shops; ++i) {
        const ShopDraw shop(usual_population(), 3, i, shops);
        bias += shop.curve(4) / shops; // 6 mm: no slope
        bias_2 += shop.curve(4) * shop.curve(4) / shops;
        const double e = shop.truth(5) - shop.curve(5);
        stock_2 += e * e / shops;
        CHECK(shop.truth(2) == shop.truth(8)); // 3 mm, twice
        misread += shop.read(5, 0, shop.truth(5)) != Judgement::good;
    }
    CHECK_THAT(bias, WithinAbs(0.0, 0.005));
    CHECK_THAT(std::sqrt(bias_2), WithinAbs(0.25, 0.005));
    CHECK_THAT(std::sqrt(stock_2), WithinAbs(0.06, 0.002));
    CHECK_THAT(misread / static_cast<double>(shops), WithinAbs(0.03, 0.003));
}

TEST_CASE("A simulation refuses no shops and too many") {
    CHECK(simulate(0, 1, usual_population()).fault().field == "shops");
    CHECK_FALSE(simulate(100001, 1, usual_population()).ok());
}

TEST_CASE("In shops that the model is wrong about it still beats the rule") {
    for (const Population& world : worlds()) {
        const SimulationReport r = simulate(5, 1, world).value();
        INFO(std::string(world.world));
        CHECK(r.mean_cuts < 0.8 * r.rule_mean_cuts);
        CHECK(r.mean_cuts < 1.3 * r.told_world_mean_cuts);
    }
    CHECK(find_world("as_assumed") == &worlds()[0]);
    CHECK(find_world("odd") == nullptr);
}

TEST_CASE("Feeds that bend are learnt: with one kind of shop alone 0.66 of the bands held them") {
    CHECK(simulate(30, 3, *find_world("bent")).value().coverage80 > 0.69);
}

TEST_CASE("Set wear moves the right feed from job to job in the world that drifts") {
    const ShopDraw shop(*find_world("drift"), 3, 0, 10);
    const ShopDraw still(usual_population(), 3, 0, 10);
    for (const std::size_t job : {0u, 5u, 11u}) {
        const double used = shop.starts(job) / priors().feed_set_starts;
        CHECK(used >= 0.0);
        CHECK(used < 1.0);
        CHECK_THAT(shop.truth(job) - still.truth(job), WithinAbs(std::log(0.9) * used, 1e-6));
    }
}
