#include "core/tune/response_fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

#include "core/tune/product.hpp"

namespace torchside::tune {
namespace {

constexpr double spread_step = 0.25; // of the sd that a node leaves open
constexpr double spread_reach = 6.0; // sd

// Every value spread to its neighbours by a normal distribution of that variance, in squares of the step.
std::vector<double> smoothed(const std::vector<double>& values, double variance) {
    const auto n = static_cast<std::ptrdiff_t>(values.size());
    const auto reach = static_cast<std::ptrdiff_t>(spread_reach * std::sqrt(variance));
    std::vector<double> kernel;
    for (std::ptrdiff_t k = 0; k <= reach; ++k) {
        kernel.push_back(std::exp(-0.5 * static_cast<double>(k * k) / variance));
    }
    std::vector<double> result(values.size(), 0.0);
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        const double value = values[static_cast<std::size_t>(i)];
        if (value == 0.0) {
            continue;
        }
        for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
            result[static_cast<std::size_t>(j)] += value * kernel[static_cast<std::size_t>(std::abs(i - j))];
        }
    }
    return result;
}

struct Span {
    double low, high;
};

// Where a belief's mass lies.
Span span_of(const Distribution& b) {
    if (b.mass.empty()) {
        return {b.mean - spread_reach * b.sd, b.mean + spread_reach * b.sd};
    }
    return {b.low, b.low + b.step * static_cast<double>(b.mass.size() - 1)};
}

// Clamped to the table's end values.
double at_node(const std::vector<double>& table, std::ptrdiff_t i) {
    return table[static_cast<std::size_t>(
        std::clamp<std::ptrdiff_t>(i, 0, static_cast<std::ptrdiff_t>(table.size()) - 1))];
}

// Masses to 1, with their mean and sd; ends without mass cut off.
void finish(Distribution& b) {
    double sum = 0.0, first = 0.0, second = 0.0;
    for (std::size_t i = 0; i < b.mass.size(); ++i) {
        const auto f = static_cast<double>(i);
        sum += b.mass[i];
        first += b.mass[i] * f;
        second += b.mass[i] * f * f;
    }
    for (double& mass : b.mass) {
        mass /= sum;
    }
    const double middle = first / sum;
    b.mean = b.low + middle * b.step;
    b.sd = b.step * std::sqrt(std::fmax(0.0, second / sum - middle * middle));
    b.cut_ends();
}

} // namespace

const StockEvidence* ShopKind::find(const Vector& x, std::int64_t tag) const {
    const auto at =
        std::lower_bound(stocks.begin(), stocks.end(), std::tie(x, tag),
                         [](const StockEvidence& s, const auto& key) { return std::tie(s.x, s.tag) < key; });
    return at != stocks.end() && at->x == x && at->tag == tag ? &*at : nullptr;
}

Distribution ShopKind::distribution(const Vector& x, std::int64_t tag, double used) const {
    const StockEvidence* own = stocks.empty() ? nullptr : find(x, tag);
    Distribution b;
    if (own != nullptr || !grid.empty()) {
        b = judged(x, own);
    } else {
        b.mean = coefficients.at(x);
        b.sd = std::sqrt(coefficients.variance(x) + stock_sd * stock_sd);
    }
    b.move(drift * used);
    return b;
}

// f as every verdict and reading has it: a mixture over the nodes of verdict_grid.hpp, its means gathered on an even grid, each spread
// by what a node leaves open.
Distribution ShopKind::judged(const Vector& x, const StockEvidence* own) const {
    if (own != nullptr && grid.empty()) {
        return distribution_of(*own, coefficients, stock_sd);
    }
    Distribution b;
    const bool shaped = own != nullptr && !own->verdicts.empty();
    const Mixture spread = grid.mixture(x, own);
    const double step = shaped ? own->step : spread_step * std::sqrt(spread.variance);
    const double edge = spread_reach * std::sqrt(spread.variance);
    b.step = step;
    const double from = shaped ? own->low : spread.low;
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
    if (shaped) {
        for (std::size_t i = 0; i < b.mass.size(); ++i) {
            b.mass[i] *=
                at_node(own->verdicts, std::lround((b.low - own->low) / step) + static_cast<std::ptrdiff_t>(i));
        }
    }
    finish(b);
    return b;
}

std::vector<Belief> ResponseFit::beliefs(const Vector& x, std::int64_t tag, double used) const {
    std::vector<Belief> all;
    for (const ShopKind& kind : kinds_) {
        all.push_back({kind.weight, kind.window, kind.distribution(x, tag, used)});
    }
    return all;
}

namespace {

// On one even grid.
Distribution together(const std::vector<Belief>& all) {
    Distribution b;
    double high = -std::numeric_limits<double>::infinity();
    b.low = -high;
    b.step = b.low;
    for (const Belief& each : all) {
        const Span span = span_of(each.f);
        b.low = std::min(b.low, span.low);
        high = std::max(high, span.high);
        b.step = std::min(b.step, each.f.mass.empty() ? each.f.sd * spread_step : each.f.step);
    }
    b.mass.assign(static_cast<std::size_t>((high - b.low) / b.step) + 2, 0.0);
    for (const Belief& each : all) {
        std::vector<double> mass(b.mass.size());
        double sum = 0.0;
        for (std::size_t i = 0; i < mass.size(); ++i) {
            sum += mass[i] = each.f.density(b.low + static_cast<double>(i) * b.step);
        }
        for (std::size_t i = 0; i < mass.size(); ++i) {
            b.mass[i] += each.weight / sum * mass[i];
        }
    }
    finish(b);
    return b;
}

} // namespace

// Of one kind as it is; of several put together.
Distribution ResponseFit::distribution(const Vector& x, std::int64_t tag, double used) const {
    if (kinds_.empty()) {
        return {};
    }
    if (kinds_.size() == 1) {
        return kinds_.front().distribution(x, tag, used);
    }
    return together(beliefs(x, tag, used));
}

Distribution distribution_of(const StockEvidence& stock, const Gaussian& coefficients, double stock_sd) {
    Distribution b;
    b.mean = stock.mean;
    b.sd = std::sqrt(stock.variance);
    if (stock.verdicts.empty()) {
        return b;
    }
    const Moments prior = prior_of(stock, cavity_of(stock, coefficients.along(stock.x)), stock_sd);
    Product all = product(stock.table(), prior.mean, prior.variance);
    b.mass = std::move(all.value);
    b.low = all.low;
    b.step = stock.step;
    b.cut_ends();
    return b;
}

} // namespace torchside::tune
