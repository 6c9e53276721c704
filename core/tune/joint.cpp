#include "core/tune/joint.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"
#include "core/tune/series.hpp"

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

// ln of the integral of N(eta; m, v) exp(nu eta - tau eta^2 / 2).
double ln_normal(double m, double v, double tau, double nu) {
    const double k = 1.0 + tau * v;
    return -0.5 * std::log(k) + 0.5 * (nu * nu * v + 2.0 * nu * m - tau * m * m) / k;
}

// Between four evenly spaced values, a share of the way from the second to the third (Catmull and Rom 1974).
double between(const double* y, double t) {
    return y[1] + 0.5 * t *
                      (y[2] - y[0] +
                       t * (2.0 * y[0] - 5.0 * y[1] + 4.0 * y[2] - y[3] + t * (3.0 * (y[1] - y[2]) + y[3] - y[0])));
}

// One node of an axis: close together in the middle, ever further apart outside, where a misread verdict leaves a thin tail.
double place(const Axis& axis, int i) {
    return axis.apart / stretch * std::sinh(stretch * i);
}

double ln_width(int i) {
    return std::log(std::cosh(stretch * i));
}

// All nodes that are at most `outermost` from the middle, counted in nodes, in a fixed order; ln weights of the sum over them
// with N(z) in.
void lay_grid(Joint& joint) {
    const Axis& axis = axes[joint.directions];
    const int end = axis.outermost;
    const int ends[Joint::most_directions] = {end, joint.directions > 1 ? end : 0, joint.directions > 2 ? end : 0};
    for (int i = -ends[0]; i <= ends[0]; ++i)
        for (int j = -ends[1]; j <= ends[1]; ++j)
            for (int k = -ends[2]; k <= ends[2]; ++k) {
                if (i * i + j * j + k * k > end * end)
                    continue;
                const Joint::Place z{place(axis, i), place(axis, j), place(axis, k)};
                joint.nodes.push_back(z);
                joint.ln_weight.push_back(ln_width(i) + ln_width(j) + ln_width(k) -
                                          0.5 * (z[0] * z[0] + z[1] * z[1] + z[2] * z[2]));
            }
}

} // namespace

Joint::Along Joint::along(const Gaussian& fit, const Vector& x) const {
    Along a{fit.at(x), {}, fit.variance(x)};
    for (std::size_t k = 0; k < directions; ++k) {
        for (std::size_t i = 0; i < fit.n; ++i)
            a.slope[k] += x[i] * gain[k][i];
        a.variance -= a.slope[k] * a.slope[k];
    }
    a.variance = std::fmax(0.0, a.variance);
    return a;
}

// ln of what the stock's verdicts and readings say at every node, over what its message says there.
std::vector<double> Series::correction(const Stock& stock) const {
    const Joint::Along eta = joint_.along(coefficients_, stock.x);
    const double k = 1.0 - stock.tau * eta.variance; // takes the message out of what is left open
    const double open = eta.variance / k;
    const double prior = open + model_.stock_sd * model_.stock_sd;
    const double v = prior / (1.0 + prior * stock.reading_tau);
    const auto without = [&](double m) { return (m - stock.nu * eta.variance) / k; };
    double spread = 0.0;
    for (const double slope : eta.slope)
        spread += slope * slope;
    const Axis& axis = axes[joint_.directions];
    const double furthest = place(axis, axis.outermost) * std::sqrt(spread);
    const double low = without(eta.mean - furthest);
    const double high = without(eta.mean + furthest);
    const double step = table_step * std::sqrt(prior);
    std::vector<double> table(static_cast<std::size_t>((high - low) / step) + 5);
    for (std::size_t i = 0; i < table.size(); ++i) {
        const double m = low + (static_cast<double>(i) - 1.0) * step;
        const double middle = v * (m / prior + stock.reading_nu);
        table[i] = ln_normal(m, prior, stock.reading_tau, stock.reading_nu) - ln_normal(m, open, stock.tau, stock.nu) +
                   moments({stock.low, stock.step, stock.evidence}, middle, v).ln_integral;
    }
    std::vector<double> ln(joint_.nodes.size());
    for (std::size_t i = 0; i < ln.size(); ++i) {
        const double place =
            std::clamp((without(eta.at(joint_.nodes[i])) - low) / step, 0.0, static_cast<double>(table.size() - 4));
        const double below = std::floor(place);
        ln[i] = between(&table[static_cast<std::size_t>(below)], place - below);
    }
    return ln;
}

