#include "core/wear/damage.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/quantity/figure_rows.hpp"

namespace torchside::wear {
namespace {

constexpr FigureRow<Priors> rows[] = {
#include "generated/wear_priors.inc"
};
constexpr Priors table = figures_of(rows);

// Rates are worked in shares of their priors: x = a / a0, y = b / b0.
constexpr double start0 = 1.0 / table.starts_per_set, minute0 = 1.0 / table.minutes_per_set;

/// First and second derivatives of the sum that is made least.
struct Slopes {
    double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;

    void add(Use scaled, double first, double second) {
        x += first * scaled.starts;
        y += first * scaled.minutes;
        xx += second * scaled.starts * scaled.starts;
        xy += second * scaled.starts * scaled.minutes;
        yy += second * scaled.minutes * scaled.minutes;
    }
};

Use scaled(Use use) {
    return {start0 * use.starts, minute0 * use.minutes};
}

struct Log {
    std::span<const ConsumableSet> sets;
    double spread = 0.0;
};

void add_pulled(Use use, double x, double y, double spread, Slopes& out) {
    const double z = (1.0 - x * use.starts - y * use.minutes) / spread;
    const double h = hazard(z);
    out.add(use, h / spread, h * (h + z) / (spread * spread));
}

Slopes slopes(const Log& log, double x, double y) {
    const double prior = 1.0 / (table.rate_spread * table.rate_spread), s2 = log.spread * log.spread;
    Slopes out{(x - 1.0) * prior, (y - 1.0) * prior, prior, 0.0, prior};
    for (const ConsumableSet& set : log.sets) {
        const Use use = scaled(use_of(set));
        if (set.ended == Ended::pulled) {
            add_pulled(use, x, y, log.spread, out);
        } else {
            out.add(use, (x * use.starts + y * use.minutes - 1.0) / s2, 1.0 / s2);
        }
    }
    return out;
}

// Convex: Newton's steps end at the one least point. `hold_x`, `hold_y` keep a rate at 0.
void descend(const Log& log, bool hold_x, bool hold_y, double& x, double& y) {
    for (int i = 0; i < 60; ++i) {
        const Slopes s = slopes(log, x, y);
        const double cross = hold_x || hold_y ? 0.0 : s.xy, det = s.xx * s.yy - cross * cross;
        const double dx = hold_x ? 0.0 : (s.yy * s.x - cross * s.y) / det;
        const double dy = hold_y ? 0.0 : (s.xx * s.y - cross * s.x) / det;
        x -= dx;
        y -= dy;
        if (std::abs(dx) + std::abs(dy) < 1e-13) {
            return;
        }
    }
}

WearRates fit(const Log& log) {
    double x = 1.0, y = 1.0;
    descend(log, false, false, x, y);
    if (x < 0.0) {
        x = 0.0;
        descend(log, true, false, x, y);
        y = std::max(y, 0.0);
    } else if (y < 0.0) {
        y = 0.0;
        descend(log, false, true, x, y);
        x = std::max(x, 0.0);
    }
    const Slopes s = slopes(log, x, y);
    const double det = s.xx * s.yy - s.xy * s.xy;
    return {start0 * x,
            minute0 * y,
            start0 * start0 * s.yy / det,
            minute0 * minute0 * s.xx / det,
            -start0 * minute0 * s.xy / det,
            log.spread};
}

} // namespace

const Priors& priors() {
    return table;
}

Use use_of(const ConsumableSet& set) {
    return {static_cast<double>(set.starts), set.arc.in(minute)};
}

double normal_below(double z) {
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double hazard(double z) {
    if (z < -25.0) { // Phi(z) = phi(z) / -z (1 - 1/z^2 + 3/z^4 - 15/z^6 ...)
        const double q = 1.0 / (z * z);
        return -z / (1.0 - q * (1.0 - q * (3.0 - 15.0 * q)));
    }
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi) / normal_below(z);
}

WearRates learn(std::span<const ConsumableSet> sets, double spread) {
    return fit({sets, spread});
}

WearRates learn(std::span<const ConsumableSet> sets) {
    const WearRates first = learn(sets, table.set_spread);
    double sum = table.set_spread_weight * table.set_spread * table.set_spread, weight = table.set_spread_weight;
    for (const ConsumableSet& set : sets) {
        if (set.ended == Ended::worn) {
            const double off = first.damage(use_of(set)) - 1.0;
            sum += std::min(off * off, 1.0); // a set that was spoilt or misread does not open the band without end
            weight += 1.0;
        }
    }
    return fit({sets, std::sqrt(sum / weight)});
}

} // namespace torchside::wear
