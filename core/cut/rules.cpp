#include "core/cut/rules.hpp"
#include "generated/words/by_hand.hpp"

#include <algorithm>

namespace torchside::cut {
namespace {

struct Row {
    Rule Rules::*field;
    double value;
    double low;
    double high;
    std::string_view source;
};

constexpr Row rows[] = {
#include "generated/cut_rules.inc"
};

constexpr Rules collect() {
    Rules r{};
    for (const Row& row : rows) {
        r.*row.field = {row.value, row.low, row.high, row.source};
    }
    return r;
}

constexpr Rules table = collect();

constexpr Basis practice{.practice = true};

Estimate<Length> scaled(const Rule& rule, Length by) {
    return {rule.value * by, rule.low * by, rule.high * by, practice};
}

Estimate<Length> scaled(const Rule& rule, const Estimate<Length>& by) {
    return {rule.value * by.value, rule.low * by.low, rule.high * by.high, practice | by.basis};
}

Estimate<Length> larger(const Estimate<Length>& a, const Estimate<Length>& b) {
    const Basis basis = a.value < b.value ? b.basis : a.basis; // of the one that decides
    return {std::max(a.value, b.value), std::max(a.low, b.low), std::max(a.high, b.high), basis};
}

template <class K>
Estimate<Quantity<K>> own_or(const Rule& rule, Quantity<K> own, Unit<K> unit) {
    if (own.in(unit) != rule.value) {
        return {own, own, own, Basis{.entered = true}};
    }
    return {own, Quantity<K>{rule.low, unit}, Quantity<K>{rule.high, unit}, practice};
}

} // namespace

const Rules& rules() {
    return table;
}

Estimate<Length> cut_height() {
    return scaled(table.cut_height, Length{1.0, mm});
}

Estimate<Length> pierce_height(Length thickness, const Estimate<Length>& cut_height) {
    const double t = thickness.in(mm);
    const auto grown = [t](double Rule::*end) {
        return std::min(table.pierce_ratio_most.*end, table.pierce_ratio.*end + t * table.pierce_ratio_per_mm.*end);
    };
    Estimate<Length> e = scaled({grown(&Rule::value), grown(&Rule::low), grown(&Rule::high), {}}, cut_height.value);
    e.basis = e.basis | cut_height.basis;
    return e;
}

Estimate<Length> lead_in(Length thickness, const Estimate<Length>& kerf) {
    return larger(scaled(table.lead_least, Length{1.0, mm}),
                  larger(scaled(table.lead_per_thickness, thickness), scaled(table.lead_per_kerf, kerf)));
}

Estimate<Length> smallest_hole(Length thickness, const Estimate<Length>& kerf) {
    return larger(scaled(table.hole_per_thickness, thickness), scaled(table.hole_per_kerf, kerf));
}

Estimate<Pressure> air_pressure(Pressure own) {
    return own_or(table.air_pressure, own, bar);
}

Estimate<Duration> post_flow(Duration own) {
    return own_or(table.post_flow, own, second);
}

ByHand by_hand(Speed feed, Current current, bool drag) {
    ByHand hand;
    hand.per_100_mm = travel_time(Length{100, mm}, feed);
    hand.per_foot = travel_time(Length{1, foot}, feed);
    hand.drag = current <= Current{table.drag_current.value, ampere};
    if (drag && hand.drag) {
        hand.advice = words::by_hand::drag;
    } else if (drag) {
        hand.advice = words::by_hand::TooMuchToDrag{.most = Current{table.drag_current.value, ampere}};
    } else {
        hand.advice = words::by_hand::hold;
    }
    return hand;
}

} // namespace torchside::cut
