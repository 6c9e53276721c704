// Worked examples of the consumables' arithmetic; all computed by hand or by an independent program (own work, no
// measured lives behind them).
#include <cmath>
#include <vector>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/wear/damage.hpp"

using namespace torchside;
using namespace torchside::wear;
using Catch::Approx;

namespace {

std::vector<ConsumableSet> sets(std::initializer_list<std::pair<int, double>> rows) {
    std::vector<ConsumableSet> out;
    for (const auto& [starts, minutes] : rows) {
        out.push_back({starts, Duration{minutes, minute}, Ended::worn});
    }
    return out;
}

const auto four = sets({{300, 60}, {200, 110}, {420, 35}, {250, 80}});

} // namespace

TEST_CASE("Four sets with the priors", "[wear][published]") {
    const WearRates b = learn(four, 0.2);
    CHECK(b.per_start == Approx(0.00196498).epsilon(3e-6));
    CHECK(b.per_minute == Approx(0.0061421).epsilon(1e-5));
    CHECK(std::sqrt(b.var_start) == Approx(0.000476).margin(6e-7));
    CHECK(std::sqrt(b.var_minute) == Approx(0.001866).margin(6e-7));
}
