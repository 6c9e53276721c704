// What many shops' logs say of shops.
#include <cmath>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/tune/pool.hpp"
#include "core/tune/posterior.hpp"
#include "tools/simulate/shop_draw.hpp"

using namespace torchside;
using namespace torchside::tune;

namespace {

// Each shop tries feeds a tenth apart about its right ones, of six plates.
std::vector<ShopLog> logs_of(const Population& world, int shops) {
    const Posterior none = learn({}, Machine{});
    std::vector<ShopLog> all;
    for (int i = 0; i < shops; ++i) {
        const ShopDraw shop(world, 5, i, shops);
        ShopLog log;
        for (std::size_t job = 0; job < 6; ++job) {
            cut::CutSetup plate;
            plate.thickness = Length{job_thickness_mm[job], mm};
            const Speed chart = feed(none, plate).value;
            for (int cut = 0; cut < 4; ++cut) {
                const double y = std::round(10.0 * shop.truth(job)) / 10.0 + 0.1 * (cut - 1.5);
                TestCut row;
                row.thickness = plate.thickness;
                row.feed = std::exp(y) * chart;
                constexpr Verdict verdicts[] = {Verdict::too_slow, Verdict::clean, Verdict::too_fast};
                row.verdict = verdicts[static_cast<std::size_t>(shop.read(job, cut, y))];
                log.cuts.push_back(row);
            }
        }
        all.push_back(log);
    }
    return all;
}

} // namespace

TEST_CASE("Pooled shops name their world") {
    const std::vector<ShopLog> biased = logs_of(*find_world("biased"), 20);
    const Pooled p = pool(biased);
    CAPTURE(p.mean.value, p.bias_sd.value, p.window.value, p.misread.value);
    CHECK(p.mean.value > 0.13);
    CHECK(p.mean.value < 0.40);
    CHECK(p.mean.low < p.mean.value);
    CHECK(p.mean.high > p.mean.value);
    CHECK(ln_evidence(biased, priors_of(p)) > ln_evidence(biased, priors()));
    const Pooled narrow = pool(logs_of(*find_world("narrow"), 20));
    CHECK(narrow.window.value < 0.066);
    CHECK(p.window.value > 0.066);
    const Pooled wide = pool(logs_of(*find_world("wide"), 20));
    CHECK(wide.stock_sd.value > 1.3 * p.stock_sd.value);
}

TEST_CASE("Of no shops, or of logs without a verdict, the pool is what was thought before") {
    CHECK(std::abs(pool({}).window.value - priors().window) < 1e-12);
    const std::vector<ShopLog> silent(2);
    CHECK(std::abs(pool(silent).mean.value) < 1e-12);
}
