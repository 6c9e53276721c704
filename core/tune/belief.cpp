// What a fit says of one stock and of one row.
#include <algorithm>
#include <tuple>
#include <utility>

#include "core/quantity/estimate.hpp"
#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"
#include "core/tune/quantile.hpp"
#include "core/tune/series.hpp"

namespace torchside::tune {
namespace {

constexpr double spread_step = 0.25; // of the sd that a node leaves open
constexpr double spread_reach = 6.0; // sd

// Every value spread to its neighbours by a normal distribution of that variance, in squares of the step.
std::vector<double> smoothed(const std::vector<double>& values, double variance) {
    const auto n = static_cast<std::ptrdiff_t>(values.size());
    const auto reach = static_cast<std::ptrdiff_t>(spread_reach * std::sqrt(variance));
    std::vector<double> kernel;
    for (std::ptrdiff_t k = 0; k <= reach; ++k)
        kernel.push_back(std::exp(-0.5 * static_cast<double>(k * k) / variance));
    std::vector<double> result(values.size(), 0.0);
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        const double value = values[static_cast<std::size_t>(i)];
        if (value == 0.0)
            continue;
        for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(0, i - reach); j <= std::min(n - 1, i + reach); ++j)
            result[static_cast<std::size_t>(j)] += value * kernel[static_cast<std::size_t>(std::abs(i - j))];
    }
    return result;
}

// Beyond its ends a table of evidence says what it says there.
double at_node(const std::vector<double>& table, std::ptrdiff_t i) {
    return table[static_cast<std::size_t>(
        std::clamp<std::ptrdiff_t>(i, 0, static_cast<std::ptrdiff_t>(table.size()) - 1))];
}

// Masses to 1, with their mean and sd; ends without mass cut off.
void finish(Belief& b) {
    double sum = 0.0, first = 0.0, second = 0.0;
    for (std::size_t i = 0; i < b.mass.size(); ++i) {
        const auto f = static_cast<double>(i);
        sum += b.mass[i];
        first += b.mass[i] * f;
        second += b.mass[i] * f * f;
    }
    for (double& mass : b.mass)
        mass /= sum;
    const double middle = first / sum;
    b.mean = b.low + middle * b.step;
    b.sd = b.step * std::sqrt(std::fmax(0.0, second / sum - middle * middle));
    b.cut_ends();
}

} // namespace

void Belief::cut_ends() {
    std::size_t first = 0;
    std::size_t last = mass.size();
    while (first + 1 < last && mass[first] < 1e-14)
        ++first;
    while (last > first + 1 && mass[last - 1] < 1e-14)
        --last;
    mass.erase(mass.begin() + static_cast<std::ptrdiff_t>(last), mass.end());
    mass.erase(mass.begin(), mass.begin() + static_cast<std::ptrdiff_t>(first));
    low += static_cast<double>(first) * step;
}

double Belief::quantile(double p) const {
    if (mass.empty())
        return mean + sd * normal_quantile(p);
    double below = 0.0;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        if (below + mass[i] >= p) // within a node's cell the mass lies evenly
            return low + step * (static_cast<double>(i) - 0.5 + (p - below) / mass[i]);
        below += mass[i];
    }
    return low + step * static_cast<double>(mass.size() - 1);
}

const Series::Stock* Series::find(const Vector& x, std::int64_t tag) const {
    const auto at = std::lower_bound(stocks_.begin(), stocks_.end(), std::tie(x, tag),
                                     [](const Stock& s, const auto& key) { return std::tie(s.x, s.tag) < key; });
    return at != stocks_.end() && at->x == x && at->tag == tag ? &*at : nullptr;
}

Series::Cavity Series::cavity(const Vector& x, std::int64_t tag) const {
    if (const Stock* stock = find(x, tag))
        return cavity_of(*stock);
    return {coefficients_.at(x), coefficients_.variance(x)};
}

