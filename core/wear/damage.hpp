// The two rates at which starts and arc time use up a set of consumables, learnt from the shop's log of sets.
//
// What       Damage D = a N + b T of N starts and T minutes of arc; a set fails when D reaches its own life L, which is
//            1 give or take the spread s from set to set.
// Formula    minimise over a, b >= 0:
//              sum over worn sets (a N + b T - 1)^2 / (2 s^2)  - sum over pulled sets ln Phi((1 - a N - b T) / s)
//              + (a - a0)^2 / (2 sa^2) + (b - b0)^2 / (2 sb^2)
//            by Newton's method; the inverse of the second derivatives there is the covariance (Laplace). A set that
//            was pulled early only says L > D. The spread: s^2 = (w s0^2 + sum over worn (D - 1)^2) / (w + how many).
// Source     two parts of the wear: Q. J. Japan Weld. Soc. 28(3) (2010) 311, Peters et al. 2005 (abstracts); linear
//            damage is Miner's rule; rates and spreads are guesses (assets/data/wear_priors.json).
// Range      0 to 1e5 starts and 0 to 1e4 minutes a set, any number of sets, none included.
// Edges      where one rate would come out below 0 it is 0 and the other is found again.
// Example    (300 starts, 60 min) (200, 110) (420, 35) (250, 80), all worn, s = 0.2: a 0.00196498 +- 0.000476,
//            b 0.0061421 +- 0.001866.
#pragma once

#include <span>

#include "core/wear/wear_log.hpp"

namespace torchside::wear {

struct Priors {
    double starts_per_set = 0.0;
    double minutes_per_set = 0.0;
    double rate_spread = 0.0;
    double set_spread = 0.0;
    double set_spread_weight = 0.0;
    double run_off_starts = 0.0;
    double minutes_a_start = 0.0;
};

[[nodiscard]] const Priors& priors();

/// What is done to a set: starts and minutes of arc.
struct Use {
    double starts = 0.0;
    double minutes = 0.0;

    friend constexpr Use operator+(Use a, Use b) { return {a.starts + b.starts, a.minutes + b.minutes}; }
    friend constexpr Use operator*(double k, Use u) { return {k * u.starts, k * u.minutes}; }
};

[[nodiscard]] Use use_of(const ConsumableSet& set);

/// The rates as they are known: mean, and covariance.
struct WearRates {
    double per_start = 0.0, per_minute = 0.0;
    double var_start = 0.0, var_minute = 0.0, covariance = 0.0;
    double spread = 0.0; // of one set's life

    [[nodiscard]] double damage(Use use) const { return per_start * use.starts + per_minute * use.minutes; }
    /// Covariance of the damage of two uses, the rates being what is unknown.
    [[nodiscard]] double between(Use a, Use b) const {
        return var_start * a.starts * b.starts + var_minute * a.minutes * b.minutes +
               covariance * (a.starts * b.minutes + a.minutes * b.starts);
    }
};

/// With a given spread.
[[nodiscard]] WearRates learn(std::span<const ConsumableSet> sets, double spread);

/// With the spread learnt as well.
[[nodiscard]] WearRates learn(std::span<const ConsumableSet> sets);

/// phi(z) / Phi(z) of the normal distribution, for any z: how far the mean of what is left moves when all below -z is
/// cut off.
[[nodiscard]] double hazard(double z);

[[nodiscard]] double normal_below(double z);

} // namespace torchside::wear
