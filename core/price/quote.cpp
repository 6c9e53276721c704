#include "core/price/quote.hpp"

#include <algorithm>
#include <cmath>

#include "core/motion/travel.hpp"
#include "core/price/sentences.hpp"
#include "core/quantity/low_end.hpp"

namespace torchside::price {
namespace {

constexpr std::size_t at(LineKind kind) {
    return static_cast<std::size_t>(kind);
}

using Costs = std::array<double, cost_lines>; // by LineKind

struct RoundedLines {
    std::array<Money, line_count> lines{};
    Money cost{}, total{};
};

double energy_each(const Work& w) {
    return kwh(w.input.value, w.arc.value) + kwh(w.air, w.arc.value + w.air_after);
}

Duration table_time(const Work& w, int quantity) {
    return static_cast<double>(quantity) * (w.arc.value + w.moving) +
           motion::rests(w.arc.value, w.moving, quantity, w.arc_per_10_min);
}

/// Of a whole batch, not rounded.
Costs costs(const Work& w, const Order& o, int quantity) {
    const auto parts = static_cast<double>(quantity);
    Costs c{};
    c[at(LineKind::setup)] = o.price.setup.in(hour)*o.rates.labour_per_h;
    c[at(LineKind::material)] = parts * material_cost(w.mass, o.price);
    c[at(LineKind::machine)] = table_time(w, quantity).in(hour)*o.rates.machine_per_h;
    c[at(LineKind::labour)] = parts * o.price.handling.in(hour)*o.rates.labour_per_h;
    c[at(LineKind::consumables)] = parts * o.set_price * w.sets.value;
    c[at(LineKind::energy)] = parts * energy_each(w) * o.rates.energy_per_kwh;
    return c;
}

RoundedLines rounded(const Costs& c, const Order& o, int places) {
    RoundedLines s;
    for (std::size_t i = 0; i < cost_lines; ++i) {
        s.lines[i] = money(c[i], places);
        s.cost = s.cost + s.lines[i];
    }
    const Money asked = money(amount(s.cost, places) / (1.0 - o.price.margin), places);
    s.total = std::max(asked, money(o.rates.minimum_charge, places));
    s.lines[at(LineKind::minimum)] = s.total - asked;
    s.lines[at(LineKind::margin)] = asked - s.cost;
    return s;
}

/// How far one part's lines may lie off, one column a cause.
struct Off {
    double machine = 0.0, energy = 0.0, wear = 0.0; // by the arc's time: these three go together
    double rates = 0.0;                             // consumables, by the rates of wear
    double volts = 0.0;                             // energy, by the arc's voltage

