// Plain statistics of lives: least squares for the two rates, a failure rate with a Gamma prior, a Weibull fit.
//
// What       What a log says without the priors of damage.hpp, to hold against it.
// Formula    fit_rates   minimise sum (a N + b T - 1)^2 over a, b >= 0 (two-variable non-negative least squares)
//            life        starts a set makes at a mean cut of m minutes: 1 / (a + b m)
//            Gamma       k failures over exposure X: (alpha + k, beta + X); rate alpha / beta, its sd sqrt(alpha) /
//                        beta, mean life beta / (alpha - 1)
//            Weibull     sum x^k ln x / sum x^k - 1/k - mean ln x = 0, lambda = (mean x^k)^(1/k); survival from x0 to
//            x:
//                        exp((x0/lambda)^k - (x/lambda)^k)
// Source     textbook statistics. The Gamma's constant hazard is not true of wear, whose Weibull shape is about 3 to 8
//            (a guess): good for a mean life, not for the next start's risk.
// Range      lives > 0. Shape 0.05 to 1000.
// Edges      no rates from a log without starts and arc time; no Weibull from fewer than two lives; lives that are all
//            alike give the shape 1000.
// Example    (300 starts, 60 min) (200, 110) (420, 35) (250, 80): a 1/504.0, b 1/170.5 min; at 20 s a cut 253.9 starts.
//            Gamma (2, 800) with 3 failures in 1500: rate 0.0021739, mean life 575. Lives 310 355 395 440 500: shape
//            6.725, scale 428.40.
#pragma once

#include <optional>
#include <span>

#include "core/quantity/quantity.hpp"
#include "core/wear/wear_log.hpp"

namespace torchside::wear {

struct Rates {
    double per_start = 0.0;
    double per_minute = 0.0;
};

[[nodiscard]] std::optional<Rates> fit_rates(std::span<const ConsumableSet> sets);
[[nodiscard]] double life_starts(const Rates& rates, Duration mean_cut);

struct GammaRate {
    double alpha = 0.0;
    double beta = 0.0;

    [[nodiscard]] GammaRate after(int failures, double exposure) const { return {alpha + failures, beta + exposure}; }
    [[nodiscard]] double rate() const { return alpha / beta; }
    [[nodiscard]] double rate_sd() const;
    [[nodiscard]] double mean_life() const { return beta / (alpha - 1.0); } // alpha > 1
};

struct Weibull {
    double shape = 0.0;
    double scale = 0.0;

    [[nodiscard]] double mean() const;
    [[nodiscard]] double quantile(double p) const;               // the life that a share p does not reach
    [[nodiscard]] double survives(double from, double to) const; // probability, having come to `from`
};

[[nodiscard]] std::optional<Weibull> fit_weibull(std::span<const double> lives);

} // namespace torchside::wear
