#include "core/wear/life.hpp"

#include <algorithm>
#include <cmath>

#include "core/wear/damage.hpp"

namespace torchside::wear {

std::optional<Rates> fit_rates(std::span<const ConsumableSet> sets) {
    double nn = 0.0, nt = 0.0, tt = 0.0, n = 0.0, t = 0.0;
    for (const ConsumableSet& set : sets) {
        const Use use = use_of(set);
        nn += use.starts * use.starts;
        nt += use.starts * use.minutes;
        tt += use.minutes * use.minutes;
        n += use.starts;
        t += use.minutes;
    }
    if (nn + tt <= 0.0)
        return {};
    const double det = nn * tt - nt * nt;
    if (det > 1e-12 * nn * tt) {
        const Rates both{(tt * n - nt * t) / det, (nn * t - nt * n) / det};
        if (both.per_start >= 0.0 && both.per_minute >= 0.0)
            return both;
    }
    // On an edge: what is left of the sum of squares is sets - n^2/nn or sets - t^2/tt.
    if (tt <= 0.0 || (nn > 0.0 && n * n / nn >= t * t / tt))
        return Rates{n / nn, 0.0};
    return Rates{0.0, t / tt};
}

double life_starts(const Rates& rates, Duration mean_cut) {
    return 1.0 / (rates.per_start + rates.per_minute * mean_cut.in(minute));
}

double GammaRate::rate_sd() const {
    return std::sqrt(alpha) / beta;
}

double Weibull::mean() const {
    return scale * std::tgamma(1.0 + 1.0 / shape);
}

double Weibull::quantile(double p) const {
    return scale * std::pow(-std::log1p(-p), 1.0 / shape);
}

double Weibull::survives(double from, double to) const {
    return std::exp(std::pow(from / scale, shape) - std::pow(to / scale, shape));
}

std::optional<Weibull> fit_weibull(std::span<const double> lives) {
    if (lives.size() < 2 || *std::min_element(lives.begin(), lives.end()) <= 0.0)
        return {};
    const double longest = *std::max_element(lives.begin(), lives.end()); // x / longest: its powers stay finite
    double mean_ln = 0.0;
    for (const double x : lives)
        mean_ln += std::log(x / longest) / static_cast<double>(lives.size());
    struct Sums {
        double weighted, plain;
    };
    const auto sums = [&](double k) {
        double weighted = 0.0, sum = 0.0;
        for (const double x : lives) {
            const double power = std::pow(x / longest, k);
            weighted += power * std::log(x / longest);
            sum += power;
        }
        return Sums{weighted, sum};
    };
    double low = 0.05, high = 1000.0; // what is to be 0 rises with k
    for (int i = 0; i < 80; ++i) {
        const double k = std::sqrt(low * high);
        const Sums s = sums(k);
        (s.weighted / s.plain - 1.0 / k - mean_ln < 0.0 ? low : high) = k;
    }
    return Weibull{high, longest * std::pow(sums(high).plain / static_cast<double>(lives.size()), 1.0 / high)};
}

} // namespace torchside::wear
