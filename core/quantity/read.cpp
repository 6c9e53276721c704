#include "core/quantity/read.hpp"

#include <cmath>
#include <string>
#include <utility>

#include "core/quantity/print.hpp"
#include "core/quantity/typed.hpp"

namespace torchside {

namespace {

using typed::Dimension;
using typed::FoundUnit;
using typed::Plain;
using typed::read_wanted;
using typed::Wanted;

template <class Kind>
Reading<Quantity<Kind>> typed_as(const Plain& plain) {
    using Q = Quantity<Kind>;
    constexpr Unit<Kind> base{1.0};
    if (const auto* a = plain.answer()) {
        return Answer<Q>{Q{a->value, base}, a->as};
    }
    if (const auto* q = plain.question()) {
        Question<Q> question{q->text, {}};
        for (const auto& a : q->answers) {
            question.answers.push_back({Q{a.value, base}, a.as});
        }
        return question;
    }
    if (const auto* g = plain.gauge()) {
        return *g;
    }
    return *plain.refusal();
}

template <class Kind>
Reading<Quantity<Kind>> read_as(std::string_view text, Dimension dimension, std::string_view bare) {
    Wanted w;
    w.dimension = dimension;
    w.bare = *typed::find_unit(bare, dimension);
    w.instead = "a gauge is the thickness of a sheet";
    return typed_as<Kind>(read_wanted(text, w));
}

std::string_view pick(UnitSystem units, std::string_view metric, std::string_view in_inch) {
    return units == UnitSystem::metric ? metric : in_inch;
}

/// What the number of an inch reader is in when the key is in the unit before it.
constexpr std::pair<std::string_view, std::string_view> counterparts[] = {
    {"mm", "in"},     {"m", "ft"},  {"mm/min", "in/min"}, {"mm/s2", "in/s2"}, {"bar", "psi"},   {"l", "gal"},
    {"l/min", "cfm"}, {"kg", "lb"}, {"c", "f"},           {"mm2", "kcmil"},   {"v/mm", "v/in"},
};

/// Units that no typed word names: a number is read, and what the reader's own unit makes of it.
struct Rate {
    std::string_view unit;   // of the key
    std::string_view suffix; // as the inch reader sees it behind the number, and the metric reader
    std::string_view metric_suffix;
    double size; // of the inch reader's unit, in the key's
};
constexpr Rate rates[] = {
    {"money/kg", "/lb", "/kg", 1 / 0.45359237},
    {"1/m", "per ft", "per m", 1 / 0.3048},
    {"kW/(m3/min)", "kW/100 cfm", "kW/(m3/min)", 1 / 2.8316846592},
};

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

const Rate* find_rate(std::string_view unit) {
    for (const Rate& rate : rates) {
        if (unit == rate.unit) {
            return &rate;
        }
    }
    return nullptr;
}

std::string_view suffix_of(const Rate& rate, UnitSystem bare) {
    return bare == UnitSystem::inch ? rate.suffix : rate.metric_suffix;
}

} // namespace

Reading<Length> read_length(std::string_view text, UnitSystem bare) {
    return read_as<LengthKind>(text, Dimension::length, pick(bare, "mm", "in"));
}

Reading<Length> read_length_or_gauge(std::string_view text, UnitSystem bare) {
    Wanted w;
    w.dimension = Dimension::length;
    w.bare = *typed::find_unit(pick(bare, "mm", "in"), Dimension::length);
    w.gauge = true;
    return typed_as<LengthKind>(read_wanted(text, w));
}

Reading<Speed> read_speed(std::string_view text, UnitSystem bare) {
    return read_as<SpeedKind>(text, Dimension::speed, pick(bare, "mm/min", "in/min"));
}

Reading<Acceleration> read_acceleration(std::string_view text, UnitSystem bare) {
    return read_as<AccelerationKind>(text, Dimension::acceleration, pick(bare, "mm/s2", "in/s2"));
}

Reading<Pressure> read_pressure(std::string_view text, UnitSystem bare) {
    return read_as<PressureKind>(text, Dimension::pressure, pick(bare, "bar", "psi"));
}

Reading<Flow> read_flow(std::string_view text, UnitSystem bare) {
    return read_as<FlowKind>(text, Dimension::flow, pick(bare, "l/min", "cfm"));
}

Reading<Volume> read_volume(std::string_view text, UnitSystem bare) {
    return read_as<VolumeKind>(text, Dimension::volume, pick(bare, "l", "gal"));
}

Reading<Mass> read_mass(std::string_view text, UnitSystem bare) {
    return read_as<MassKind>(text, Dimension::mass, pick(bare, "kg", "lb"));
}

Reading<Duration> read_duration(std::string_view text, Unit<DurationKind> bare) {
    return read_as<DurationKind>(text, Dimension::duration,
                                 bare.per_base >= hour.per_base     ? "h"
                                 : bare.per_base >= minute.per_base ? "min"
                                                                    : "s");
}

Reading<Current> read_current(std::string_view text) {
    return read_as<CurrentKind>(text, Dimension::current, "a");
}

Reading<Voltage> read_voltage(std::string_view text) {
    return read_as<VoltageKind>(text, Dimension::voltage, "v");
}

Reading<double> read_number(std::string_view text) {
    return read_field(text, "", UnitSystem::metric);
}

Reading<double> read_percent(std::string_view text) {
    return read_field(text, "share", UnitSystem::metric);
}

namespace {

/// What a field in this unit of the workbook wants.
Wanted wanted(std::string_view unit, UnitSystem bare) {
    Wanted w;
    w.instead = "a gauge is the thickness of a sheet";
    if (unit == "share") {
        w.dimension = Dimension::share;
        w.bare = *typed::find_unit("%", Dimension::share);
        return w;
    }
    if (unit == "money") {
        w.dimension = Dimension::money;
        return w;
    }
    if (const Rate* rate = find_rate(unit)) {
        w.dimension = rate->unit.starts_with("money") ? Dimension::money : Dimension::number;
        w.bare.up = bare == UnitSystem::inch ? rate->size : 1.0;
        return w;
    }
    const typed::Folded folded = typed::fold(unit);
    const std::optional<FoundUnit> found = typed::find_unit(folded.text());
    if (unit.empty() || !found) {
        return w;
    }
    w.dimension = found->dimension;
    w.bare = *found;
    w.target = *found;
    for (const auto& [metric, in_inch] : counterparts) {
        if (bare == UnitSystem::inch && folded.text() == metric) {
            w.bare = *typed::find_unit(in_inch, w.dimension);
        }
    }
    if (bare == UnitSystem::metric && unit == "hp") {
        w.bare = *typed::find_unit("kw", w.dimension);
    }
    return w;
}

/// An end of a range in the unit that is typed, 3 figures, away from the end; exactly where the units are the same.
std::string print_end(double value, const Wanted& w, bool low) {
    const double times = w.target.up * w.bare.down / (w.target.down * w.bare.up);
    const double there = value * times + w.bare.shift;
    if (w.bare.shift == 0.0 && (times == 1.0 || w.dimension == Dimension::share)) {
        return print_trimmed(there, 6);
    }
    if (there == 0.0) {
        return "0";
    }
    const double step = std::pow(10.0, std::floor(std::log10(std::abs(there))) - 2.0);
    constexpr double slack = 1e-9; // a bound that is whole in both units stays
    return print_trimmed((low ? std::ceil(there / step - slack) : std::floor(there / step + slack)) * step, 6);
}

} // namespace

Reading<double> read_field(std::string_view text, std::string_view unit, UnitSystem bare) {
    const Wanted w = wanted(unit, bare);
    const Rate* rate = find_rate(unit);
    const std::string_view suffix = rate != nullptr ? suffix_of(*rate, bare) : unit;
    if ((rate != nullptr || w.dimension == Dimension::number) && !suffix.empty() && text.ends_with(suffix)) {
        text.remove_suffix(suffix.size()); // as the field shows it: "0.85 /lb", "30 days"
    }
    if (w.dimension == Dimension::money) {
        text = without_sign(text);
    }
    return read_wanted(text, w);
}

std::string print_range(double low, double high, std::string_view unit, UnitSystem bare) {
    const Wanted w = wanted(unit, bare);
    std::string out = print_end(low, w, true) + " to " + print_end(high, w, false);
    const Rate* rate = find_rate(unit);
    const std::string_view behind = rate != nullptr          ? suffix_of(*rate, bare)
                                    : !w.bare.symbol.empty() ? std::string_view(w.bare.symbol)
                                    : unit == "money"        ? std::string_view()
                                                             : unit;
    const bool apart = w.dimension != Dimension::angle && !behind.empty() && !behind.starts_with('/');
    return out + (apart ? " " : "") + std::string(behind);
}

std::string ask_for(std::string_view unit, UnitSystem bare) {
    const Wanted w = wanted(unit, bare);
    const std::string out = "Enter " + std::string(typed::noun(w.dimension));
    return w.bare.symbol.empty() ? out + '.' : out + " (" + w.bare.symbol + ").";
}

std::optional<Fault> check_range(std::string_view field, double value, double low, double high, std::string_view unit) {
    if (value >= low && value <= high) {
        return {};
    }
    std::string text = value > high && value <= 1e308   ? print_trimmed(value, 4) + " is too large; "
                       : value < low && value >= -1e308 ? print_trimmed(value, 4) + " is too small; "
                                                        : std::string{"that is not a number; "};
    text += print_trimmed(low, 4) + " to " + print_trimmed(high, 4);
    if (!unit.empty()) {
        text += " ";
        text += unit;
    }
    return Fault{std::string{field}, text + " is accepted"};
}

} // namespace torchside
