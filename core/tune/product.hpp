// Functions of one unknown f on an even grid: the product of a stock's verdicts, and its moments under a normal prior.
//
// What       Everything that is not normal in the learning is one-dimensional, so it is summed on a grid.
// Formula    mean and variance of N(f; m, v) L(f), both summed at the nodes (the trapezoid rule; for functions as
//            smooth as these its error falls as exp(-2 pi^2 (softness / step)^2)).
// Source     own.
// Range      step = 0.0125, less with many rows (0.025 / sqrt(rows)), never below 0.004, for edges 0.01 soft; scaled
//            with the softness. A table ends where no edge of a verdict is near: beyond, the product stays what it is.
// Edges      an empty table is L = 1: exact normal moments.
// Example    L = 1 on a fine grid gives back m and v to 1e-12.
#pragma once

#include <span>
#include <vector>

#include "core/tune/window.hpp"

namespace torchside::tune {

struct Observation;

struct Product {
    double low = 0.0;
    double step = 0.0;
    std::vector<double> value{}; // largest 1
    double ln_scale = 0.0;       // the product itself is e^ln_scale times that
};

struct ProductView {
    double low = 0.0;
    double step = 0.0;
    std::span<const double> value{};
};

struct Moments {
    double mean = 0.0;
    double variance = 0.0;
    double ln_integral = 0.0; // of N(f; m, v) L(f)
};

/// Product of the rows' verdicts over f, as far as it changes; rows with a reading are passed over, one verdict at
/// least is needed.
[[nodiscard]] Product verdict_table(std::span<const Observation> rows, const Window& window);

[[nodiscard]] Moments moments(const ProductView& evidence, double m, double v);

/// N(f; m, v) L(f) at every node within 7.5 sd of m, scaled to sum to 1.
[[nodiscard]] Product product(const ProductView& evidence, double m, double v);

} // namespace torchside::tune
