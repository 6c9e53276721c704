#include "web/screens/shop/supply_choice.hpp"

#include <algorithm>
#include <vector>

#include "core/quantity/print.hpp"
#include "core/schema/intent.hpp"
#include "core/supply/plug.hpp"
#include "core/supply/usual.hpp"
#include "core/worksheet/country.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/country.hpp"
#include "generated/words/supply.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr double lines[] = {120, 208, 230, 240, 400};
constexpr Word country_names[] = {words::country::us, words::country::uk, words::country::eu, words::country::other};
constexpr const char* country_words[] = {"us", "uk", "eu", "other"};
constexpr const char* line_path = "shop.circuit.line_v";

std::string volts(double v) {
    return print_trimmed(v, 1) + " V";
}

Text fed_by(const App& app, double breaker_a, int awg, const std::optional<double>& mm2, bool three_phases = false) {
    const std::string breaker = print_trimmed(breaker_a, 1, app.units()) + " A";
    const Text wire = mm2 ? words::verbatim(print_field(*mm2, FieldUnit::mm2, app.units()))
                          : Text(words::circuit::Awg{.number = awg});
    return three_phases ? Text(words::supply::FeedThree{.breaker = breaker, .wire = wire})
                        : words::supply::Feed{.breaker = breaker, .wire = wire};
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
        return app.set(line_path, v, words::supply::voltage, app.ui().edit() ? App::By::typing : App::By::touch);
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
        const bool marked = s.phases == 3 && !all_three;
        items.push_back({"supply/" + std::to_string(items.size()),
                         app.say(fed_by(app, s.breaker_a, s.run_awg.value_or(0), s.run_mm2, marked))});
    }
    items.push_back({"supply/keep", app.say(words::supply::Keep{
                                        .feed = fed_by(app, now.breaker.in(ampere), now.run_awg, now.run_mm2)})});
    const std::string line = volts(v);
    body.text("supply/ask",
              app.say(all_three ? Text(words::supply::AskThree{.volts = line}) : words::supply::Ask{.volts = line}));
    body.gap(8);
    if (const auto touched = body.choices("supply/offer", app.say(words::supply::Offer{.volts = line}), items, 2)) {
        app.ui().stop_edit();
        app.scratch.asked_line_v.reset();
        if (*touched < usual.size()) {
            app.take(document::use_supply(app.book(), usual[*touched]),
                     app.say(words::supply::Chosen{.feed = items[*touched].label, .volts = line}));
        } else {
            app.set(line_path, v, words::supply::voltage);
        }
    }
    body.gap(12);
}

/// What stands at this voltage, for the way back to it.
void remember_supply(App& app) {
    const Workbook& book = app.book();
    std::vector<SupplyLeft>& left = app.scratch.supplies_left;
    const auto here = std::find_if(left.begin(), left.end(),
                                   [&](const SupplyLeft& s) { return s.circuit.line == book.shop.circuit.line; });
    const SupplyLeft now{book.shop.circuit, book.shop.machine.phases, book.job.current};
    if (here != left.end()) {
        *here = now;
    } else {
        left.push_back(now);
    }
}

/// The supply that was left at this voltage, put back whole; false: none was.
bool back_to_supply(App& app, double v) {
    const std::vector<SupplyLeft>& left = app.scratch.supplies_left;
    const Voltage line{v, volt};
    const auto before =
        std::find_if(left.begin(), left.end(), [&](const SupplyLeft& s) { return s.circuit.line == line; });
    if (before == left.end() || app.book().shop.circuit.line == line) {
        return false;
    }
    Workbook next = app.book();
    next.shop.circuit = before->circuit;
    next.shop.machine.phases = before->phases;
    next.job.current = before->job_current;
    const supply::Circuit& c = before->circuit;
    const Text feed = fed_by(app, c.breaker.in(ampere), c.run_awg, c.run_mm2);
    app.scratch.asked_line_v.reset();
    app.take(std::move(next), app.say(words::supply::Chosen{.feed = feed, .volts = volts(v)}));
    return true;
}

} // namespace

void supply_choice(Body& body) {
    App& app = body.app;
    remember_supply(app);
    const double now = app.book().shop.circuit.line.in(volt);
    const double shown = app.scratch.asked_line_v.value_or(now);
    std::vector<Choice> items;
    for (const double v : lines) {
        items.push_back({std::string("field/") + line_path + '/' + volts(v), volts(v), shown == v});
    }
    if (const auto touched = body.choices(std::string("choice/") + line_path, words::supply::voltage, items, 5)) {
        app.ui().stop_edit();
        if (!back_to_supply(app, lines[*touched])) {
            choose_line(app, lines[*touched]);
        }
    }
    body.gap(12);
    if (app.scratch.asked_line_v) {
        offer(body, *app.scratch.asked_line_v);
    }
    body.field(line_path, words::supply::voltage, choose_line);
}

Word country_name(const App& app) {
    return country_names[static_cast<std::size_t>(country_of(app.book().shop))];
}

void country_choice(Body& body) {
    constexpr Word rules[] = {words::country::rules_us, words::country::rules_uk, words::country::rules_eu,
                              words::country::rules_other};
    App& app = body.app;
    const Shop& shop = app.book().shop;
    const auto now = static_cast<std::size_t>(country_of(shop));
    body.heading("title/shop.country", words::country::title);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < std::size(country_names); ++i) {
        items.push_back({std::string("field/shop.country/") + country_words[i], app.say(country_names[i]), i == now});
    }
    if (const auto touched = body.choices("choice/shop.country", words::country::title, items, 2)) {
        app.ui().stop_edit();
        app.take(document::set(app.book(), "shop.country", country_words[*touched]),
                 app.say(words::country::Chosen{.name = country_names[*touched]}));
    }
    body.gap(6);
    const Tokens& t = body.ui().tokens();
    const bool mixed = is_foreign(static_cast<Country>(now), shop.circuit.breaker_rule);
    body.words("country/rules", Type::text, mixed ? words::country::foreign : rules[now], mixed ? t.caution : t.quiet);
    body.gap(12);
}

void plug_choice(Body& body) {
    App& app = body.app;
    const Country country = country_of(app.book().shop);
    const auto& now = app.book().shop.circuit.plug;
    std::vector<Choice> items{{"field/shop.circuit.plug/none", app.say(words::supply::no_plug), !now}};
    std::vector<const supply::PlugRow*> plugs{nullptr};
    for (const supply::PlugRow& plug : supply::all_plugs()) {
        if (supply::is_used_in(plug, country) || now == plug.plug) {
            items.push_back({std::string("field/shop.circuit.plug/") + std::string(plug.name), std::string(plug.name),
                             now == plug.plug});
            plugs.push_back(&plug);
        }
    }
    body.heading("title/shop.circuit.plug", words::supply::plug);
    if (const auto touched = body.choices("choice/shop.circuit.plug", words::supply::plug, items, 3)) {
        app.ui().stop_edit();
        app.take(document::use_plug(app.book(), plugs[*touched] ? std::optional(plugs[*touched]->plug) : std::nullopt),
                 app.say(words::supply::PlugChosen{.name = items[*touched].label}));
    }
    body.gap(12);
}

void there_words(Body& body, Word nothing) {
    App& app = body.app;
    const auto& there = app.worksheet().there;
    Text text = nothing;
    if (there) {
        text = words::supply::There{.clean = words::limit(there->limits.clean),
                                    .current = there->current,
                                    .pierce = words::limit(there->limits.pierce),
                                    .sever = words::limit(there->limits.sever)};
    }
    body.text("circuit/there", app.say(text));
    body.gap(10);
}

} // namespace torchside::web
