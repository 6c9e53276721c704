// Circuit: does this current hold on this circuit, what gives first, and what would hold.
#include "core/quantity/print.hpp"
#include "core/worksheet/supply_help.hpp"
#include "generated/words/common.hpp"
#include "generated/words/low_supply.hpp"
#include "generated/words/supply.hpp"
#include "generated/words/title.hpp"
#include "generated/words/wiring.hpp"
#include "web/screens/cut/circuit_picture.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/shop/supply_choice.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// The highest current of this circuit, when the one that is set is more.
void remedy(Body& body) {
    App& app = body.app;
    const supply::Report& r = app.worksheet().circuit;
    const double now = app.book().job.current.in(ampere);
    if (!r.highest_current || r.highest_below_machine || !(r.highest_current->in(ampere) < now)) {
        return;
    }
    // Down to a whole ampere, the way a dial is set: rounding up would be too much.
    const double amps = static_cast<double>(static_cast<int>(r.highest_current->in(ampere)));
    body.gap(8);
    if (body.button("circuit/use", app.say(words::common::Use{.what = Current{amps, ampere}}), Look::main)) {
        app.set("job.current_a", amps, words::title::current);
    }
    body.gap(8);
}

/// To where a stop of the drawn circuit is entered.
void go_to(App& app, supply::Stop stop) {
    switch (stop) {
    case supply::Stop::panel:
        return edit_entry(app, "shop.circuit.line_v");
    case supply::Stop::breaker:
        return edit_entry(app, "shop.circuit.breaker_a");
    case supply::Stop::run:
        return edit_entry(app, "shop.circuit.run_m");
    case supply::Stop::cord:
        return edit_entry(app, "shop.circuit.cord_m");
    case supply::Stop::machine:
        return app.open("machine");
    case supply::Stop::torch:
        return app.open("stock");
    }
}

void figures(Body& body) {
    const App& app = body.app;
    const supply::Report& r = app.worksheet().circuit;
    const Units units = app.units();
    body.line("circuit/input", words::wiring::input, print(r.input, units).text());
    body.line("circuit/rated", words::wiring::input_rated, print(r.input_at_rated_load, units).text());
    body.line("circuit/effective", words::wiring::effective, print(r.effective, units).text());
    body.line("circuit/machine_v", words::wiring::at_machine,
              app.say(words::wiring::Lost{.share = words::percent(r.drop_share, 1), .volts = r.machine}));
    body.line("circuit/arc", words::wiring::arc, print(r.arc_per_10_min, units).text());
    if (r.highest_current) {
        // Down to a tenth: rounded up it would be too much.
        body.line("circuit/highest", words::wiring::highest,
                  print(Current{std::floor(r.highest_current->in(ampere)*10) / 10, ampere}, units).text());
    }
    const supply::Circuit& circuit = app.book().shop.circuit;
    const auto& run_awg = circuit.marked_75c ? r.run_min_awg : r.run_min_awg_60c;
    if (circuit.run_mm2 ? r.run_min_mm2.has_value() : run_awg.has_value()) {
        body.line("circuit/run_min", words::wiring::run_least,
                  circuit.run_mm2 ? print_field(*r.run_min_mm2, FieldUnit::mm2, units)
                                  : std::to_string(*run_awg) + " AWG");
    }
    if (r.by_section ? r.cord_min_mm2.has_value() : r.cord_min_awg.has_value()) {
        body.line("circuit/cord_min", words::wiring::cord_least,
                  r.by_section ? print_field(*r.cord_min_mm2, FieldUnit::mm2, units)
                               : std::to_string(*r.cord_min_awg) + " AWG");
    }
    if (r.generator_min) {
        body.line("circuit/generator_min", words::wiring::generator_least,
                  print_significant(r.generator_min->in(volt_ampere) / 1000, 2, units) + " kVA");
    }
}

/// The machine's rating on a low line: asked first, the rest once it is known that there is one.
void low_fields(Body& body) {
    constexpr PathLabel largest[] = {{"shop.machine.low_voltage.max_current_a", words::low_supply::largest}};
    constexpr PathLabel others[] = {{"shop.machine.low_voltage.duty_cycle", words::low_supply::duty_field},
                                    {"shop.machine.low_voltage.duty_current_a", words::low_supply::duty_current},
                                    {"shop.machine.low_voltage.i1max_a", words::low_supply::i1max},
                                    {"shop.machine.low_voltage.i1eff_a", words::low_supply::i1eff}};
    body.heading("circuit/low", words::low_supply::fields);
    body.fields(largest);
    if (body.app.book().shop.machine.low_voltage.max_current) {
        body.fields(others);
    }
    body.gap(10);
}

/// What a small supply still does.
void help_rows(Body& body, const SupplyHelp& help) {
    for (std::size_t i = 0; i < help.says.size(); ++i) {
        body.text("circuit/help/" + std::to_string(i), body.app.say(help.says[i]));
        body.gap(8);
    }
}

