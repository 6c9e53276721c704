#include "core/tune/product.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/tune/observation.hpp"

namespace torchside::tune {
namespace {

struct Span {
    double low;
    double high;
};

// Where in f what the verdict says changes.
Span edges(const Observation& row, const Judge& judge) {
    const Span e{row.y - judge.upper_edge(), row.y - judge.lower_edge()};
    return {row.verdict == Judgement::low ? e.high : e.low, row.verdict == Judgement::high ? e.low : e.high};
}

// A verdict says one thing below its edges and one above them: these factors are gathered at the edges' nodes and
// multiplied in together.
struct Flat {
    std::vector<double> below, above; // of the nodes before, and from, this one on
};

void multiply(Product& table, Flat& flat, const Observation& row, const Judge& judge) {
    const Span e = edges(row, judge);
    const auto node = [&](double f) { return static_cast<std::size_t>(std::ceil((f - table.low) / table.step)); };
    const auto reads = [&](double f) { return judge.reads(row.verdict, row.y - f); };
    const std::size_t first = node(e.low - judge.reach());
    const std::size_t last = node(e.high + judge.reach());
    flat.below[first] *= reads(e.low - 2.0 * judge.reach());
    flat.above[last] *= reads(e.high + 2.0 * judge.reach());
    for (std::size_t i = first; i < last; ++i) {
        table.value[i] *= reads(table.low + static_cast<double>(i) * table.step);
    }
}

void scale(Product& table, Flat& flat) {
    const std::size_t n = table.value.size();
    double all = 1.0;
    for (std::size_t i = n; i-- > 0;) {
        table.value[i] *= all *= std::exchange(flat.below[i + 1], 1.0);
    }
    all = 1.0;
    double largest = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        largest = std::max(largest, table.value[i] *= all *= std::exchange(flat.above[i], 1.0));
    }
    for (double& value : table.value) {
        value /= largest;
    }
    table.ln_scale += std::log(largest);
}

// Nodes of the table's grid, which goes on beyond its ends; both are counted in.
struct Nodes {
    std::ptrdiff_t low;
    std::ptrdiff_t high;
};

// Within 7.5 sd of m: what lies beyond is below the 12th digit.
Nodes nodes_near(const ProductView& t, double m, double v) {
    const auto middle = static_cast<std::ptrdiff_t>(std::floor((m - t.low) / t.step + 0.5));
    const auto reach = static_cast<std::ptrdiff_t>(7.5 * std::sqrt(v) / t.step);
    return {middle - reach, middle + reach};
}

// exp(-d^2 / 2 v), d = f - m, from node to node by multiplying: from the middle outwards, so that rounding grows only
// where nothing is left to sum. Up and down take turns and are summed apart: a processor works on both at once.
template <class Up, class Down>
void along(const ProductView& t, double m, double v, const Nodes& nodes, Up up, Down down) {
    const std::ptrdiff_t middle = nodes_near(t, m, 0.0).low;
    const std::ptrdiff_t start = std::clamp(middle, nodes.low, nodes.high);
    const double off = t.low + static_cast<double>(start) * t.step - m;
    const double q = std::exp(-t.step * t.step / v);
    double g_up = std::exp(-off * off / (2.0 * v));
    double g_down = g_up;
    double r_up = std::exp(-(t.step * off + 0.5 * t.step * t.step) / v);
    double r_down = std::exp((t.step * off - 0.5 * t.step * t.step) / v);
    const std::ptrdiff_t ups = nodes.high - start;
    const std::ptrdiff_t downs = start - nodes.low;
    up(start, off, g_up);
    for (std::ptrdiff_t k = 1; k <= ups || k <= downs; ++k) {
        const double d = static_cast<double>(k) * t.step;
        if (k <= ups) {
            g_up *= r_up;
            r_up *= q;
            up(start + k, off + d, g_up);
        }
        if (k <= downs) {
            g_down *= r_down;
            r_down *= q;
            down(start - k, off - d, g_down);
        }
    }
}

// The table at a node, clamped to its end values.
double at(const ProductView& t, std::ptrdiff_t i) {
    const auto last = static_cast<std::ptrdiff_t>(t.value.size()) - 1;
    return t.value[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(i, 0, last))];
}