// The directions in which the judged stocks depend on the coefficients, the one with most to say first.
void Series::find_directions() {
    const double s2 = model_.stock_sd * model_.stock_sd;
    while (joint_.directions < Joint::most_directions) {
        const Stock* next = nullptr;
        double most = told_apart * s2;
        for (const Stock& stock : stocks_) {
            if (!stock.shaped)
                continue;
            const double open = joint_.along(coefficients_, stock.x).variance;
            if (open > most) {
                most = open;
                next = &stock;
            }
        }
        if (next == nullptr)
            return;
        const Joint::Along eta = joint_.along(coefficients_, next->x);
        Vector gain = coefficients_.gain(next->x);
        for (std::size_t i = 0; i < coefficients_.n; ++i) {
            for (std::size_t k = 0; k < joint_.directions; ++k)
                gain[i] -= eta.slope[k] * joint_.gain[k][i];
            gain[i] /= std::sqrt(eta.variance);
        }
        joint_.gain[joint_.directions++] = gain;
    }
}

// Which stocks' verdicts keep their shape.
void Series::choose_shaped() {
    std::vector<Stock*> judged;
    for (Stock& stock : stocks_)
        if (!stock.evidence.empty())
            judged.push_back(&stock);
    sort_rows(judged, [](const Stock* a, const Stock* b) { return a->variance > b->variance; });
    for (std::size_t i = 0; i < judged.size(); ++i)
        judged[i]->shaped = i < most_shaped;
}

void Series::shape() {
    joint_ = {};
    choose_shaped();
    find_directions();
    if (joint_.directions == 0)
        return;
    lay_grid(joint_);
    for (const Stock& stock : stocks_) {
        if (!stock.shaped)
            continue;
        const std::vector<double> ln = correction(stock);
        for (std::size_t i = 0; i < ln.size(); ++i)
            joint_.ln_weight[i] += ln[i];
    }
    const double most = *std::max_element(joint_.ln_weight.begin(), joint_.ln_weight.end());
    for (double& ln : joint_.ln_weight)
        ln -= most;
}

Series::Spread Series::spread_of(const Vector& x, const Stock* own) const {
    const Joint::Along eta = joint_.along(coefficients_, x);
    const Stock none{};
    const Stock& stock = own != nullptr ? *own : none;
    const double k = 1.0 - stock.tau * eta.variance;
    const double open = eta.variance / k;
    const double prior = open + model_.stock_sd * model_.stock_sd;
    std::vector<double> ln = joint_.ln_weight;
    if (stock.shaped) {
        const std::vector<double> said = correction(stock);
        for (std::size_t i = 0; i < ln.size(); ++i)
            ln[i] -= said[i];
    }
    Spread spread;
    spread.variance = prior / (1.0 + prior * stock.reading_tau);
    std::vector<double> means;
    for (std::size_t i = 0; i < ln.size(); ++i) {
        const double m = (eta.at(joint_.nodes[i]) - stock.nu * eta.variance) / k;
        ln[i] += ln_normal(m, prior, stock.reading_tau, stock.reading_nu) - ln_normal(m, open, stock.tau, stock.nu);
        means.push_back(spread.variance * (m / prior + stock.reading_nu));
    }
    const double most = *std::max_element(ln.begin(), ln.end());
    spread.low = std::numeric_limits<double>::infinity();
    spread.high = -spread.low;
    for (std::size_t i = 0; i < ln.size(); ++i) {
        if (ln[i] - most < too_little)
            continue;
        spread.means.push_back(means[i]);
        spread.weights.push_back(std::exp(ln[i] - most));
        spread.low = std::min(spread.low, means[i]);
        spread.high = std::max(spread.high, means[i]);
    }
    return spread;
}

} // namespace torchside::tune
