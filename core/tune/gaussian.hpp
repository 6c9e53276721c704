// A normal distribution over a handful of coefficients, and how one more piece of evidence moves it.
//
// What       Evidence about eta = x'b in the form exp(nu eta - tau eta^2 / 2) is put into N(mean, cov).
// Formula    g = cov x, v = x'g, m = x'mean, k = 1 + tau v
//            mean' = mean + g (nu - tau m) / k        cov' = cov - g g' tau / k
//            A reading y with variance r is tau = 1/r, nu = y/r. Evidence is taken out again by -tau, -nu.
// Source     own; the textbook update of Bayesian linear regression, written for one row at a time (C = (X'X/s^2 +
//            S^-1)^-1, mu = C X'y/s^2 for equal noise).
// Range      1..10 coefficients, any cov that is positive semidefinite, k > 0. Relative error about 1e-14 a row.
// Edges      tau = 0 only tilts the mean; a coefficient with no variance stays where it is; k <= 0 would make the
//            result improper and is left out: false comes back.
// Example    prior N(0, 0.35^2), one y = 0.22314 with sd 0.08: mean 0.21206, sd 0.07799.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <span>

namespace torchside::tune {

inline constexpr std::size_t most_terms = 10;
using Vector = std::array<double, most_terms>;

struct Gaussian {
    std::size_t n = 0;
    Vector mean{};
    std::array<Vector, most_terms> cov{};

    [[nodiscard]] static Gaussian independent(std::span<const double> sd) {
        Gaussian g;
        g.n = sd.size();
        for (std::size_t i = 0; i < g.n; ++i) {
            g.cov[i][i] = sd[i] * sd[i];
        }
        return g;
    }

    [[nodiscard]] double at(const Vector& x) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            sum += x[i] * mean[i];
        }
        return sum;
    }

    /// cov x. Most x are mostly zeros.
    [[nodiscard]] Vector gain(const Vector& x) const {
        Vector g{};
        for (std::size_t j = 0; j < n; ++j) {
            if (x[j] != 0.0) {
                for (std::size_t i = 0; i < most_terms; ++i) {
                    g[i] += cov[j][i] * x[j];
                }
            }
        }
        return g;
    }

    /// x'b: its mean and variance, and cov x.
    struct Along {
        Vector gain{};
        double mean = 0.0;
        double variance = 0.0;
    };
    [[nodiscard]] Along along(const Vector& x) const {
        Along a{gain(x), at(x), 0.0};
        for (std::size_t i = 0; i < n; ++i) {
            a.variance += x[i] * a.gain[i];
        }
        return a;
    }

    [[nodiscard]] double variance(const Vector& x) const { return along(x).variance; }

    /// cov of x'b and y'b.
    [[nodiscard]] double covariance(const Vector& x, const Vector& y) const {
        const Vector g = gain(x);
        double sum = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            sum += y[i] * g[i];
        }
        return sum;
    }

    bool add(const Vector& x, double tau, double nu) { return add(along(x), tau, nu); }

    /// `a` as along() gives it now.
    bool add(const Along& a, double tau, double nu) {
        const double k = 1.0 + tau * a.variance;
        if (!(k > 0.0)) {
            return false;
        }
        const double move = (nu - tau * a.mean) / k;
        const double shrink = tau / k;
        for (std::size_t i = 0; i < n; ++i) {
            if (a.gain[i] == 0.0) {
                continue;
            }
            mean[i] += a.gain[i] * move;
            for (std::size_t j = 0; j < most_terms; ++j) {
                cov[i][j] -= a.gain[i] * a.gain[j] * shrink;
            }
        }
        return true;
    }

    bool observe(const Vector& x, double y, double variance_of_y) {
        return add(x, 1.0 / variance_of_y, y / variance_of_y);
    }
};

} // namespace torchside::tune
