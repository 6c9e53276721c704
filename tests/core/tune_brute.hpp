// What the fit is compared with: pieces of a brute-force sum over coefficients and every stock's own part. Nothing is
// shared with the code under test but the likelihood of one verdict.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "core/tune/observation.hpp"

namespace torchside::test {

struct Brute {
    double mean = 0.0;
    double sd = 0.0;
    double middle = 0.0;
    double low = 0.0; // ends of the 80 % band
    double high = 0.0;
};

inline double normal(double z) {
    return std::exp(-0.5 * z * z);
}

/// An even grid in eta and f: 600 places from -2.4 to 2.4.
struct BruteGrid {
    static constexpr int n = 600;
    static constexpr double step = 0.008;
    static constexpr int reach = 50; // of a stock's own part, for sd up to 0.08

    static double value(int i) { return (i - n / 2) * step; }
    static int node(double eta) { return static_cast<int>(std::lround(eta / step)) + n / 2; }
};

/// Every value spread by a stock's own part.
inline std::vector<double> spread(const std::vector<double>& of, double stock_sd) {
    std::vector<double> out(BruteGrid::n, 0.0);
    for (int i = 0; i < BruteGrid::n; ++i) {
        for (int j = std::max(0, i - BruteGrid::reach); j < std::min(BruteGrid::n, i + BruteGrid::reach + 1); ++j) {
            out[static_cast<std::size_t>(i)] +=
                of[static_cast<std::size_t>(j)] * normal((i - j) * BruteGrid::step / stock_sd);
        }
    }
    return out;
}

/// What the rows at x say of f.
inline std::vector<double> own_likelihood(const std::vector<tune::Observation>& rows, const tune::Vector& x,
                                          const tune::Judge& judge) {
    std::vector<double> of_f(BruteGrid::n, 1.0);
    for (const tune::Observation& o : rows) {
        for (int i = 0; o.x == x && i < BruteGrid::n; ++i) {
            const double off = o.y - BruteGrid::value(i);
            of_f[static_cast<std::size_t>(i)] *=
                o.judged() ? judge.reads(o.verdict, off) : normal(off / std::sqrt(o.noise));
        }
    }
    return of_f;
}

/// Where a share p of the masses lies below, even within a cell of the grid.
inline double quantile_of(const std::vector<double>& mass, double sum, double p) {
    double below = 0.0;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        if (below + mass[i] >= p * sum) {
            return BruteGrid::value(0) + BruteGrid::step * (static_cast<double>(i) - 0.5 + (p * sum - below) / mass[i]);
        }
        below += mass[i];
    }
    return BruteGrid::value(BruteGrid::n);
}

/// f of a stock, from how likely each eta is by all other rows.
inline Brute summed(const std::vector<double>& eta_here, const std::vector<double>& of_f, double stock_sd) {
    std::vector<double> mass = spread(eta_here, stock_sd);
    double sum = 0.0;
    double first = 0.0;
    double second = 0.0;
    for (int i = 0; i < BruteGrid::n; ++i) {
        const double w = mass[static_cast<std::size_t>(i)] *= of_f[static_cast<std::size_t>(i)];
        const double f = BruteGrid::value(i);
        sum += w;
        first += w * f;
        second += w * f * f;
    }
    const double mean = first / sum;
    return {mean, std::sqrt(second / sum - mean * mean), quantile_of(mass, sum, 0.5), quantile_of(mass, sum, 0.1),
            quantile_of(mass, sum, 0.9)};
}

} // namespace torchside::test
