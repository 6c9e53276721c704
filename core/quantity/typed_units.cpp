#include "core/quantity/quantity.hpp"
#include "core/quantity/typed.hpp"

namespace torchside::typed {

namespace {

struct UnitWord {
    std::string_view word; // as folded
    Dimension dimension;
    double up; // base units in one of it: up / down
    double down;
    std::string_view symbol;
};

/// Plain units; speeds, flows and the rest of "a/b" are put together from these in compound().
constexpr UnitWord words[] = {
    {"mm", Dimension::length, 1, 1, "mm"},
    {"millimetre", Dimension::length, 1, 1, "mm"},
    {"millimeter", Dimension::length, 1, 1, "mm"},
    {"cm", Dimension::length, 10, 1, "cm"},
    {"centimetre", Dimension::length, 10, 1, "cm"},
    {"centimeter", Dimension::length, 10, 1, "cm"},
    {"m", Dimension::length, 1000, 1, "m"},
    {"metre", Dimension::length, 1000, 1, "m"},
    {"meter", Dimension::length, 1000, 1, "m"},
    {"um", Dimension::length, 1, 1000, "µm"},
    {"in", Dimension::length, 127, 5, "in"},
    {"inch", Dimension::length, 127, 5, "in"},
    {"inche", Dimension::length, 127, 5, "in"}, // "inches" without its s
    {"\"", Dimension::length, 127, 5, "in"},
    {"''", Dimension::length, 127, 5, "in"},
    {"ft", Dimension::length, 1524, 5, "ft"},
    {"foot", Dimension::length, 1524, 5, "ft"},
    {"feet", Dimension::length, 1524, 5, "ft"},
    {"'", Dimension::length, 1524, 5, "ft"},
    {"thou", Dimension::length, 127, 5000, "thou"},
    {"mil", Dimension::length, 127, 5000, "mil"},
    {"ga", Dimension::gauge, 1, 1, "ga"},
    {"gauge", Dimension::gauge, 1, 1, "ga"},
    {"gage", Dimension::gauge, 1, 1, "ga"},
    {"mm2", Dimension::area, 1, 1, "mm²"},
    {"sqmm", Dimension::area, 1, 1, "mm²"},
    {"cm2", Dimension::area, 100, 1, "cm²"},
    {"in2", Dimension::area, in2.per_base, 1, "in²"},
    {"sqin", Dimension::area, in2.per_base, 1, "in²"},
    {"kcmil", Dimension::area, mm2_per_kcmil, 1, "kcmil"},
    {"mcm", Dimension::area, mm2_per_kcmil, 1, "kcmil"},
    {"s", Dimension::duration, 1, 1, "s"},
    {"sec", Dimension::duration, 1, 1, "s"},
    {"second", Dimension::duration, 1, 1, "s"},
    {"ms", Dimension::duration, 1, 1000, "ms"},
    {"min", Dimension::duration, 60, 1, "min"},
    {"minute", Dimension::duration, 60, 1, "min"},
    {"h", Dimension::duration, 3600, 1, "h"},
    {"hr", Dimension::duration, 3600, 1, "h"},
    {"hour", Dimension::duration, 3600, 1, "h"},
    {"ipm", Dimension::speed, 127, 5, "in/min"},
    {"ips", Dimension::speed, 7620, 5, "in/s"},
    {"fpm", Dimension::speed, 1524, 5, "ft/min"},
    {"mmpm", Dimension::speed, 1, 1, "mm/min"},
    {"mpm", Dimension::speed, 1000, 1, "m/min"},
    {"kg", Dimension::mass, 1, 1, "kg"},
    {"kilogram", Dimension::mass, 1, 1, "kg"},
    {"g", Dimension::mass, 1, 1000, "g"},
    {"gram", Dimension::mass, 1, 1000, "g"},
    {"lb", Dimension::mass, 45359237, 1e8, "lb"},
    {"pound", Dimension::mass, 45359237, 1e8, "lb"},
    {"a", Dimension::current, 1, 1, "A"},
    {"amp", Dimension::current, 1, 1, "A"},
    {"ampere", Dimension::current, 1, 1, "A"},
    {"v", Dimension::voltage, 1, 1, "V"},
    {"volt", Dimension::voltage, 1, 1, "V"},
    {"vac", Dimension::voltage, 1, 1, "V"},
    {"vdc", Dimension::voltage, 1, 1, "V"},
    {"kv", Dimension::voltage, 1000, 1, "kV"},
    {"w", Dimension::power, 1, 1, "W"},
    {"watt", Dimension::power, 1, 1, "W"},
    {"kw", Dimension::power, 1000, 1, "kW"},
    {"hp", Dimension::power, 745.6998715822702, 1, "hp"}, // 550 ft lbf/s
    {"va", Dimension::apparent_power, 1, 1, "VA"},
    {"kva", Dimension::apparent_power, 1000, 1, "kVA"},
    {"bar", Dimension::pressure, 1, 1, "bar"},
    {"barg", Dimension::pressure, 1, 1, "bar"},
    {"psi", Dimension::pressure, psi.per_base, 1, "psi"},
    {"psig", Dimension::pressure, psi.per_base, 1, "psi"},
    {"kpa", Dimension::pressure, 1, 100, "kPa"},
    {"mpa", Dimension::pressure, 10, 1, "MPa"},
    {"l", Dimension::volume, 1, 1, "L"},
    {"litre", Dimension::volume, 1, 1, "L"},
    {"liter", Dimension::volume, 1, 1, "L"},
    {"gal", Dimension::volume, 3785411784, 1e9, "gal"},
    {"gallon", Dimension::volume, 3785411784, 1e9, "gal"},
    {"m3", Dimension::volume, 1000, 1, "m³"},
    {"ft3", Dimension::volume, 28316846592, 1e9, "ft³"},
    {"cuft", Dimension::volume, 28316846592, 1e9, "ft³"},
    {"cfm", Dimension::flow, 28316846592, 1e9, "cfm"},
    {"scfm", Dimension::flow, 28316846592, 1e9, "cfm"},
    {"lpm", Dimension::flow, 1, 1, "L/min"},
    {"c", Dimension::temperature, 1, 1, "°C"},
    {"^c", Dimension::temperature, 1, 1, "°C"},
    {"f", Dimension::temperature, 5, 9, "°F"},
    {"^f", Dimension::temperature, 5, 9, "°F"},
    {"deg", Dimension::angle, 1, 1, "°"},
    {"degree", Dimension::angle, 1, 1, "°"},
    {"^", Dimension::angle, 1, 1, "°"},
    {"%", Dimension::share, 1, 100, "%"},
    {"percent", Dimension::share, 1, 100, "%"},
    {"awg", Dimension::wire, 1, 1, "AWG"},
};

const UnitWord* plain(std::string_view word, Dimension wanted, bool any) {
    for (const UnitWord& u : words) {
        const bool plural = word.size() == u.word.size() + 1 && word.back() == 's' && u.word.size() > 1 &&
                            u.word.back() >= 'a' && word.substr(0, u.word.size()) == u.word;
        if ((any || u.dimension == wanted) && (word == u.word || plural)) {
            return &u;
        }
    }
    return nullptr;
}

/// The units that may stand over and under a line, and what that makes.
struct Ratio {
    Dimension over;
    Dimension under;
    Dimension made;
    double base; // made's base units in one (base of over) / (base of under)
};
constexpr Ratio ratios[] = {
    {Dimension::length, Dimension::duration, Dimension::speed, 60},       // mm/s in mm/min
    {Dimension::volume, Dimension::duration, Dimension::flow, 60},        // l/s in l/min
    {Dimension::voltage, Dimension::length, Dimension::gradient, 1},      // V/mm
    {Dimension::length, Dimension::duration, Dimension::acceleration, 1}, // under the line: squared
};

std::optional<FoundUnit> compound(std::string_view word, Dimension wanted, bool any) {
    const std::string_view per = word.find('/') == std::string_view::npos ? "per" : "/";
    const std::size_t line = word.find(per);
    if (line == std::string_view::npos) {
        return {};
    }
    const std::string_view over = word.substr(0, line);
    std::string_view under = word.substr(line + per.size());
    const bool squared = under == "s2" || under == "sec2" || under == "s/s";
    if (squared) {
        under = "s";
    }
    for (const Ratio& r : ratios) {
        if (squared != (r.made == Dimension::acceleration) || (!any && r.made != wanted)) {
            continue;
        }
        const UnitWord* a = plain(over, r.over, false);
        const UnitWord* b = plain(under, r.under, false);
        if (a && b) {
            return FoundUnit{r.made, a->up * r.base * b->down, a->down * b->up, 0.0,
                             std::string{a->symbol} + "/" + std::string{b->symbol} + (squared ? "²" : "")};
        }
    }
    return {};
}

std::optional<FoundUnit> find(std::string_view word, Dimension wanted, bool any) {
    if (const UnitWord* u = plain(word, wanted, any)) {
        const bool fahrenheit = u->dimension == Dimension::temperature && u->up != u->down;
        return FoundUnit{u->dimension, u->up, u->down, fahrenheit ? 32.0 : 0.0, std::string{u->symbol}};
    }
    return compound(word, wanted, any);
}

} // namespace

std::optional<FoundUnit> find_unit(std::string_view word, Dimension wanted) {
    return find(word, wanted, false);
}

std::optional<FoundUnit> find_unit(std::string_view word) {
    return find(word, Dimension::number, true);
}

} // namespace torchside::typed
