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

UnitSystem other(UnitSystem units) {
    return units == UnitSystem::metric ? UnitSystem::inch : UnitSystem::metric;
}

Shown shown(const Printed& here, const Printed& there) {
    return {here.number, std::string(here.unit), there.text()};
}

std::string range(const App& app, const PrintedBand& band) {
    return band.low == band.high // where a limit holds both ends
               ? band.low
               : app.say(words::settings::Range{.high = band.high, .low = band.low});
}

} // namespace

Shown show(Length length, UnitSystem units) {
    // Two decimals of a millimetre are more than a torch height holds; an inch needs three.
    if (units == UnitSystem::metric) {
        return {print_trimmed(length.in(mm), length.in(mm) < 10 ? 1 : 0), "mm", print(length, UnitSystem::inch).text()};
    }
    return {print_fixed(length.in(inch), 3), "in", print_trimmed(length.in(mm), 1) + " mm"};
}

Shown show_limit(Length length, UnitSystem units) {
    return shown(print_at_most(length, units), print_at_most(length, other(units)));
}

Shown show_least_hole(const cut::Settings& settings, UnitSystem units) {
    const Length least = least_hole(settings);
    const Printed metric = print(least, UnitSystem::metric);
    const Printed inches{print_trimmed(least.in(inch), 3), "in"};
    return units == UnitSystem::metric ? shown(metric, inches) : shown(inches, metric);
}

Shown show_plate(Length thickness, Metal metal, UnitSystem units) {
    const Printed here = stock::plate_name(metal, thickness, units);
    // What a caliper reads is nearer to a gauge than a millimetre is.
    const Printed beside = here.unit == "ga" ? Printed{print_fixed(thickness.in(inch), 3), "in"}
                                             : stock::plate_name(metal, thickness, other(units));
    return shown(here, beside);
}

Shown show_feed(Speed feed, UnitSystem units, Speed fastest) {
    const UnitSystem there = other(units);
    return shown(print(to_dial(feed, fastest, units), units), print(to_dial(feed, fastest, there), there));
}

Shown show_feed(Speed feed, const Shop& shop) {
    return show_feed(feed, shop.display.units, shop.table.max_feed);
}

Shown show(Voltage voltage) {
    return {print_fixed(voltage.in(volt), voltage.in(volt) < 10 ? 2 : 0), "V", ""};
}

Shown show(Current current) {
    const Printed p = print(current);
    return {p.number, std::string(p.unit), ""};
}

Shown show(Duration duration) {
    const double s = duration.in(second);
    if (s < 60) {
        return {print_fixed(s, s < 10 ? 1 : 0), "s", ""};
    }
    const Printed p = print(duration);
    return {p.number, std::string(p.unit), ""};
}

std::string show_range(const App& app, const Estimate<Speed>& e) {
    return range(app, print(e, app.speech().units));
}
std::string show_range(const App& app, const Estimate<Length>& e) {
    return range(app, print(e, app.speech().units));
}
std::string show_range(const App& app, const Estimate<Voltage>& e) {
    return range(app, print(e));
}
std::string show_range(const App& app, const Estimate<Duration>& e) {
    return range(app, print(e));
}

std::string show_text(Length length, UnitSystem units) {
    return print(length, units).text();
}

std::string show_text(Speed speed, UnitSystem units) {
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

std::string show_field(double value, FieldUnit unit, const Shop& shop) {
    const bool money = unit == FieldUnit::money || unit == FieldUnit::money_per_kg;
    const std::string sign(money ? currency_sign(shop.rates.currency) : std::string_view());
    if (unit == FieldUnit::money) { // 9.5 is 9.50; a tenth of a cent, where one was typed, stays
        const int places = price::decimals(shop.rates.currency);
        const std::string typed = print_trimmed(value, 3);
        const std::size_t point = typed.find('.');
        const bool short_of = point != std::string::npos && typed.size() - point - 1 < static_cast<std::size_t>(places);
        return sign + (short_of ? print_fixed(value, places) : typed);
    }
    return sign + print_field(value, unit, shop.display.units);
}

std::string with_currency(std::string_view amount, std::string_view currency) {
    const std::string_view sign = currency_sign(currency);
    return sign.empty() ? std::string(amount) + ' ' + std::string(currency) : std::string(sign) + std::string(amount);
}

std::string show_money(double amount, int decimals) {
    return price::print(price::money(amount, decimals), decimals);
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
    return out;
}

Shown show(const App& app, const Figure& figure, const cut::Settings& settings) {
    const Shop& shop = app.book().shop;
    const UnitSystem units = shop.display.units;
    const auto e = figure.of(settings, UnitSystem::metric);
    if (!e) {
        return {app.say(words::settings::edge), app.say(words::settings::start), ""};
    }
    switch (figure.measure) {
    case Measure::feed:
        return show_feed(Speed{e->value, mm_min}, shop);
    case Measure::volts:
        return show(Voltage{e->value, volt});
    case Measure::least_hole:
        return show_least_hole(settings, units);
    case Measure::duration:
        return show(Duration{e->value, second});
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
    const UnitSystem units = app.speech().units;
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
