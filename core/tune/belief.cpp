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

Belief Series::belief(const Vector& x, std::int64_t tag) const {
    if (const Stock* stock = find(x, tag))
        return belief_of(*stock);
    Belief b;
    b.mean = coefficients_.at(x);
    b.sd = std::sqrt(coefficients_.variance(x) + model_.stock_sd * model_.stock_sd);
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
    std::size_t first = 0;
    std::size_t last = b.mass.size();
    while (first + 1 < last && b.mass[first] < 1e-14)
        ++first;
    while (last > first + 1 && b.mass[last - 1] < 1e-14)
        --last;
    b.mass.erase(b.mass.begin() + static_cast<std::ptrdiff_t>(last), b.mass.end());
    b.mass.erase(b.mass.begin(), b.mass.begin() + static_cast<std::ptrdiff_t>(first));
    b.low = all.low + static_cast<double>(first) * stock.step;
    b.step = stock.step;
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
