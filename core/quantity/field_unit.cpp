#include "core/quantity/field_unit.hpp"

#include <cmath>
#include <iterator>

#include "core/quantity/print.hpp"
#include "core/quantity/print_cell.hpp"
#include "core/quantity/typed.hpp"

namespace torchside {

namespace {

using typed::Dimension;
using typed::Wanted;

/// What one reader types and sees.
struct Side {
    std::string_view word;  // the unit of a bare number, as typed::find_unit() knows it; none: no word names it
    std::string_view shown; // behind a number
    double size = 1.0;      // of a unit that no word names, in the key's unit
};

struct Row {
    std::string_view name; // in files
    Dimension dimension;
    std::string_view word; // the key's unit as typed::find_unit() knows it
    Side metric;
    Side inch;
    int decimals; // at most, where print() has no rule of its own
};

constexpr Side no_unit{"", ""};
constexpr Row rows[] = {
    // in the order of FieldUnit
    {"", Dimension::number, "", no_unit, no_unit, 3},
    {"mm", Dimension::length, "mm", {"mm", " mm"}, {"in", " in"}, 3},
    {"m", Dimension::length, "m", {"m", " m"}, {"ft", " ft"}, 1},
    {"mm2", Dimension::area, "mm2", {"mm2", " mm²"}, {"kcmil", " kcmil"}, 3},
    {"mm/min", Dimension::speed, "mm/min", {"mm/min", " mm/min"}, {"in/min", " in/min"}, 3},
    {"mm/s2", Dimension::acceleration, "mm/s2", {"mm/s2", " mm/s²"}, {"in/s2", " in/s²"}, 3},
    {"s", Dimension::duration, "s", {"s", " s"}, {"s", " s"}, 3},
    {"min", Dimension::duration, "min", {"min", " min"}, {"min", " min"}, 3},
    {"A", Dimension::current, "a", {"a", " A"}, {"a", " A"}, 3},
    {"V", Dimension::voltage, "v", {"v", " V"}, {"v", " V"}, 3},
    {"V/mm", Dimension::gradient, "v/mm", {"v/mm", " V/mm"}, {"v/in", " V/in"}, 3},
    {"VA", Dimension::apparent_power, "va", {"va", " VA"}, {"va", " VA"}, 3},
    {"hp", Dimension::power, "hp", {"kw", " kW"}, {"hp", " hp"}, 3},
    {"bar", Dimension::pressure, "bar", {"bar", " bar"}, {"psi", " psi"}, 3},
    {"L", Dimension::volume, "l", {"l", " L"}, {"gal", " gal"}, 3},
    {"L/min", Dimension::flow, "l/min", {"l/min", " L/min"}, {"cfm", " cfm"}, 3},
    {"C", Dimension::temperature, "c", {"c", " °C"}, {"f", " °F"}, 1},
    {"deg", Dimension::angle, "deg", {"deg", "°"}, {"deg", "°"}, 1},
    {"share", Dimension::share, "", {"%", " %"}, {"%", " %"}, 4},
    {"money", Dimension::money, "", no_unit, no_unit, 3},
    {"money/kg", Dimension::money, "", {"", "/kg"}, {"", "/lb", 1 / 0.45359237}, 3},
    {"1/m", Dimension::number, "", {"", " per m"}, {"", " per ft", 1 / 0.3048}, 3},
    {"kW/(m3/min)", Dimension::number, "", {"", " kW/(m3/min)"}, {"", " kW/100 cfm", 1 / 2.8316846592}, 3},
    {"AWG", Dimension::wire, "awg", {"awg", " AWG"}, {"awg", " AWG"}, 3},
    {"days", Dimension::number, "", {"", " days"}, {"", " days"}, 3},
    {"kohm", Dimension::number, "", {"", " kohm"}, {"", " kohm"}, 3},
};
static_assert(std::size(rows) == static_cast<std::size_t>(FieldUnit::kilohm) + 1);

const Row& row_of(FieldUnit unit) {
    return rows[static_cast<std::size_t>(unit)];
}

const Side& side_of(const Row& row, Units units) {
    return !units.metric() ? row.inch : row.metric;
}

Wanted wanted(const Row& row, const Side& side, Units units = {}) {
    Wanted w;
    w.units = units;
    w.dimension = row.dimension;
    w.bare.up = side.size;
    if (!side.word.empty()) {
        w.bare = *typed::find_unit(side.word, row.dimension);
    }
    if (!row.word.empty()) {
        w.target = *typed::find_unit(row.word, row.dimension);
    }
    return w;
}

/// The reader's units in one of the key's, but for where their zeros lie.
double times(const Wanted& w) {
    return w.target.up * w.bare.down / (w.target.down * w.bare.up);
}

/// An end of a range in the unit that is typed, 3 figures, away from the end; exactly where the units are the same.
std::string print_end(double value, const Wanted& w, bool low, Units units) {
    const double there = value * times(w) + w.bare.shift;
    if (w.bare.shift == 0.0 && (times(w) == 1.0 || w.dimension == Dimension::share)) {
        return print_trimmed(there, 6, units);
    }
    if (there == 0.0) {
        return "0";
    }
    const double step = std::pow(10.0, std::floor(std::log10(std::abs(there))) - 2.0);
    constexpr double slack = 1e-9; // a bound that is whole in both units stays
    return print_trimmed((low ? std::ceil(there / step - slack) : std::floor(there / step + slack)) * step, 6, units);
}

/// "$", "€" and "£" before an amount say nothing that the currency does not.
std::string_view without_sign(std::string_view text) {
    while (text.starts_with(' ')) {
        text.remove_prefix(1);
    }
    for (const std::string_view sign : {"€", "£"}) {
        if (text.starts_with(sign)) {
            return text.substr(sign.size());
        }
    }
    return text;
}

} // namespace

std::string_view unit_name(FieldUnit unit) {
    return row_of(unit).name;
}

std::string print_field(double value, FieldUnit unit, Units units) {
    switch (unit) {
    case FieldUnit::mm:
        return print(Length{value, mm}, units).text();
    case FieldUnit::mm_min:
        return print(Speed{value, mm_min}, units).text();
    case FieldUnit::mm_s2:
        return print(Acceleration{value, mm_s2}, units).text();
    case FieldUnit::bar:
        return print(Pressure{value, bar}, units).text();
    case FieldUnit::litre:
        return print(Volume{value, litre}, units).text();
    case FieldUnit::litre_min:
        return print(Flow{value, litre_min}, units).text();
    default:
        break;
    }
    const Row& row = row_of(unit);
    const Side& side = side_of(row, units);
    const Wanted w = wanted(row, side);
    return print_trimmed(value * times(w) + w.bare.shift, row.decimals, units) + std::string(side.shown);
}

std::string print_cell(double value, FieldUnit unit, Units units) {
    const Row& row = row_of(unit);
    const Wanted w = wanted(row, side_of(row, units));
    const double there = value * times(w) + w.bare.shift;
    std::string text = print_plain(std::abs(there), 4);
    text.resize(text.find_last_not_of('0') + 1); // four decimals have a point, and the point ends them
    if (text.ends_with('.')) {
        text.pop_back();
    }
    return there < 0 && text != "0" ? '-' + text : text;
}

Reading<double> read_field(std::string_view text, FieldUnit unit, Units units) {
    const Row& row = row_of(unit);
    const Side& side = side_of(row, units);
    const std::string_view suffix = side.shown.starts_with(' ') ? side.shown.substr(1) : side.shown;
    if (side.word.empty() && !suffix.empty() && text.ends_with(suffix)) {
        text.remove_suffix(suffix.size()); // as the field shows it: "0.85 /lb", "30 days"
    }
    if (row.dimension == Dimension::money) {
        text = without_sign(text);
    }
    return read_wanted(text, wanted(row, side, units));
}

std::string print_low_end(double value, FieldUnit unit, Units units) {
    const Row& row = row_of(unit);
    return print_end(value, wanted(row, side_of(row, units)), true, units);
}

std::string print_high_end(double value, FieldUnit unit, Units units) {
    const Row& row = row_of(unit);
    const Side& side = side_of(row, units);
    return print_end(value, wanted(row, side), false, units) + std::string(side.shown);
}

std::string bare_unit(FieldUnit unit, Units units) {
    const Row& row = row_of(unit);
    return wanted(row, side_of(row, units)).bare.symbol;
}

} // namespace torchside