// f as every verdict and reading has it: a mixture over the nodes of joint.hpp, its means gathered on an even grid, each spread
// by what a node leaves open.
Belief Series::belief(const Vector& x, std::int64_t tag) const {
    const Stock* own = find(x, tag);
    if (joint_.nodes.empty()) {
        if (own != nullptr)
            return belief_of(*own);
        return {coefficients_.at(x),
                std::sqrt(coefficients_.variance(x) + model_.stock_sd * model_.stock_sd),
                0.0,
                0.0,
                {}};
    }
    const bool judged = own != nullptr && !own->evidence.empty();
    const Spread spread = spread_of(x, own);
    const double step = judged ? own->step : spread_step * std::sqrt(spread.variance);
    const double edge = spread_reach * std::sqrt(spread.variance);
    Belief b;
    b.step = step;
    const double from = judged ? own->low : spread.low;
    b.low = from + std::floor((spread.low - edge - from) / step) * step;
    std::vector<double> gathered(static_cast<std::size_t>((spread.high + edge - b.low) / step) + 2, 0.0);
    for (std::size_t i = 0; i < spread.means.size(); ++i) {
        const double place = (spread.means[i] - b.low) / step;
        const auto below = static_cast<std::size_t>(place);
        const double share = place - static_cast<double>(below);
        gathered[below] += spread.weights[i] * (1.0 - share);
        gathered[below + 1] += spread.weights[i] * share;
    }
    b.mass =
        smoothed(gathered, spread.variance / (step * step) - 1.0 / 6.0); // gathering has spread each mean by step^2 / 6
    if (judged)
        for (std::size_t i = 0; i < b.mass.size(); ++i)
            b.mass[i] *=
                at_node(own->evidence, std::lround((b.low - own->low) / step) + static_cast<std::ptrdiff_t>(i));
    finish(b);
    return b;
}

Belief Series::belief_of(const Stock& stock) const {
    Belief b;
    b.mean = stock.mean;
    b.sd = std::sqrt(stock.variance);
    if (stock.evidence.empty())
        return b;
    const Moments prior = prior_of(stock, cavity_of(stock));
    Product all = product({stock.low, stock.step, stock.evidence}, prior.mean, prior.variance);
    b.mass = std::move(all.value);
    b.low = all.low;
    b.step = stock.step;
    b.cut_ends();
    return b;
}

// A verdict against what all other rows say: they are had by dividing its own likelihood out again.
Finding Series::appraise(const Observation& row, const Belief& belief) const {
    const Judge judge(model_.window);
    // Away from its edges the verdict says the same everywhere: there the masses are summed before they are divided.
    double flat[2] = {0.0, 0.0};
    double without = 0.0;
    double expected = 0.0;
    for (std::size_t i = 0; i < belief.mass.size(); ++i) {
        const double p = judge.happens(row.verdict, row.y - (belief.low + static_cast<double>(i) * belief.step));
        if (p == 0.0 || p == 1.0) {
            flat[p == 1.0] += belief.mass[i];
            continue;
        }
        const double rest = belief.mass[i] / judge.read_as(p);
        without += rest;
        expected += p * rest;
    }
    if (flat[0] > 0.0)
        without += flat[0] / judge.read_as(0.0);
    without += flat[1] / judge.read_as(1.0);
    expected += flat[1] / judge.read_as(1.0);
    const double chance = std::clamp(expected / without, 1e-300, 1.0);
    Finding f;
    f.row = row.row;
    f.weight = (1.0 - model_.window.misread) * expected;
    f.flagged = chance < normal_cdf(-model_.outlier_sd);
    f.sd_off = chance < 0.05 ? -normal_quantile(chance) : 0.0;
    return f;
}

void Series::report(const std::vector<double>& weights) {
    const std::vector<double> z = distances(weights);
    findings_.clear();
    for (const Stock& stock : stocks_) {
        const Belief belief = stock.evidence.empty() ? Belief{} : belief_of(stock);
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            const Observation& row = rows_[i];
            if (row.judged())
                findings_.push_back(appraise(row, belief));
            else
                findings_.push_back({row.row, weights[i], std::abs(z[i]), std::abs(z[i]) > model_.outlier_sd});
        }
    }
    sort_rows(findings_, [](const Finding& a, const Finding& b) { return a.row < b.row; });
}

} // namespace torchside::tune
