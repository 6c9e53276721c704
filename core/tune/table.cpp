#include "core/tune/table.hpp"

#include <algorithm>
#include <cmath>

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

void multiply(Table& table, const Observation& row, const Judge& judge) {
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

void scale(Table& table) {
    const double largest = *std::max_element(table.value.begin(), table.value.end());
    for (double& value : table.value)
        value /= largest;
}

// exp(-(f - m)^2 / 2 v) from node to node by multiplying: from the middle outwards, so that rounding grows only where
// nothing is left to sum.
template <class Visit>
void along(const TableView& t, double m, double v, Visit visit) {
    const double last = static_cast<double>(t.value.size() - 1);
    const double reach = 9.0 * std::sqrt(v);
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
}

} // namespace

Table verdict_table(std::span<const Observation> rows, double prior_mean, double prior_sd, const Window& window) {
    const Judge judge(window);
    double low = prior_mean - 6.5 * prior_sd;
    double high = prior_mean + 6.5 * prior_sd;
    for (const Observation& row : rows) {
        const Span e = row.judged() ? edges(row, judge) : Span{row.y, row.y};
        low = std::fmin(low, e.low - 0.3);
        high = std::fmax(high, e.high + 0.3);
    }
    const double scaled = window.soft / 0.02;
    const double n = static_cast<double>(rows.size());
    Table table;
    table.step = scaled * std::clamp(0.025 / std::sqrt(n), 0.004, 0.0125);
    table.low = low;
    table.value.assign(static_cast<std::size_t>((high - low) / table.step) + 2, 1.0);
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

Moments moments(const TableView& evidence, double m, double v) {
    if (evidence.value.empty())
        return {m, v};
    double sum = 0.0;
    double first = 0.0;
    double second = 0.0;
    along(evidence, m, v, [&](std::size_t i, double f, double g) {
        const double weight = g * evidence.value[i];
        sum += weight;
        first += weight * (f - m);
        second += weight * (f - m) * (f - m);
    });
    if (!(sum > 0.0))
        return {m, v};
    const double shift = first / sum;
    return {m + shift, std::fmax(second / sum - shift * shift, 1e-12)};
}

std::vector<double> product(const TableView& evidence, double m, double v) {
    std::vector<double> mass(evidence.value.size(), 0.0);
    double sum = 0.0;
    along(evidence, m, v, [&](std::size_t i, double, double g) { sum += mass[i] = g * evidence.value[i]; });
    if (sum > 0.0)
        for (double& p : mass)
            p /= sum;
    return mass;
}

} // namespace torchside::tune
