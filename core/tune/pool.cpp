#include "core/tune/pool.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/estimate.hpp"
#include "core/tune/posterior.hpp"

namespace torchside::tune {
namespace {

constexpr double exact = 1e8;
constexpr int rounds = 6;
constexpr std::size_t figures = 6;
using Theta = std::array<double, figures>;

// In the order of Theta: the first step of the search.
constexpr Theta first_step{0.1, 0.3, 0.3, 0.3, 0.2, 0.4};

double square(double x) {
    return x * x;
}

// How far each figure may be from the usual one, sd.
Theta doubts() {
    const double d = priors().pool_spread_doubt;
    return {priors().pool_mean_doubt, d, d, d, d, d};
}

Theta usual() {
    const Priors& p = priors();
    return {0.0,
            std::log(p.pool_bias),
            std::log(p.pool_slope),
            std::log(p.feed_stock),
            std::log(p.window),
            std::log(p.misread)};
}

KnownShops known(const Theta& t, double precision) {
    return {t[0],
            std::exp(t[1]),
            std::exp(t[2]),
            std::exp(t[3]),
            std::fmin(0.5, std::exp(t[4])),
            std::fmin(0.5, std::exp(t[5])),
            precision};
}

struct Pool {
    std::span<const ShopLog> shops{};
    Theta centre = usual();
    Theta at = centre;
    Theta doubt = doubts();
    Theta sd = doubt;

    [[nodiscard]] double ln(const Theta& t) const {
        Priors p = priors_of(known(t, exact));
        p.feed_others = 0.0;
        double sum = ln_evidence(shops, p);
        for (std::size_t k = 0; k < figures; ++k) {
            sum -= 0.5 * square((t[k] - centre[k]) / doubt[k]);
        }
        return sum;
    }

    // One figure to the top of a parabola; gives back ln L there, or of where it was.
    double improve(std::size_t k, double h, double here) {
        Theta t = at;
        t[k] = at[k] - h;
        const double below = ln(t);
        t[k] = at[k] + h;
        const double above = ln(t);
        const double curvature = (above - 2.0 * here + below) / (h * h);
        const double slope = (above - below) / (2.0 * h);
        sd[k] = curvature < 0.0 ? std::fmin(doubt[k], std::sqrt(-1.0 / curvature)) : doubt[k];
        const double step = curvature < 0.0 ? -slope / curvature : (slope > 0.0 ? h : -h);
        t[k] = at[k] + std::clamp(step, -2.0 * h, 2.0 * h);
        const double there = ln(t);
        if (there <= here) {
            return here;
        }
        at = t;
        return there;
    }
};

} // namespace

double ln_evidence(std::span<const ShopLog> shops, const Priors& p) {
    double sum = 0.0;
    for (const ShopLog& shop : shops) {
        sum += learn(shop.cuts, shop.machine, {}, p).feed.ln_evidence();
    }
    return sum;
}

Priors priors_of(const KnownShops& shops) {
    Priors p = priors();
    const double chart_bias = square(p.feed_bias) - square(p.feed_shop_bias);
    const double chart_slope = square(p.feed_slope) - square(p.feed_shop_slope);
    p.feed_mean = shops.mean;
    p.feed_pooled = shops.precision;
    p.feed_shop_bias = shops.bias_sd;
    p.feed_bias = std::sqrt(chart_bias + square(shops.bias_sd));
    p.feed_shop_slope = shops.slope_sd;
    p.feed_slope = std::sqrt(chart_slope + square(shops.slope_sd));
    p.feed_stock = shops.stock_sd;
    p.window = shops.window;
    p.misread = shops.misread;
    return p;
}

Priors priors_of(const Pooled& pooled) {
    const double mean_sd = std::fmax(1e-3, (pooled.mean.high - pooled.mean.low) / (2.0 * band80_sd));
    return priors_of(KnownShops{pooled.mean.value, pooled.bias_sd.value, pooled.slope_sd.value, pooled.stock_sd.value,
                                pooled.window.value, pooled.misread.value, 1.0 / square(mean_sd)});
}

Pooled pool(std::span<const ShopLog> shops) {
    Pool p;
    p.shops = shops;
    double here = p.ln(p.at);
    for (int round = 0; round < rounds; ++round) {
        for (std::size_t k = 0; k < figures; ++k) {
            here = p.improve(k, first_step[k] * std::pow(0.5, round / 2), here);
        }
    }
    const auto figure = [&](std::size_t k) {
        const double half = band80_sd * p.sd[k];
        return PooledFigure{std::exp(p.at[k]), std::exp(p.at[k] - half), std::exp(p.at[k] + half)};
    };
    const double half = band80_sd * p.sd[0];
    return {{p.at[0], p.at[0] - half, p.at[0] + half},        figure(1), figure(2), figure(3), figure(4), figure(5),
            ln_evidence(shops, priors_of(known(p.at, exact)))};
}

} // namespace torchside::tune
