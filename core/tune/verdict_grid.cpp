#include "core/tune/verdict_grid.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"

namespace torchside::tune {
namespace {

// The nodes of an axis: so far apart in the middle, in sd, and so many either way. More directions, fewer of each.
struct Axis {
    double apart;
    int outermost;
};
constexpr Axis axes[] = {
    {0.2, 16}, {0.2, 16}, {0.38, 13}, {0.8, 5}}; // by the number of directions; out to 12 and 4.7 sd
constexpr double stretch = 0.2;                  // how they move apart outwards
constexpr std::size_t most_shaped = 8;           // stocks whose verdicts keep their shape: those known least
constexpr double told_apart = 0.05;  // share of a stock's own variance: directions that move nothing more are left out
constexpr double too_little = -28.0; // ln of a node's share that cannot show
constexpr double table_step = 0.9;   // of the sd that a stock's verdicts are smoothed by

// Between four evenly spaced values, a share of the way from the second to the third (Catmull and Rom 1974).
double between(const double* y, double t) {
    return y[1] + 0.5 * t *
                      (y[2] - y[0] +
                       t * (2.0 * y[0] - 5.0 * y[1] + 4.0 * y[2] - y[3] + t * (3.0 * (y[1] - y[2]) + y[3] - y[0])));
}

// One node of an axis: close together in the middle, ever further apart outside, where a misread verdict leaves a thin tail.
double node_at(const Axis& axis, int i) {
    return axis.apart / stretch * std::sinh(stretch * i);
}

double ln_width(int i) {
    return std::log(std::cosh(stretch * i));
}

} // namespace

double ln_normal(double m, double v, double tau, double nu) {
    const double k = 1.0 + tau * v;
    return -0.5 * std::log(k) + 0.5 * (nu * nu * v + 2.0 * nu * m - tau * m * m) / k;
}

// All nodes that are at most `outermost` from the middle, counted in nodes, in a fixed order; ln weights of the sum over them
// with N(z) in.
void VerdictGrid::lay() {
    const Axis& axis = axes[directions_];
    const int end = axis.outermost;
    const int ends[most_directions] = {end, directions_ > 1 ? end : 0, directions_ > 2 ? end : 0};
    for (int i = -ends[0]; i <= ends[0]; ++i) {
        for (int j = -ends[1]; j <= ends[1]; ++j) {
            for (int k = -ends[2]; k <= ends[2]; ++k) {
                if (i * i + j * j + k * k > end * end) {
                    continue;
                }
                const Node z{node_at(axis, i), node_at(axis, j), node_at(axis, k)};
                nodes_.push_back(z);
                ln_weight_.push_back(ln_width(i) + ln_width(j) + ln_width(k) -
                                     0.5 * (z[0] * z[0] + z[1] * z[1] + z[2] * z[2]));
            }
        }
    }
}

VerdictGrid::Along VerdictGrid::along(const Vector& x) const {
    Along a{coefficients_.at(x), {}, coefficients_.variance(x)};
    for (std::size_t k = 0; k < directions_; ++k) {
        for (std::size_t i = 0; i < coefficients_.n; ++i) {
            a.slope[k] += x[i] * gain_[k][i];
        }
        a.variance -= a.slope[k] * a.slope[k];
    }
    a.variance = std::fmax(0.0, a.variance);
    return a;
}

// ln of what the stock's verdicts and readings say at every node, over what its message says there.
std::vector<double> VerdictGrid::correction(const StockEvidence& stock) const {
    const Along eta = along(stock.x);
    const double k = 1.0 - stock.tau * eta.variance; // takes the message out of what is left open
    const double open = eta.variance / k;
    const double prior = open + stock_sd_ * stock_sd_;
    const double v = prior / (1.0 + prior * stock.reading_tau);
    const auto without = [&](double m) { return (m - stock.nu * eta.variance) / k; };
    double spread = 0.0;
    for (const double slope : eta.slope) {
        spread += slope * slope;
    }
    const Axis& axis = axes[directions_];
    const double furthest = node_at(axis, axis.outermost) * std::sqrt(spread);
    const double low = without(eta.mean - furthest);
    const double high = without(eta.mean + furthest);
    const double step = table_step * std::sqrt(prior);
    std::vector<double> table(static_cast<std::size_t>((high - low) / step) + 5);
    for (std::size_t i = 0; i < table.size(); ++i) {
        const double m = low + (static_cast<double>(i) - 1.0) * step;
        const double middle = v * (m / prior + stock.reading_nu);
        table[i] = ln_normal(m, prior, stock.reading_tau, stock.reading_nu) - ln_normal(m, open, stock.tau, stock.nu) +
                   moments(stock.table(), middle, v).ln_integral;
    }
    std::vector<double> ln(nodes_.size());
    for (std::size_t i = 0; i < ln.size(); ++i) {
        const double place =
            std::clamp((without(eta.at(nodes_[i])) - low) / step, 0.0, static_cast<double>(table.size() - 4));
        const double below = std::floor(place);
        ln[i] = between(&table[static_cast<std::size_t>(below)], place - below);
    }
    return ln;
}

// The directions in which the judged stocks depend on the coefficients, the one with most to say first.
void VerdictGrid::find_directions(std::span<const StockEvidence> stocks) {
    const double s2 = stock_sd_ * stock_sd_;
    while (directions_ < most_directions) {
        const StockEvidence* next = nullptr;
        double most = told_apart * s2;
        for (const StockEvidence& stock : stocks) {
            if (!stock.shaped) {
                continue;
            }
            const double open = along(stock.x).variance;
            if (open > most) {
                most = open;
                next = &stock;
            }
        }
        if (next == nullptr) {
            return;
        }
        const Along eta = along(next->x);
        Vector gain = coefficients_.gain(next->x);
        for (std::size_t i = 0; i < coefficients_.n; ++i) {
            for (std::size_t k = 0; k < directions_; ++k) {
                gain[i] -= eta.slope[k] * gain_[k][i];
            }
            gain[i] /= std::sqrt(eta.variance);
        }
        gain_[directions_++] = gain;
    }
}

void choose_shaped(std::vector<StockEvidence>& stocks) {
    std::vector<StockEvidence*> judged;
    for (StockEvidence& stock : stocks) {
        if (!stock.verdicts.empty()) {
            judged.push_back(&stock);
        }
    }
    sort_rows(judged, [](const StockEvidence* a, const StockEvidence* b) { return a->variance > b->variance; });
    for (std::size_t i = 0; i < judged.size(); ++i) {
        judged[i]->shaped = i < most_shaped;
    }
}

VerdictGrid::VerdictGrid(const Gaussian& coefficients, std::span<const StockEvidence> stocks, double stock_sd)
    : coefficients_(coefficients), stock_sd_(stock_sd) {
    find_directions(stocks);
    if (directions_ == 0) {
        return;
    }
    lay();
    for (const StockEvidence& stock : stocks) {
        if (!stock.shaped) {
            continue;
        }
        const std::vector<double> ln = correction(stock);
        for (std::size_t i = 0; i < ln.size(); ++i) {
            ln_weight_[i] += ln[i];
        }
    }
    ln_one_ = static_cast<double>(directions_) * std::log(axes[directions_].apart / std::sqrt(2.0 * std::numbers::pi));
    level();
}

// The largest weight to 1.
void VerdictGrid::level() {
    const double most = *std::max_element(ln_weight_.begin(), ln_weight_.end());
    double sum = 0.0;
    for (double& ln : ln_weight_) {
        ln -= most;
        sum += std::exp(ln);
    }
    ln_one_ += most;
    ln_evidence_ = ln_one_ + std::log(sum);
}

void VerdictGrid::leave_to(std::span<const StockEvidence> own, std::span<const StockEvidence> other, double ln_more) {
    std::vector<double> ln(nodes_.size(), -ln_more); // of what the other start's normal distribution is of this one's
    for (std::size_t s = 0; s < own.size(); ++s) {
        const double nu = other[s].nu - own[s].nu;
        const double tau = other[s].tau - own[s].tau;
        if (nu == 0.0 && tau == 0.0) {
            continue;
        }
        const Along eta = along(own[s].x);
        for (std::size_t i = 0; i < ln.size(); ++i) {
            const double at = eta.at(nodes_[i]);
            ln[i] += at * (nu - 0.5 * tau * at);
        }
    }
    for (std::size_t i = 0; i < ln.size(); ++i) {
        ln_weight_[i] -= std::fmax(0.0, ln[i]) + std::log1p(std::exp(-std::abs(ln[i])));
    }
    level();
}

Mixture VerdictGrid::mixture(const Vector& x, const StockEvidence* own) const {
    const Along eta = along(x);
    const StockEvidence none{};
    const StockEvidence& stock = own != nullptr ? *own : none;
    const double k = 1.0 - stock.tau * eta.variance;
    const double open = eta.variance / k;
    const double prior = open + stock_sd_ * stock_sd_;
    std::vector<double> ln = ln_weight_;
    if (stock.shaped) {
        const std::vector<double> said = correction(stock);
        for (std::size_t i = 0; i < ln.size(); ++i) {
            ln[i] -= said[i];
        }
    }
    Mixture out;
    out.variance = prior / (1.0 + prior * stock.reading_tau);
    std::vector<double> means;
    for (std::size_t i = 0; i < ln.size(); ++i) {
        const double m = (eta.at(nodes_[i]) - stock.nu * eta.variance) / k;
        ln[i] += ln_normal(m, prior, stock.reading_tau, stock.reading_nu) - ln_normal(m, open, stock.tau, stock.nu);
        means.push_back(out.variance * (m / prior + stock.reading_nu));
    }
    const double most = *std::max_element(ln.begin(), ln.end());
    out.low = std::numeric_limits<double>::infinity();
    out.high = -out.low;
    for (std::size_t i = 0; i < ln.size(); ++i) {
        if (ln[i] - most < too_little) {
            continue;
        }
        out.means.push_back(means[i]);
        out.weights.push_back(std::exp(ln[i] - most));
        out.low = std::min(out.low, means[i]);
        out.high = std::max(out.high, means[i]);
    }
    return out;
}

} // namespace torchside::tune
