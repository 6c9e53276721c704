#include "core/tune/product.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/tune/series.hpp"

namespace torchside::tune {
namespace {

struct Span {
    double low;
    double high;
};

// Where in f the verdict on a setting changes.
Span edges(const Observation& row, const Judge& judge) {
    return {row.y - judge.upper_edge(), row.y - judge.lower_edge()};
}

void multiply(Product& table, const Observation& row, const Judge& judge) {
    const Span e = edges(row, judge);
    const auto node = [&](double f) {
        const double i = std::ceil((f - table.low) / table.step);
        return static_cast<std::size_t>(std::clamp(i, 0.0, static_cast<double>(table.value.size())));
    };
    const auto flat = [&](std::size_t from, std::size_t to, double f) {
        const double r = judge.reads(row.verdict, row.y - f);
        for (std::size_t i = from; i < to; ++i)
            table.value[i] *= r;
    };
    const std::size_t first = node(e.low - judge.reach());
    const std::size_t last = node(e.high + judge.reach());
    flat(0, first, e.low - 2.0 * judge.reach());
    for (std::size_t i = first; i < last; ++i)
        table.value[i] *= judge.reads(row.verdict, row.y - (table.low + static_cast<double>(i) * table.step));
    flat(last, table.value.size(), e.high + 2.0 * judge.reach());
}

void scale(Product& table) {
    const double largest = *std::max_element(table.value.begin(), table.value.end());
    for (double& value : table.value)
        value /= largest;
    table.ln_scale += std::log(largest);
}

// exp(-(f - m)^2 / 2 v) from node to node by multiplying: from the middle outwards, so that rounding grows only where
// nothing is left to sum. Scaled to 1 at the node that is handed back.
template <class Visit>
double along(const ProductView& t, double m, double v, Visit visit) {
    const double last = static_cast<double>(t.value.size() - 1);
    const double reach = 7.5 * std::sqrt(v); // e^-28 of the top: below the 12th digit
    const double start = std::clamp(std::floor((m - t.low) / t.step + 0.5), 0.0, last);
    const double f0 = t.low + start * t.step;
    const double q = std::exp(-t.step * t.step / v);
    const auto first = static_cast<std::size_t>(start);
    // A middle beyond the table: only the ratios to the nearest node matter.
    double g = 1.0;
    double ratio = std::exp(-(t.step * (f0 - m) + 0.5 * t.step * t.step) / v);
    const double stop_high = std::fmax(m, f0) + reach;
    for (std::size_t i = first; i < t.value.size(); ++i) {
        const double f = t.low + static_cast<double>(i) * t.step;
        if (f > stop_high)
            break;
        visit(i, f, g);
        g *= ratio;
        ratio *= q;
    }
    g = 1.0;
    ratio = std::exp((t.step * (f0 - m) - 0.5 * t.step * t.step) / v);
    const double stop_low = std::fmin(m, f0) - reach;
    for (std::size_t i = first; i-- > 0;) {
        const double f = t.low + static_cast<double>(i) * t.step;
        if (f < stop_low)
            break;
        g *= ratio;
        ratio *= q;
        visit(i, f, g);
    }
    return f0;
}

} // namespace

Range range_of(std::span<const Observation> rows, double prior_mean, double prior_sd, const Window& window) {
    const Judge judge(window);
    Range range{prior_mean - 6.5 * prior_sd, prior_mean + 6.5 * prior_sd};
    for (const Observation& row : rows) {
        const Span e = row.judged() ? edges(row, judge) : Span{row.y, row.y};
        range.low = std::fmin(range.low, e.low - 0.3);
        range.high = std::fmax(range.high, e.high + 0.3);
    }
    return range;
}

Product verdict_table(std::span<const Observation> rows, const Range& range, const Window& window, double coarse) {
    const Judge judge(window);
    const double n = static_cast<double>(rows.size());
    Product table;
    table.step = coarse * window.soft / 0.01 * std::clamp(0.025 / std::sqrt(n), 0.004, 0.0125);
    table.low = range.low;
    table.value.assign(static_cast<std::size_t>((range.high - range.low) / table.step) + 2, 1.0);
    int since = 0;
    for (const Observation& row : rows) {
        if (!row.judged())
            continue;
        multiply(table, row, judge);
        if (++since == 16) { // before anything can run out of digits
            scale(table);
            since = 0;
        }
    }
    scale(table);
    return table;
}

Moments moments(const ProductView& evidence, double m, double v) {
    if (evidence.value.empty())
        return {m, v, 0.0};
    double sum = 0.0;
    double first = 0.0;
    double second = 0.0;
    const double top = along(evidence, m, v, [&](std::size_t i, double f, double g) {
        const double weight = g * evidence.value[i];
        sum += weight;
        first += weight * (f - m);
        second += weight * (f - m) * (f - m);
    });
    if (!(sum > 0.0))
        return {m, v, -1e300};
    const double shift = first / sum;
    const double ln_integral =
        std::log(sum * evidence.step / std::sqrt(2.0 * std::numbers::pi * v)) - (top - m) * (top - m) / (2.0 * v);
    return {m + shift, std::fmax(second / sum - shift * shift, 1e-12), ln_integral};
}

std::vector<double> product(const ProductView& evidence, double m, double v) {
    std::vector<double> mass(evidence.value.size(), 0.0);
    double sum = 0.0;
    along(evidence, m, v, [&](std::size_t i, double, double g) { sum += mass[i] = g * evidence.value[i]; });
    if (sum > 0.0)
        for (double& p : mass)
            p /= sum;
    return mass;
}

} // namespace torchside::tune
