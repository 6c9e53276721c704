// Worked examples of learning from cuts: the linear case, by hand-checkable numbers.
#include <cmath>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/gaussian.hpp"
#include "core/tune/response_fit.hpp"

using namespace torchside::tune;
using Catch::Matchers::WithinAbs;

namespace {

struct Cut {
    double thickness_mm, feed, model_feed;
};

// Own worked example: a 45 A torch, noise 0.08, prior sd 0.35 / 0.20 / 0.20 about 6 mm and 45 A.
constexpr Cut cuts[] = {{3, 2540, 2116}, {6, 1150, 920}, {10, 640, 473}};
constexpr double prior_sd[] = {0.35, 0.20, 0.20};

Vector at(double thickness_mm, double current_a) {
    return {1.0, std::log(thickness_mm / 6.0), std::log(current_a / 45.0)};
}

ResponseFit learnt(std::size_t n, const Cut* rows) {
    Model model;
    model.prior = Gaussian::independent(prior_sd);
    model.stock_sd = 0.06;
    std::vector<Observation> observations;
    for (std::size_t i = 0; i < n; ++i) {
        Observation o;
        o.x = at(rows[i].thickness_mm, 45);
        o.y = std::log(rows[i].feed / rows[i].model_feed);
        o.noise = 0.08 * 0.08 - 0.06 * 0.06; // 0.08 in all: the stock's own part and the reading
        o.row = static_cast<int>(i);
        observations.push_back(o);
    }
    return fit(observations, model);
}

// Prediction of another cut: coefficients and 0.08 of noise.
double sd_new(const ResponseFit& s, const Vector& x) {
    return std::sqrt(s.coefficients().variance(x) + 0.08 * 0.08);
}

} // namespace

TEST_CASE("Feeds cut against feeds of the model, in logarithms") {
    CHECK_THAT(std::log(cuts[0].feed / cuts[0].model_feed), WithinAbs(0.18264, 5e-6));
    CHECK_THAT(std::log(cuts[1].feed / cuts[1].model_feed), WithinAbs(0.22314, 5e-6));
    CHECK_THAT(std::log(cuts[2].feed / cuts[2].model_feed), WithinAbs(0.30237, 5e-6));
}

TEST_CASE("Three cuts at one current move bias and thickness slope, not the current slope") {
    const Gaussian g = learnt(3, cuts).coefficients();
    CHECK_THAT(g.mean[0], WithinAbs(0.23672, 1e-5));
    CHECK_THAT(g.mean[1], WithinAbs(0.07879, 1e-5));
    CHECK_THAT(g.mean[2], WithinAbs(0.0, 1e-12));
    CHECK_THAT(std::sqrt(g.cov[0][0]), WithinAbs(0.04607, 1e-5));
    CHECK_THAT(std::sqrt(g.cov[1][1]), WithinAbs(0.08478, 1e-5));
    CHECK_THAT(std::sqrt(g.cov[2][2]), WithinAbs(0.20000, 1e-12));
}

TEST_CASE("Prediction between the cuts, and a wider one at another current") {
    const ResponseFit s = learnt(3, cuts);
    CHECK_THAT(s.curve(at(8, 45)), WithinAbs(0.25938, 1e-5));
    CHECK_THAT(sd_new(s, at(8, 45)), WithinAbs(0.09677, 1e-5));
    CHECK_THAT(637 * std::exp(s.curve(at(8, 45))), WithinAbs(825.6, 0.1));
    CHECK_THAT(637 * std::exp(s.curve(at(8, 45)) - sd_new(s, at(8, 45))), WithinAbs(749.5, 0.1));
    CHECK_THAT(637 * std::exp(s.curve(at(8, 45)) + sd_new(s, at(8, 45))), WithinAbs(909.5, 0.1));
    CHECK_THAT(s.curve(at(12, 60)), WithinAbs(0.29133, 1e-5));
    CHECK_THAT(sd_new(s, at(12, 60)), WithinAbs(0.12602, 1e-5));
    CHECK_THAT(530 * std::exp(s.curve(at(12, 60))), WithinAbs(709.3, 0.1));
    CHECK_THAT(530 * std::exp(s.curve(at(12, 60)) - sd_new(s, at(12, 60))), WithinAbs(625.3, 0.1));
    CHECK_THAT(530 * std::exp(s.curve(at(12, 60)) + sd_new(s, at(12, 60))), WithinAbs(804.5, 0.1));
}

TEST_CASE("One cut at the reference plate moves the bias alone") {
    const Gaussian g = learnt(1, cuts + 1).coefficients();
    CHECK_THAT(g.mean[0], WithinAbs(0.21206, 1e-5));
    CHECK_THAT(std::sqrt(g.cov[0][0]), WithinAbs(0.07799, 1e-5));
    CHECK_THAT(std::exp(g.mean[0]), WithinAbs(1.2362, 1e-4));
}
