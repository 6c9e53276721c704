// All that a log says of one stock, and what the rest of the log says of it. Shared inside core/tune.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/tune/distribution.hpp"
#include "core/tune/gaussian.hpp"
#include "core/tune/product.hpp"

namespace torchside::tune {

/// eta = x'b with a stock's own evidence left out: what the rest of the log says of it.
struct Cavity {
    double mean = 0.0;
    double variance = 0.0;
};

struct StockEvidence {
    Vector x{};
    std::int64_t tag = 0;
    std::size_t begin = 0, end = 0;             // its rows
    double reading_tau = 0.0, reading_nu = 0.0; // normal rows, weighted
    double low = 0.0, step = 0.0;               // table of verdicts
    std::vector<double> verdicts{};             // their product, largest 1; empty: no verdicts
    double ln_scale = 0.0;                      // ln of what that product was divided by
    double tau = 0.0, nu = 0.0;                 // message to b
    double mean = 0.0, variance = 0.0;          // of f, all in
    bool shaped = false;                        // its verdicts are in the grid as they are

    [[nodiscard]] ProductView table() const { return {low, step, verdicts}; }
};

/// `all`: along the stock's x, its own message in.
[[nodiscard]] inline Cavity cavity_of(const StockEvidence& stock, const Gaussian::Along& all) {
    const double rest = 1.0 - stock.tau * all.variance;
    return {(all.mean - stock.nu * all.variance) / rest, all.variance / rest};
}

/// f by everything but the stock's own verdicts.
[[nodiscard]] inline Moments prior_of(const StockEvidence& stock, const Cavity& eta, double stock_sd) {
    const double prior = eta.variance + stock_sd * stock_sd;
    const double v = prior / (1.0 + prior * stock.reading_tau);
    return {v * (eta.mean / prior + stock.reading_nu), v, 0.0};
}

/// ln of the integral of N(eta; m, v) exp(nu eta - tau eta^2 / 2).
[[nodiscard]] double ln_normal(double m, double v, double tau, double nu);

/// f of the stock, its verdicts in as they are, those of others as normal messages.
[[nodiscard]] Distribution distribution_of(const StockEvidence& stock, const Gaussian& coefficients, double stock_sd);

} // namespace torchside::tune
