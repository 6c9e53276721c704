// What many shops' logs together say of shops: how far they lie off the chart, how far apart, how wide their clean window
// is and how often they misread. A newcomer then starts from them instead of from a guess.
//
// What       The population that the logs speak for, each figure with its 80 % band; the priors of a learner who knows it.
// Formula    theta = (mean of the bias, ln of its sd, ln sd of the slope, ln sd of a stock, ln window, ln misreading)
//            ln L(theta) = sum over shops of ln integral P(log | b, e) N(b; theta) N(e; theta) db de
//                          - sum over k of (theta_k - usual_k)^2 / 2 w_k^2
//            The integral is fit()'s (response_fit.hpp: messages and grid). Greatest by one figure at a time: a parabola
//            through ln L at theta_k - h, theta_k, theta_k + h gives the step, at most 2h, and the band theta_k +-1.28
//            sd, sd^2 = -1 / curvature, the other figures held. Six rounds, h halved after each second one.
//            w: 0.3 of the mean, 0.5 of each logarithm: a few shops alone shall not make a spread of nothing.
// Source     own; type-II maximum likelihood is textbook (from memory). w: priors (assets/data/tune_priors.json).
// Range      1..200 shops. 30 shops of 20 cuts take some 2 s.
// Edges      logs without a verdict move nothing. Bands leave out how the figures depend on each other.
// Example    tests/core/tune_pool.cpp: 20 made-up shops whose feeds lie 0.26 above the chart.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/gear/machine.hpp"
#include "core/tune/priors.hpp"
#include "core/tune/test_cut.hpp"

namespace torchside::tune {

/// All that one shop cut.
struct ShopLog {
    std::vector<TestCut> cuts{};
    Machine machine{};
};

struct PooledFigure {
    double value = 0.0, low = 0.0, high = 0.0;
};

struct Pooled {
    PooledFigure mean{}; // of a shop's ln(feed) against the chart
    PooledFigure bias_sd{}, slope_sd{}, stock_sd{}, window{}, misread{};
    double ln_evidence = 0.0; // of all logs by it
};

[[nodiscard]] Pooled pool(std::span<const ShopLog> shops);

/// ln of how likely the logs are by these priors, up to what no prior changes.
[[nodiscard]] double ln_evidence(std::span<const ShopLog> shops, const Priors& priors);

/// The usual priors with the population's figures in place of the guesses.
struct KnownShops {
    double mean = 0.0;
    double bias_sd = 0.0, slope_sd = 0.0, stock_sd = 0.0;
    double window = 0.0, misread = 0.0;
    double precision = 0.0; // of the mean: 1 / variance
};
[[nodiscard]] Priors priors_of(const KnownShops& known);
[[nodiscard]] Priors priors_of(const Pooled& pooled);

} // namespace torchside::tune