struct Sums {
    double zeroth = 0.0, first = 0.0, second = 0.0;

    void add(double weight, double d) {
        zeroth += weight;
        weight *= d;
        first += weight;
        second += weight * d;
    }
};

} // namespace

Product verdict_table(std::span<const Observation> rows, const Window& window) {
    const Judge judge(window);
    const double n = static_cast<double>(rows.size());
    Product table;
    table.step = window.soft / 0.01 * std::clamp(0.025 / std::sqrt(n), 0.004, 0.0125);
    Span all{1e300, -1e300};
    for (const Observation& row : rows) {
        if (!row.judged()) {
            continue;
        }
        const Span e = edges(row, judge);
        all = {std::min(all.low, e.low), std::max(all.high, e.high)};
    }
    table.low = all.low - judge.reach();
    table.value.assign(static_cast<std::size_t>((all.high + judge.reach() - table.low) / table.step) + 3, 1.0);
    Flat flat;
    flat.below.assign(table.value.size() + 1, 1.0);
    flat.above = flat.below;
    int since = 0;
    for (const Observation& row : rows) {
        if (!row.judged()) {
            continue;
        }
        multiply(table, flat, row, judge);
        if (++since == 16) { // before anything can run out of digits
            scale(table, flat);
            since = 0;
        }
    }
    scale(table, flat);
    return table;
}

Moments moments(const ProductView& evidence, double m, double v) {
    if (evidence.value.empty()) {
        return {m, v, 0.0};
    }
    // What the table says at the end where it says less, it says at least everywhere: its moments are known.
    const double least = std::min(evidence.value.front(), evidence.value.back());
    Nodes nodes = nodes_near(evidence, m, v);
    if (evidence.value.front() == least) {
        nodes.low = std::max<std::ptrdiff_t>(nodes.low, 0);
    }
    if (evidence.value.back() == least) {
        nodes.high = std::min(nodes.high, static_cast<std::ptrdiff_t>(evidence.value.size()) - 1);
    }
    Sums up;
    Sums down;
    if (nodes.low <= nodes.high) {
        along(
            evidence, m, v, nodes,
            [&](std::ptrdiff_t i, double d, double g) { up.add(g * (at(evidence, i) - least), d); },
            [&](std::ptrdiff_t i, double d, double g) { down.add(g * (at(evidence, i) - least), d); });
    }
    const double per_node = evidence.step / std::sqrt(2.0 * std::numbers::pi * v);
    const double sum = least + (up.zeroth + down.zeroth) * per_node;
    if (!(sum > 0.0)) {
        return {m, v, -1e300};
    }
    const double shift = (up.first + down.first) * per_node / sum;
    const double square = (least * v + (up.second + down.second) * per_node) / sum;
    return {m + shift, std::fmax(square - shift * shift, 1e-12), std::log(sum)};
}

Product product(const ProductView& evidence, double m, double v) {
    const Nodes nodes = nodes_near(evidence, m, v);
    Product p;
    p.step = evidence.step;
    p.low = evidence.low + static_cast<double>(nodes.low) * p.step;
    p.value.resize(static_cast<std::size_t>(nodes.high - nodes.low) + 1);
    double sum = 0.0;
    const auto visit = [&](std::ptrdiff_t i, double, double g) {
        sum += p.value[static_cast<std::size_t>(i - nodes.low)] = g * at(evidence, i);
    };
    along(evidence, m, v, nodes, visit, visit);
    if (sum > 0.0) {
        for (double& mass : p.value) {
            mass /= sum;
        }
    }
    return p;
}

} // namespace torchside::tune
