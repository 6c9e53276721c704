// The choice of the next test within one job, against the best there is: dynamic programming over all that can be known
// when no verdict is misread and the window's edges are sharp. Then what is known after any readings is an interval.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/tune/plan.hpp"

using namespace torchside::tune;

namespace {

constexpr Window sharp{0.08, 1e-4, 0.0};
constexpr double step = 0.01;
constexpr double negligible = 1e-7;

// Least expected cuts to a good one, f being normal with that sd: W(a, b) is the expectation over f in the interval,
// W(a, b) = mass(a, b) + min over the test y of W(a, left of its window) + W(right of its window, b).
double least_cuts(double sd) {
    const auto n = static_cast<std::size_t>(9.0 * sd / step);
    const auto window = static_cast<std::size_t>(std::lround((std::log1p(0.08) - std::log1p(-0.08)) / step));
    std::vector<double> below(n + 1);
    const double all = normal_cdf(4.5) - normal_cdf(-4.5);
    for (std::size_t i = 0; i <= n; ++i) {
        below[i] = normal_cdf((static_cast<double>(i) / static_cast<double>(n) - 0.5) * 9.0) / all;
    }
    std::vector<std::vector<double>> w(n + 1, std::vector<double>(n + 1, 0.0));
    for (std::size_t length = 1; length <= n; ++length) {
        for (std::size_t a = 0; a + length <= n; ++a) {
            const std::size_t b = a + length;
            double rest = length <= window ? 0.0 : 1e9;
            for (std::size_t left = a; left + window <= b; ++left) {
                rest = std::min(rest, w[a][left] + w[left + window][b]);
            }
            w[a][b] = below[b] - below[a] + rest;
        }
    }
    return w[0][n];
}

// Expected cuts of the product's own choice: every course of readings is followed, those that hardly happen are not.
double expected_cuts(const Search& search, double chance) {
    if (chance < negligible) {
        return 0.0;
    }
    const double y = search.next().y;
    const Judge judge(sharp);
    double cuts = 1.0;
    for (const Judgement reading : {Judgement::low, Judgement::high}) {
        double p = 0.0;
        for (std::size_t i = 0; i < search.mass().size(); ++i) {
            p += search.mass()[i] * judge.reads(reading, y - search.low() - static_cast<double>(i) * Search::step);
        }
        if (p * chance < negligible) {
            continue;
        }
        Search after = search;
        after.observe(y, reading);
        cuts += p * expected_cuts(after, p * chance);
    }
    return cuts;
}

} // namespace

TEST_CASE("Within one job no choice of tests needs fewer cuts than the product's") {
    for (const double sd : {0.06, 0.10, 0.14, 0.20, 0.35}) {
        const double ours = expected_cuts(Search(std::vector<Belief>{{1.0, sharp, {0.0, sd, 0.0, 0.0, {}}}}), 1.0);
        const double least = least_cuts(sd);
        INFO("sd " << sd << ": ours " << ours << ", least " << least);
        CHECK(ours < 1.002 * least);
        CHECK(ours > 0.999 * least); // both are on grids
    }
}

TEST_CASE("What a limit reaches goes by each kind's own window") {
    const Distribution f{0.0, 0.1, 0.0, 0.0, {}};
    const std::vector<Belief> both{{0.7, {0.05, 0.02, 0.03}, f}, {0.3, {0.12, 0.02, 0.03}, f}};
    const double limit = -0.08;
    const double expected =
        0.7 * normal_cdf((limit - std::log1p(-0.05)) / 0.1) + 0.3 * normal_cdf((limit - std::log1p(-0.12)) / 0.1);
    CHECK(std::abs(Search(both).reached(limit) - expected) < 0.015); // to one node
    CHECK(Search(both).reached(1.0) > 0.999);
    CHECK(Search(both).reached(-1.0) < 0.001);
}
