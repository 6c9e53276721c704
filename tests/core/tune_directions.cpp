// The fit of a log of several metals and currents, more directions than it integrates over, against importance sampling.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/tune/quantile.hpp"
#include "core/tune/response_fit.hpp"
#include "tests/core/tune_brute.hpp"
#include "tests/property/rng.hpp"

using namespace torchside::tune;
using torchside::test::Brute;
using torchside::test::BruteGrid;
using torchside::test::Rng;

namespace {

// Bias, exponents on thickness and current, three metals: what a feed depends on (core/tune/plate_terms.hpp).
constexpr std::array<double, 6> sd{0.30, 0.20, 0.20, 0.20, 0.20, 0.20};
constexpr double stock_sd = 0.06;
constexpr Window window{0.08, 0.02, 0.03};

Model model() {
    Model m;
    m.prior = Gaussian::independent(sd);
    m.stock_sd = stock_sd;
    m.window = window;
    return m;
}

double draw(Rng& rng) {
    return normal_quantile(rng.uniform(1e-12, 1.0 - 1e-12));
}

struct Log {
    std::vector<Observation> rows{};
    std::vector<Vector> places{};
};

Vector place(Rng& rng, std::size_t metals) {
    Vector x{1.0, rng.uniform(-1.4, 0.8), 0.0};
    x[2] = std::array{-0.4, 0.0, 0.3}[rng.below(3)];
    x[3 + rng.below(metals)] = 1.0;
    return x;
}

// Four to eight stocks of two or three metals at up to three currents, cut where the next test is asked for.
Log random_log(Rng& rng) {
    Vector truth{};
    for (std::size_t i = 0; i < sd.size(); ++i) {
        truth[i] = sd[i] * draw(rng);
    }
    const std::size_t metals = 2 + rng.below(2);
    Log log;
    for (auto stock = 4 + rng.below(5); stock > 0; --stock) {
        const Vector x = place(rng, metals);
        double right = stock_sd * draw(rng);
        for (std::size_t i = 0; i < sd.size(); ++i) {
            right += x[i] * truth[i];
        }
        log.places.push_back(x);
        for (auto cut = 1 + rng.below(3); cut > 0; --cut) {
            Observation o;
            o.x = x;
            o.y = fit(log.rows, model()).distribution(x, 0).quantile(0.5) + 0.03 * draw(rng);
            const double z = o.y - right + window.soft * draw(rng);
            o.verdict = z > std::log(1.0 + window.width)   ? Judgement::high
                        : z < std::log(1.0 - window.width) ? Judgement::low
                                                           : Judgement::good;
            log.rows.push_back(o);
        }
    }
    log.places.push_back(place(rng, metals)); // never cut
    return log;
}

// L of L L' = the covariance.
std::vector<std::array<double, 6>> root(const Gaussian& g, double wider) {
    std::vector<std::array<double, 6>> l(sd.size(), std::array<double, 6>{});
    for (std::size_t i = 0; i < sd.size(); ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            double sum = wider * wider * g.cov[i][j];
            for (std::size_t k = 0; k < j; ++k) {
                sum -= l[i][k] * l[j][k];
            }
            l[i][j] = i == j ? std::sqrt(std::fmax(sum, 1e-12)) : sum / l[j][j];
        }
    }
    return l;
}

// f of each place, by draws of the coefficients from a mixture of the prior and a wider normal distribution near what is
// found, each weighed by prior times likelihood over the mixture's density: whatever they are drawn from, it is exact but
// for chance.
std::vector<Brute> sampled(const Log& log, const Gaussian& near, Rng& rng) {
    constexpr int draws = 120000;
    constexpr double of_prior = 0.2;
    const Judge judge(window);
    std::vector<std::vector<double>> own, evidence;
    for (const Vector& x : log.places) {
        own.push_back(torchside::test::own_likelihood(log.rows, x, judge));
        evidence.push_back(torchside::test::spread(own.back(), stock_sd));
    }
    const auto l = root(near, 1.4);
    std::vector<std::vector<double>> eta_here(log.places.size(), std::vector<double>(BruteGrid::n, 0.0));
    for (int d = 0; d < draws; ++d) {
        std::array<double, 6> z{}, b{};
        const bool from_prior = rng.chance(of_prior);
        for (std::size_t i = 0; i < sd.size(); ++i) {
            z[i] = draw(rng);
            b[i] = from_prior ? sd[i] * z[i] : near.mean[i];
            for (std::size_t k = 0; !from_prior && k <= i; ++k) {
                b[i] += l[i][k] * z[k];
            }
        }
        double ln_prior = 0.0, ln_near = 0.0;
        std::array<double, 6> back{}; // z of b in the wider normal distribution
        for (std::size_t i = 0; i < sd.size(); ++i) {
            ln_prior -= 0.5 * b[i] * b[i] / (sd[i] * sd[i]) + std::log(sd[i]);
            double rest = b[i] - near.mean[i];
            for (std::size_t k = 0; k < i; ++k) {
                rest -= l[i][k] * back[k];
            }
            back[i] = rest / l[i][i];
            ln_near -= 0.5 * back[i] * back[i] + std::log(l[i][i]);
        }
        double w = 1.0 / (of_prior + (1.0 - of_prior) * std::exp(ln_near - ln_prior));
        std::vector<int> nodes;
        for (std::size_t p = 0; p < log.places.size(); ++p) {
            double eta = 0.0;
            for (std::size_t i = 0; i < sd.size(); ++i) {
                eta += log.places[p][i] * b[i];
            }
            nodes.push_back(std::clamp(BruteGrid::node(eta), 0, BruteGrid::n - 1));
            w *= evidence[p][static_cast<std::size_t>(nodes.back())];
        }
        for (std::size_t p = 0; p < log.places.size(); ++p) { // own evidence comes in at f, not at eta
            const auto i = static_cast<std::size_t>(nodes[p]);
            eta_here[p][i] += evidence[p][i] > 0.0 ? w / evidence[p][i] : 0.0;
        }
    }
    std::vector<Brute> found;
    for (std::size_t p = 0; p < log.places.size(); ++p) {
        found.push_back(torchside::test::summed(eta_here[p], own[p], stock_sd));
    }
    return found;
}

} // namespace

TEST_CASE("More than three directions: the grid takes three, the rest stays normal; how far off") {
    std::vector<double> middle, ends;
    Rng rng(11);
    for (int i = 0; i < 40; ++i) {
        const Log log = random_log(rng);
        const ResponseFit found = fit(log.rows, model());
        const std::vector<Brute> exact = sampled(log, found.coefficients(), rng);
        for (std::size_t p = 0; p < log.places.size(); ++p) {
            const Distribution f = found.distribution(log.places[p], 0);
            middle.push_back(std::abs(f.quantile(0.5) - exact[p].middle));
            ends.push_back(
                std::max(std::abs(f.quantile(0.1) - exact[p].low), std::abs(f.quantile(0.9) - exact[p].high)));
        }
    }
    const auto within = [](std::vector<double>& all, double share) {
        std::sort(all.begin(), all.end());
        return all[static_cast<std::size_t>(share * static_cast<double>(all.size() - 1))];
    };
    CAPTURE(middle.size(), within(middle, 0.5), within(middle, 0.95), within(middle, 1.0), within(ends, 0.5),
            within(ends, 0.95), within(ends, 1.0));
    CHECK(within(middle, 0.95) < 0.004);
    CHECK(within(middle, 1.0) < 0.03);
    CHECK(within(ends, 0.95) < 0.012);
    CHECK(within(ends, 1.0) < 0.15);
}