    [[nodiscard]] double electricity() const { return std::hypot(energy, volts); }
    [[nodiscard]] double all() const { return std::hypot(machine + energy + wear, rates, volts); }
};

Off off(const Work& w, const Order& o, Duration arc, double sets, Power input) {
    const double kw = w.input.value.in(kilowatt) + w.air.in(kilowatt);
    Off d;
    d.machine = arc.in(hour)*o.rates.machine_per_h;
    d.energy = arc.in(hour)*kw * o.rates.energy_per_kwh;
    const double by_time = arc.in(minute)*w.sets_per_min;
    d.wear = by_time * o.set_price;
    d.rates = o.set_price * std::sqrt(std::max(0.0, sets * sets - by_time * by_time));
    d.volts = kwh(input, w.arc.value) * o.rates.energy_per_kwh;
    return d;
}

Estimate<double> banded(double value, double less, double more, const Basis& basis) {
    return {value, low_end(value, less), value + more, basis};
}

void fill_lines(const Work& w, const Order& o, const Costs& c, const RoundedLines& s, Report& out) {
    Basis entered, timed = w.arc.basis;
    entered.entered = timed.entered = true;
    const Off less = off(w, o, w.arc.value - w.arc.low, w.sets.value - w.sets.low, w.input.value - w.input.low);
    const Off more = off(w, o, w.arc.high - w.arc.value, w.sets.high - w.sets.value, w.input.high - w.input.value);
    const auto parts = static_cast<double>(o.quantity);
    double sum = 0.0;
    for (std::size_t i = 0; i < cost_lines; ++i) {
        const double each = c[i] / parts;
        sum += each;
        out.lines[i].each = {each, each, each, entered};
    }
    const auto set = [&](LineKind kind, double below, double above, const Basis& basis) {
        Estimate<double>& e = out.lines[at(kind)].each;
        e = banded(e.value, below, above, basis);
    };
    set(LineKind::machine, less.machine, more.machine, timed);
    Estimate<double>& wear = out.lines[at(LineKind::consumables)].each;
    wear = {wear.value, o.set_price * w.sets.low, o.set_price * w.sets.high, w.sets.basis | entered};
    set(LineKind::energy, less.electricity(), more.electricity(), w.input.basis | timed);
    out.cost_each = banded(sum, less.all(), more.all(), w.sets.basis | w.input.basis | timed);
    for (std::size_t i = 0; i < line_count; ++i) {
        out.lines[i].total = s.lines[i];
        if (i >= cost_lines) {
            const double each = amount(s.lines[i], out.decimals) / parts;
            out.lines[i].each = {each, each, each, entered};
        }
    }
}

void fill_price(const Order& o, const RoundedLines& s, Report& out) {
    const auto parts = static_cast<double>(o.quantity);
    const int places = out.decimals;
    out.cost = s.cost;
    out.total = s.total;
    out.each = money(amount(s.total, places) / parts, places);
    out.each_rounded = o.quantity * out.each.minor != s.total.minor;
    out.to_pay = s.total;
    if (o.tax) {
        out.tax = money(amount(s.total, places) * *o.tax, places);
        out.to_pay = out.to_pay + *out.tax;
    }
    const double cost = amount(s.cost, places), total = amount(s.total, places);
    out.margin = total > 0.0 ? (total - cost) / total : 0.0;
    out.markup = cost > 0.0 ? (total - cost) / cost : 0.0;
    out.minimum_applies = s.lines[at(LineKind::minimum)] > Money{};
    // What the cost's band leaves open, at this margin; the value is what is asked.
    const auto asked = [&](double cost_each) {
        return std::max(cost_each / (1.0 - o.price.margin), o.rates.minimum_charge / parts);
    };
    const double each = amount(out.each, places);
    out.price_each = {each, std::min(each, asked(out.cost_each.low)), std::max(each, asked(out.cost_each.high)),
                      out.cost_each.basis};
    out.price_total = {total, std::min(total, parts * asked(out.cost_each.low)),
                       std::max(total, parts * asked(out.cost_each.high)), out.cost_each.basis};
}

// The round quantities 1, 2, 5, 10 ... that are next to the job's own: two below, two above, and one.
void fill_breaks(const Work& w, const Order& o, Report& out) {
    int below[2] = {0, 0}, above[2] = {0, 0};
    int decade = 1;
    for (int i = 0; i < 18; ++i) {
        constexpr int steps[] = {1, 2, 5};
        const int q = steps[i % 3] * decade;
        if (i % 3 == 2) {
            decade *= 10;
        }
        if (q < o.quantity) {
            below[0] = below[1];
            below[1] = q;
        } else if (q > o.quantity && above[1] == 0) {
            above[above[0] == 0 ? 0 : 1] = q;
        }
    }
    const int one = below[0] > 1 ? 1 : 0;
    for (const int q : {one, below[0], below[1], o.quantity, above[0], above[1]}) {
        if (q <= 0) {
            continue;
        }
        const Money total = rounded(costs(w, o, q), o, out.decimals).total;
        out.breaks.push_back({q, money(amount(total, out.decimals) / q, out.decimals), total});
    }
}

void fill_make_or_buy(const Order& o, const Costs& c, Report& out) {
    if (!o.price.outside_quote_each) {
        return;
    }
    const double outside = *o.price.outside_quote_each;
    const Estimate<double>& own = out.cost_each;
    MakeOrBuy m;
    m.saved_each = {outside - own.value, outside - own.high, outside - own.low, own.basis};
    m.choice = outside > own.high ? Choice::make : outside < own.low ? Choice::buy : Choice::even;
    const double setup = c[at(LineKind::setup)], gain = outside - (own.value - setup / static_cast<double>(o.quantity));
    const double from = gain > 0.0 ? std::ceil(setup / gain - 1e-9) : 1e9;
    if (from < 1e9) {
        m.break_even = std::max(1, static_cast<int>(from));
    }
    describe(m, o.quantity, out.decimals);
    out.make_or_buy = std::move(m);
}

} // namespace

double material_cost(Mass part, const JobPrice& price) {
    const double net = part.in(kg)*price.material_per_kg;
    return price.waste_per_part ? net * (1.0 + *price.waste_per_part) : net / (1.0 - price.scrap_share);
}

Report quote(const Work& work, const Order& order) {
    Report out;
    out.decimals = decimals(order.rates.currency);
    const Costs c = costs(work, order, order.quantity);
    const RoundedLines sheet = rounded(c, order, out.decimals);
    fill_lines(work, order, c, sheet, out);
    fill_price(order, sheet, out);
    fill_breaks(work, order, out);
    fill_make_or_buy(order, c, out);
    describe(work, order, out);
    return out;
}

} // namespace torchside::price