/// What differs from one place of work to the next; wires by gauge or by section, as they are sold here.
void first_fields(Body& body, const SupplyHelp& help) {
    constexpr PathLabel by_gauge[] = {{"shop.circuit.breaker_a", words::wiring::breaker},
                                      {"shop.circuit.run_m", words::wiring::run_length},
                                      {"shop.circuit.run_awg", words::wiring::run_gauge},
                                      {"shop.circuit.cord_m", words::wiring::extension},
                                      {"shop.circuit.cord_awg", words::wiring::cord_gauge}};
    constexpr PathLabel by_section[] = {{"shop.circuit.breaker_a", words::wiring::breaker},
                                        {"shop.circuit.run_m", words::wiring::run_length},
                                        {"shop.circuit.run_mm2", words::wiring::run_section},
                                        {"shop.circuit.cord_m", words::wiring::extension},
                                        {"shop.circuit.cord_mm2", words::wiring::cord_section}};
    supply_choice(body);
    if (supply::is_low(body.app.book().shop.circuit.line)) {
        low_fields(body);
    }
    body.fields(body.app.worksheet().circuit.by_section ? by_section : by_gauge);
    body.gap(10);
    help_rows(body, help);
}

void other_fields(Body& body) {
    constexpr const char* rules[] = {"ul489", "iec60898b", "iec60898c", "iec60898d"};
    constexpr Label rule_names[] = {words::wiring::ul, words::wiring::iec_b, words::wiring::iec_c,
                                    words::wiring::iec_d};
    constexpr PathLabel by_gauge[] = {{"shop.circuit.marked_75c", words::wiring::marked},
                                      {"shop.circuit.run_mm2", words::wiring::run_section},
                                      {"shop.circuit.cord_mm2", words::wiring::cord_section}};
    constexpr PathLabel by_section[] = {{"shop.circuit.run_awg", words::wiring::run_gauge},
                                        {"shop.circuit.cord_awg", words::wiring::cord_gauge}};
    constexpr PathLabel others[] = {{"shop.circuit.ambient_c", words::wiring::air},
                                    {"shop.circuit.other_load_a", words::wiring::other_load},
                                    {"shop.circuit.compressor_motor_hp", words::wiring::motor},
                                    {"shop.circuit.generator_va", words::wiring::generator},
                                    {"shop.circuit.dedicated", words::wiring::dedicated}};
    body.heading("circuit/fields", words::wiring::more);
    country_choice(body);
    body.word_choice("shop.circuit.breaker_rule", words::wiring::rule, rules, rule_names);
    plug_choice(body);
    body.app.worksheet().circuit.by_section ? body.fields(by_section) : body.fields(by_gauge);
    body.fields(others);
}

/// What it all comes to, below what was entered.
void outcome(Body& body) {
    Ui& ui = body.ui();
    const supply::Report& r = body.app.worksheet().circuit;
    body.heading("circuit/chain/title", words::wiring::chain);
    const auto stop = chain_picture(ui, body.inside(chain_picture_height(ui, r.chain)), r.chain, body.app.speech());
    body.gap(12);
    body.heading("circuit/band/title", words::wiring::band);
    band_picture(ui, body.inside(band_picture_height()), r.band, r.verdict == supply::CircuitVerdict::holds,
                 body.app.speech());
    body.gap(8);
    figures(body);
    for (std::size_t i = 0; i < r.checks.size(); ++i) {
        const supply::Check& check = r.checks[i];
        const Sign sign = check.ok                                   ? Sign::holds
                          : check.message.severity == Severity::stop ? Sign::stop
                                                                     : Sign::caution;
        body.sign("circuit/check/" + std::to_string(i), sign, say(check.message, body.app.speech()),
                  body.app.say(check.source));
    }
    body.text("circuit/guard", body.app.say(r.guard));
    body.gap(8);
    if (stop) {
        go_to(body.app, *stop);
    }
}

} // namespace

void circuit_panel(App& app, PanelAt at) {
    const supply::Report r = app.worksheet().circuit; // as the panel begins: a touch below may make another
    const SupplyHelp help = supply_help(app.book(), app.worksheet(), app.model());
    const auto verdict = [&](Body& body) {
        body.sign("circuit/summary", circuit_sign(app), say_summary(r.message, app.speech()),
                  app.say(r.message.remedy));
    };
    const auto body_of = [&](Body& body) {
        body.gap(10);
        there_words(body, help.bursts ? words::low_supply::pauses : words::supply::nothing);
        remedy(body);
        first_fields(body, help);
        outcome(body);
        other_fields(body);
        body.notes("circuit/basis", words::common::based_on, app.say_all(r.basis));
        body.gap(20);
    };
    framed_panel(app, at, {"circuit", words::wiring::title, Drawer::of(verdict)}, Drawer::of(body_of));
}

} // namespace torchside::web
