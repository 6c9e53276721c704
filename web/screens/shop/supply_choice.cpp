#include "web/screens/shop/supply_choice.hpp"

#include <algorithm>
#include <vector>

#include "core/quantity/print.hpp"
#include "core/schema/intent.hpp"
#include "core/supply/plug.hpp"
#include "core/supply/usual.hpp"
#include "core/worksheet/country.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr double lines[] = {120, 208, 230, 240, 400};
constexpr const char* country_names[] = {"United States", "United Kingdom", "European Union", "Elsewhere"};
constexpr const char* country_words[] = {"us", "uk", "eu", "other"};
constexpr const char* line_path = "shop.circuit.line_v";

std::string volts(double v) {
    return print_trimmed(v, 1) + " V";
}

std::string fed_by(const App& app, double breaker_a, int awg, const std::optional<double>& mm2) {
    return print_trimmed(breaker_a, 1) + " A, " +
           (mm2 ? print_field(*mm2, FieldUnit::mm2, app.book().shop.display.units) : std::to_string(awg) + " AWG");
}

/// Sets the voltage when breaker and wiring fit it or nothing is known of it, and asks otherwise. False: it is refused.
bool choose_line(App& app, double v) {
    supply::Circuit circuit = app.book().shop.circuit;
    circuit.line = Voltage{v, volt};
    const auto usual = supply::usual_supplies(circuit.line);
    const auto fits = [&](const supply::UsualSupply& s) { return supply::is_fed_by(circuit, s); };
    if (usual.empty() || circuit.line == app.book().shop.circuit.line ||
        std::any_of(usual.begin(), usual.end(), fits)) {
        app.scratch.asked_line_v.reset();
        return app.set(line_path, v, "Voltage", app.ui().edit() ? App::By::typing : App::By::touch);
    }
    app.scratch.asked_line_v = v;
    return true;
}

/// What belongs to the voltage that was asked for, or what is there now.
void offer(Body& body, double v) {
    App& app = body.app;
    const supply::Circuit& now = app.book().shop.circuit;
    const auto usual = supply::usual_supplies(Voltage{v, volt});
    const bool all_three =
        std::all_of(usual.begin(), usual.end(), [](const supply::UsualSupply& s) { return s.phases == 3; });
    std::vector<Choice> items;
    for (const supply::UsualSupply& s : usual) {
        items.push_back(
            {"supply/" + std::to_string(items.size()), fed_by(app, s.breaker_a, s.run_awg.value_or(0), s.run_mm2) +
                                                           (s.phases == 3 && !all_three ? ", 3 ph" : "")});
    }
    items.push_back({"supply/keep", "Keep " + fed_by(app, now.breaker.in(ampere), now.run_awg, now.run_mm2)});
    body.text("supply/ask", volts(v) + (all_three ? ", three-phase," : "") +
                                " usually comes on another breaker and wire. Which is it?");
    body.gap(8);
    if (const auto touched = body.choices("supply/offer", "Breaker and wire at " + volts(v), items, 2)) {
        app.ui().stop_edit();
        app.scratch.asked_line_v.reset();
        if (*touched < usual.size()) {
            app.take(document::use_supply(app.book(), usual[*touched]),
                     "Supply: " + volts(v) + ", " + items[*touched].label);
        } else {
            app.set(line_path, v, "Voltage");
        }
    }
    body.gap(12);
}

} // namespace

void supply_choice(Body& body) {
    App& app = body.app;
    const double now = app.book().shop.circuit.line.in(volt);
    const double shown = app.scratch.asked_line_v.value_or(now);
    std::vector<Choice> items;
    for (const double v : lines) {
        items.push_back({std::string("field/") + line_path + '/' + volts(v), volts(v), shown == v});
    }
    if (const auto touched = body.choices(std::string("choice/") + line_path, "Voltage", items, 5)) {
        app.ui().stop_edit();
        choose_line(app, lines[*touched]);
    }
    body.gap(12);
    if (app.scratch.asked_line_v) {
        offer(body, *app.scratch.asked_line_v);
    }
    body.field(line_path, "Voltage", choose_line);
}

const char* country_name(const App& app) {
    return country_names[static_cast<std::size_t>(country_of(app.book().shop))];
}

void country_choice(Body& body) {
    constexpr const char* words_of_rules[] = {
        "Wiring by the NEC, limits by OSHA.", "Wiring by IEC 60364, limits by HSE.",
        "Wiring by IEC 60364, limits by EU directives.", "Wiring by the kind of breaker, limits by the stricter rule."};
    constexpr const char* foreign =
        "This breaker belongs to another country's rules. Choose the supply again under Circuit.";
    App& app = body.app;
    const Shop& shop = app.book().shop;
    const auto now = static_cast<std::size_t>(country_of(shop));
    body.heading("title/shop.country", "Country of the shop");
    std::vector<Choice> items;
    for (std::size_t i = 0; i < std::size(country_names); ++i) {
        items.push_back({std::string("field/shop.country/") + country_names[i], country_names[i], i == now});
    }
    if (const auto touched = body.choices("choice/shop.country", "Country of the shop", items, 2)) {
        app.ui().stop_edit();
        app.take(document::set(app.book(), "shop.country", country_words[*touched]),
                 std::string("Country: ") + country_names[*touched]);
    }
    body.gap(6);
    const Tokens& t = body.ui().tokens();
    const bool mixed = is_foreign(static_cast<Country>(now), shop.circuit.breaker_rule);
    body.words("country/rules", Type::text, mixed ? foreign : words_of_rules[now], mixed ? t.caution : t.quiet);
    body.gap(12);
}

void plug_choice(Body& body) {
    App& app = body.app;
    const Country country = country_of(app.book().shop);
    const auto& now = app.book().shop.circuit.plug;
    std::vector<Choice> items{{"field/shop.circuit.plug/none", "Not given", !now}};
    std::vector<const supply::PlugRow*> plugs{nullptr};
    for (const supply::PlugRow& plug : supply::all_plugs()) {
        if (supply::is_used_in(plug, country) || now == plug.plug) {
            items.push_back({std::string("field/shop.circuit.plug/") + std::string(plug.name), std::string(plug.name),
                             now == plug.plug});
            plugs.push_back(&plug);
        }
    }
    body.heading("title/shop.circuit.plug", "Plug");
    if (const auto touched = body.choices("choice/shop.circuit.plug", "Plug", items, 3)) {
        app.ui().stop_edit();
        app.take(document::use_plug(app.book(), plugs[*touched] ? std::optional(plugs[*touched]->plug) : std::nullopt),
                 "Plug: " + items[*touched].label);
    }
    body.gap(12);
}

void there_words(Body& body) {
    App& app = body.app;
    const auto& there = app.worksheet().there;
    std::string text;
    if (there) {
        const UnitSystem units = app.book().shop.display.units;
        text = "At " + show(there->current).whole() + ", the most here: clean to " +
               show(there->limits.clean, units).whole() + ", pierces " + show(there->limits.pierce, units).whole() +
               ", severs " + show(there->limits.sever, units).whole() + '.';
    } else {
        text = "Nothing can be cut on this circuit as it is.";
    }
    body.text("circuit/there", text);
    body.gap(10);
}

} // namespace torchside::web
