#include "web/screens/show.hpp"

#include "core/price/money.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/thickness.hpp"
#include "core/worksheet/holes.hpp"
#include "generated/words/basis.hpp"
#include "generated/words/settings.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {
namespace {

Shown shown(const Printed& here, const Printed& there) {
    return {here.number, std::string(here.unit), there.text()};
}

std::string range(const App& app, const PrintedBand& band) {
    return band.low == band.high // where a limit holds both ends
               ? band.low
               : app.say(words::settings::Range{.high = band.high, .low = band.low});
}

} // namespace

Shown show(Length length, Units units) {
    // Two decimals of a millimetre are more than a torch height holds; an inch needs three.
    if (units.metric()) {
        return {print_trimmed(length.in(mm), length.in(mm) < 10 ? 1 : 0, units), "mm",
                print(length, units.other()).text()};
    }
    return {print_fixed(length.in(inch), 3, units), "in", print_trimmed(length.in(mm), 1, units) + " mm"};
}

Shown show_limit(Length length, Units units) {
    return shown(print_at_most(length, units), print_at_most(length, units.other()));
}

Shown show_least_hole(const cut::Settings& settings, Units units) {
    const Printed metric{print_trimmed(least_hole(settings).in(mm), 1, units), "mm"};
    const Printed inches{print_trimmed(least_hole(settings, UnitSystem::inch).in(inch), 3, units), "in"};
    return units.metric() ? shown(metric, inches) : shown(inches, metric);
}

Shown show_plate(Length thickness, Metal metal, Units units) {
    const Printed here = stock::plate_name(metal, thickness, units);
    // What a caliper reads is nearer to a gauge than a millimetre is.
    const Printed beside = here.unit == "ga" ? Printed{print_fixed(thickness.in(inch), 3, units), "in"}
                                             : stock::plate_name(metal, thickness, units.other());
    return shown(here, beside);
}

Shown show_feed(Speed feed, Units units, Speed fastest) {
    const Units there = units.other();
    return shown(print(to_dial(feed, fastest, units), units), print(to_dial(feed, fastest, there), there));
}

Shown show_feed(const App& app, Speed feed) {
    return show_feed(feed, app.units(), app.book().shop.table.max_feed);
}

Shown show(Voltage voltage, Units units) {
    return {print_fixed(voltage.in(volt), voltage.in(volt) < 10 ? 2 : 0, units), "V", ""};
}

Shown show(Current current, Units units) {
    const Printed p = print(current, units);
    return {p.number, std::string(p.unit), ""};
}

Shown show(Duration duration, Units units) {
    const double s = duration.in(second);
    if (s < 60) {
        return {print_fixed(s, s < 0.095 ? 2 : s < 10 ? 1 : 0, units), "s", ""};
    }
    const Printed p = print(duration, units);
    return {p.number, std::string(p.unit), ""};
}

std::string show_range(const App& app, const Estimate<Speed>& e) {
    return range(app, print(e, app.units()));
}
std::string show_range(const App& app, const Estimate<Length>& e) {
    return range(app, print(e, app.units()));
}
std::string show_range(const App& app, const Estimate<Voltage>& e) {
    return range(app, print(e, app.units()));
}
std::string show_range(const App& app, const Estimate<Duration>& e) {
    return range(app, print(e, app.units()));
}

std::string show_text(Length length, Units units) {
    return print(length, units).text();
}

std::string show_text(Speed speed, Units units) {
    return print(speed, units).text();
}

std::string_view currency_sign(std::string_view currency) {
    struct Currency {
        std::string_view code, sign;
    };
    constexpr Currency signs[] = {{"USD", "$"}, {"EUR", "€"}, {"GBP", "£"}};
    for (const Currency& s : signs) {
        if (currency == s.code) {
            return s.sign;
        }
    }
    return {};
}

std::string show_field(double value, FieldUnit unit, std::string_view currency, Units units) {
    const bool money = unit == FieldUnit::money || unit == FieldUnit::money_per_kg;
    const std::string sign(money ? currency_sign(currency) : std::string_view());
    if (unit == FieldUnit::money) { // 9.5 is 9.50; a tenth of a cent, where one was typed, stays
        const int places = price::decimals(currency);
        const std::string typed = print_trimmed(value, 3, units);
        const std::size_t point = typed.find(units.decimal);
        const bool short_of = point != std::string::npos && typed.size() - point - 1 < static_cast<std::size_t>(places);
        return sign + (short_of ? print_fixed(value, places, units) : typed);
    }
    return sign + print_field(value, unit, units);
}

std::string with_currency(std::string_view amount, std::string_view currency) {
    const std::string_view sign = currency_sign(currency);
    return sign.empty() ? std::string(amount) + ' ' + std::string(currency) : std::string(sign) + std::string(amount);
}

std::string show_money(double amount, int decimals, Units units) {
    return price::print(price::money(amount, decimals), decimals, units);
}

std::string show_basis(const App& app, const Basis& basis) {
    std::string out;
    const auto also = [&](const Text& text) {
        if (!out.empty()) {
            out += ", ";
        }
        out += app.say(text);
    };
    if (basis.entered) {
        also(words::basis::entered);
    }
    if (basis.physics) {
        also(words::basis::physics);
    }
    if (!basis.published.empty()) {
        also(words::basis::published);
    }
    if (basis.practice) {
        also(words::basis::practice);
    }
    if (basis.tests > 0 && app.book().shop.example) {
        also(words::basis::Example{.count = basis.tests});
    } else if (basis.tests > 0) {
        also(words::basis::Yours{.count = basis.tests});
    }
    if (basis.others > 0) {
        also(words::basis::Others{.count = basis.others});
    }
    return out;
}

Shown show(const App& app, const Figure& figure, const cut::Settings& settings) {
    const Units units = app.units();
    const auto e = figure.of(settings, UnitSystem::metric);
    if (!e) {
        return {app.say(words::settings::edge), app.say(words::settings::start), ""};
    }
    switch (figure.measure) {
    case Measure::feed:
        return show_feed(app, Speed{e->value, mm_min});
    case Measure::volts:
        return show(Voltage{e->value, volt}, units);
    case Measure::least_hole:
        return show_least_hole(settings, units);
    case Measure::duration:
        return show(Duration{e->value, second}, units);
    case Measure::pressure: {
        const Printed here = print(Pressure{e->value, bar}, units);
        return {here.number, std::string(here.unit), ""};
    }
    case Measure::length:
        break;
    }
    return show(Length{e->value, mm}, units);
}

std::string show_range(const App& app, const Figure& figure, const cut::Settings& settings) {
    const Units units = app.units();
    const auto e = figure.of(settings, UnitSystem::metric);
    if (!e || !(e->low < e->high)) {
        return {};
    }
    const auto band = [&]<class K>(Unit<K> unit) {
        using Q = Quantity<K>;
        return Estimate<Q>{Q{e->value, unit}, Q{e->low, unit}, Q{e->high, unit}, e->basis};
    };
    switch (figure.measure) {
    case Measure::feed:
        return show_range(app, band(mm_min));
    case Measure::volts:
        return show_range(app, band(volt));
    case Measure::duration:
        return show_range(app, band(second));
    case Measure::pressure:
        return app.say(
            words::settings::Range{.high = Pressure{e->high, bar}, .low = print(Pressure{e->low, bar}, units).number});
    case Measure::length:
    case Measure::least_hole:
        break;
    }
    return show_range(app, band(mm));
}

} // namespace torchside::web
