#include "core/schema/entry.hpp"

#include <array>
#include <cstddef>

#include "core/stock/gauge.hpp"
#include "core/stock/properties.hpp"
#include "core/words/range.hpp"
#include "generated/words/ask.hpp"

namespace torchside::document {

namespace {

Text enter_letters(const FieldInfo& info) {
    const int least = static_cast<int>(info.low), most = static_cast<int>(info.high);
    if (info.plain) {
        return least > 0 ? Text{words::ask::PlainRange{.least = least, .most = most}}
                         : Text{words::ask::PlainUpTo{.most = most}};
    }
    if (least == most) {
        return words::ask::Letters{.most = most};
    }
    return least > 0 ? Text{words::ask::LettersRange{.least = least, .most = most}}
                     : Text{words::ask::LettersUpTo{.most = most}};
}

Text enter_value(const FieldInfo& info) {
    if (info.kind == FieldKind::text) {
        return enter_letters(info);
    }
    if (info.kind == FieldKind::number) {
        return words::range(info.low, info.high, info.unit);
    }
    if (info.kind == FieldKind::integer && info.choices.empty()) {
        return words::ask::Whole{.high = words::high_end(info.high, info.unit),
                                 .low = words::low_end(info.low, info.unit)};
    }
    return words::ask::Choice{.choices = choices(info)};
}

using words::ask::amount, words::ask::number, words::ask::time;
constexpr std::array quantities{
    // in the order of FieldUnit
    number,
    words::ask::length,
    words::ask::length,
    words::ask::section,
    words::ask::speed,
    words::ask::acceleration,
    time,
    time,
    words::ask::current,
    words::ask::voltage,
    words::ask::gradient,
    words::ask::apparent_power,
    words::ask::power,
    words::ask::pressure,
    words::ask::volume,
    words::ask::flow,
    words::ask::temperature,
    words::ask::angle,
    words::ask::percentage,
    amount,
    amount,
    number,
    number,
    words::ask::wire,
    number,
    number,
};
static_assert(quantities.size() == static_cast<std::size_t>(FieldUnit::kilohm) + 1);

} // namespace

Text blank_words(const FieldInfo& info) {
    if (!info.nullable) {
        return {};
    }
    return info.blank == Word{} ? Text{words::ask::blank_unknown} : Text{info.blank};
}

Text enter(const FieldInfo& info) {
    if (info.kind == FieldKind::list) {
        return words::ask::Rows{.most = static_cast<int>(info.high)};
    }
    Text out = enter_value(info);
    out += blank_words(info);
    return out;
}

Text ask_for(FieldUnit unit, Units units) {
    const Word what = quantities[static_cast<std::size_t>(unit)];
    const std::string symbol = bare_unit(unit, units);
    if (symbol.empty()) {
        return words::ask::Quantity{.what = what};
    }
    return words::ask::QuantityIn{.unit = symbol, .what = what};
}

Text question(Doubt doubt) {
    switch (doubt) {
    case Doubt::fraction:
        return words::ask::fraction;
    case Doubt::comma:
        return words::ask::comma;
    case Doubt::mil:
        break;
    }
    return words::ask::mil;
}

Text refused_gauge(Unread why, Metal metal) {
    if (why == Unread::sold_by_thickness) {
        return words::ask::ByThickness{.metal = stock::name(metal)};
    }
    if (why == Unread::no_such_gauge) {
        return words::ask::GaugeRange{.least = stock::thickest_gauge, .most = stock::thinnest_gauge};
    }
    return {};
}

} // namespace torchside::document
