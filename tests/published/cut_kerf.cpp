// Kerf against the published rows: how many lie inside our band of 80 %.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <iterator>

#include "core/tune/posterior.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

Estimate<Length> kerf(const tune::Posterior& posterior, double i_a, double bore_mm) {
    cut::CutSetup plate;
    plate.current = Current{i_a, ampere};
    if (bore_mm > 0) {
        plate.bore = Length{bore_mm, mm};
    }
    return tune::kerf(posterior, plate);
}

} // namespace

TEST_CASE("Four of five published kerfs lie inside the band", "[cut][published]") {
    struct Row {
        double i_a, kerf_mm;
    };
    // Seen: key senthilkumar_2023, S235, rows of published_cuts.csv. Thickness and bore are not published: 6 mm and the
    // bore of 55 A/mm2 are taken. All of one torch, so together they are one row of the fit (kerf_evidence.json), and
    // they set the spread over current: what is counted here is left out one at a time, yet not independent.
    // Before (ratio 1.5, spreads 0.30 and 0.15): 4 of 42 inside. With ratio 1.25, spreads 0.35 and 0.30: 33 of 42, 79 %.
    constexpr Row rows[] = {
        {110, 1.2156}, {110, 1.116},  {110, 1.3245}, {110, 1.2369}, {110, 1.4352}, {110, 1.3283}, {110, 1.1678},
        {110, 1.0283}, {110, 1.3483}, {110, 1.23},   {110, 0.9844}, {110, 0.96},   {110, 1.03},   {110, 0.97},
        {110, 1.1321}, {110, 1.0767}, {120, 1.4356}, {120, 1.323},  {120, 1.4356}, {120, 1.3818}, {120, 1.2902},
        {120, 1.2171}, {120, 1.3241}, {120, 1.28},   {120, 1.5031}, {120, 1.403},  {120, 1.15},   {120, 1.02},
        {120, 1.3208}, {120, 1.26},   {130, 1.6876}, {130, 1.7022}, {130, 1.7781}, {130, 1.6883}, {130, 1.5098},
        {130, 1.4054}, {130, 1.539},  {130, 1.4923}, {130, 1.392},  {130, 1.3216}, {130, 1.3982}, {130, 1.231},
    };
    const tune::Posterior nothing = tune::learn({}, Machine{.nozzles = {}});
    const cut::Terms& terms = cut::small_air_torch(Metal::mild_steel);
    const auto per_bore = [&](const Row& r) {
        cut::CutSetup plate;
        plate.current = Current{r.i_a, ampere};
        return std::log(r.kerf_mm / cut::bore(plate, terms).in(mm));
    };
    double all = 0.0;
    for (const Row& r : rows) {
        all += per_bore(r);
    }
    const double n = std::size(rows);
    CHECK(std::exp(all / n) == Approx(0.78).epsilon(0.01)); // the row of kerf_evidence.json
    int inside = 0;
    for (const Row& r : rows) {
        // The ratio that four rows give, one of them without this kerf.
        const double moved = 0.25 * ((all - per_bore(r)) / (n - 1) - all / n);
        const Estimate<Length> e = kerf(nothing, r.i_a, 0);
        const Length seen{r.kerf_mm / std::exp(moved), mm};
        inside += e.low <= seen && seen <= e.high ? 1 : 0;
    }
    CAPTURE(inside);
    CHECK(inside >= 0.76 * n);
    CHECK(inside <= 0.84 * n);
}

TEST_CASE("The kerf's ratio is the middle of what is known", "[cut][published]") {
    // Rows of kerf_evidence.json: one published torch, one published second-hand, two from the trade's memory.
    constexpr double known[] = {0.78, 1.53, 1.22, 1.73};
    double mean = 0.0, square = 0.0;
    for (const double ratio : known) {
        mean += std::log(ratio) / std::size(known);
    }
    for (const double ratio : known) {
        square += std::pow(std::log(ratio) - mean, 2) / (std::size(known) - 1);
    }
    const cut::Term& kept = cut::small_air_torch(Metal::mild_steel).kerf_width;
    CHECK(std::exp(mean) == Approx(kept.value).epsilon(0.02)); // rounded
    CHECK(std::sqrt(square) == Approx(kept.sd).epsilon(0.06));
}

TEST_CASE("A small torch's kerf keeps to what small machines cut", "[cut][published]") {
    // From memory: small machines cut 1.0 to 1.8 mm. No kerf of 20 to 100 A is published, so coverage can't be counted.
    const tune::Posterior nothing = tune::learn({}, Machine{});
    const Estimate<Length> e = kerf(nothing, 45, 1.1);
    CHECK(e.value.in(mm) == Approx(1.375));
    CHECK(e.low < Length{1.0, mm});
    CHECK(e.high > Length{1.8, mm});
    CHECK(e.high < Length{2.3, mm});
}
