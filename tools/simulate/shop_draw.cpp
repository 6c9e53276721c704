#include "tools/simulate/shop_draw.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/tune/plate_terms.hpp"
#include "core/tune/quantile.hpp"

namespace torchside::tune {
namespace {

// What a draw is for.
constexpr std::uint64_t of_bias = 1000;
constexpr std::uint64_t of_slope = 1001;
constexpr std::uint64_t of_tail = 1002;
constexpr std::uint64_t of_verdict = 1003;
constexpr std::uint64_t of_bend = 1004;
constexpr std::uint64_t of_set = 1005;
constexpr std::uint64_t of_stock = 2000; // + job
constexpr std::uint64_t of_first = 3000; // + job: the verdict on its first cut
constexpr std::uint64_t of_all = 12;     // in the place of a stock: tails of bias; + 1: of slope

constexpr double set_a_job = 0.31; // share of a set of consumables that a job uses

// The finaliser of a 64-bit mixing generator (Steele, Lea, Flood 2014; constants from memory).
std::uint64_t mix(std::uint64_t z) {
    z += 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

// i -> a permutation of 0..n-1 made by four rounds of a Feistel network on the next power of four, walking on while the
// result is outside.
std::uint64_t permuted(std::uint64_t i, std::uint64_t n, std::uint64_t key) {
    unsigned half = 1;
    while ((std::uint64_t{1} << (2 * half)) < n) {
        ++half;
    }
    const std::uint64_t mask = (std::uint64_t{1} << half) - 1;
    do {
        std::uint64_t left = i >> half;
        std::uint64_t right = i & mask;
        for (std::uint64_t round = 0; round < 4; ++round) {
            const std::uint64_t next = left ^ (mix(mix(key + round) ^ right) & mask);
            left = right;
            right = next;
        }
        i = (left << half) | right;
    } while (i >= n);
    return i;
}

// A number in (0, 1) for shop i out of n, one in every n-th part.
double stratum(std::uint64_t seed, std::uint64_t what, std::uint64_t shop, std::uint64_t shops) {
    const auto place = static_cast<double>(permuted(shop, shops, mix(mix(seed) ^ what)));
    return (place + uniform(seed, shop, what, 0)) / static_cast<double>(shops);
}

// sqrt(chi squared / dof): a normal draw over it has Student's t. 1 for no degrees of freedom: the draw stays normal.
double chi(int dof, std::uint64_t seed, std::uint64_t shop, std::uint64_t what) {
    if (dof == 0) {
        return 1.0;
    }
    double sum = 0.0;
    for (int k = 0; k < dof; ++k) {
        const double z = normal_quantile(uniform(seed, shop, of_tail, 4 * what + static_cast<std::uint64_t>(k)));
        sum += z * z;
    }
    return std::sqrt(sum / dof);
}

} // namespace

double uniform(std::uint64_t seed, std::uint64_t a, std::uint64_t b, std::uint64_t c) {
    const std::uint64_t bits = mix(mix(mix(mix(seed) ^ a) ^ b) ^ c);
    return (static_cast<double>(bits >> 11) + 0.5) * 0x1p-53;
}

ShopDraw::ShopDraw(const Population& population, std::uint64_t seed, int shop, int shops)
    : population_(population), seed_(seed), shop_(static_cast<std::uint64_t>(shop)) {
    const auto n = static_cast<std::uint64_t>(shops);
    const auto normal = [&](std::uint64_t what) { return normal_quantile(stratum(seed, what, shop_, n)); };
    const auto tail = [&](std::uint64_t what) { return chi(population.dof, seed, shop_, what); };
    const double bias = population.mean + population.bias_sd * normal(of_bias) / tail(of_all);
    const double slope = population.slope_sd * normal(of_slope) / tail(of_all + 1);
    const double bend = population.bend_sd * normal(of_bend);
    const double first_used = uniform(seed, shop_, of_set, 0);
    for (std::size_t job = 0; job < job_thickness_mm.size(); ++job) {
        const auto* first = std::find(job_thickness_mm.begin(), job_thickness_mm.end(), job_thickness_mm[job]);
        const auto stock = static_cast<std::uint64_t>(first - job_thickness_mm.begin());
        const double e = population.stock_sd * normal(of_stock + stock) / tail(stock);
        const double u = std::log(job_thickness_mm[job] / thickness_0_mm);
        const double sets = first_used + set_a_job * static_cast<double>(job);
        used_[job] = sets - std::floor(sets);
        curve_[job] = bias + slope * u + bend * u * u + population.drift * used_[job];
        truth_[job] = curve_[job] + e;
        first_verdict_[job] = stratum(seed, of_first + job, shop_, n);
    }
}

Judgement ShopDraw::happened(std::size_t job, double y) const {
    const double z = y - truth_[job];
    if (z > std::log1p(population_.window)) {
        return Judgement::high;
    }
    return z < std::log1p(-population_.window) ? Judgement::low : Judgement::good;
}

Judgement ShopDraw::read(std::size_t job, int cut, double y) const {
    const Judgement true_one = happened(job, y);
    const auto place = static_cast<std::uint64_t>(cut) * 2 + (static_cast<std::uint64_t>(job) << 32);
    const double luck = cut == 0 ? first_verdict_[job] : uniform(seed_, shop_, of_verdict, place);
    if (luck >= population_.misread) {
        return true_one;
    }
    constexpr Judgement others[3][2] = {
        {Judgement::good, Judgement::high}, {Judgement::low, Judgement::high}, {Judgement::low, Judgement::good}};
    const bool second = uniform(seed_, shop_, of_verdict, place + 1) >= 0.5;
    return others[static_cast<std::size_t>(true_one)][second ? 1 : 0];
}

} // namespace torchside::tune
