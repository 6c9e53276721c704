// Circuit: does this current hold on this circuit, what gives first, and what would hold.
#include "core/quantity/print.hpp"
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
    if (body.button("circuit/use", "Use " + print_fixed(amps, 0) + " A", Look::main)) {
        app.set("job.current_a", amps, "Current");
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
    const UnitSystem units = app.book().shop.display.units;
    body.line("circuit/input", "Draws while cutting", print(r.input).text());
    body.line("circuit/rated", "At the rated load voltage", print(r.input_at_rated_load).text());
    body.line("circuit/effective", "Heating, by duty", print(r.effective).text());
    body.line("circuit/machine_v", "At the machine",
              print(r.machine).text() + ", " + print_percent(r.drop_share, 1).text() + " lost");
    body.line("circuit/arc", "Arc in ten minutes", print(r.arc_per_10_min).text());
    if (r.highest_current) {
        // Down to a tenth: rounded up it would be too much.
        body.line("circuit/highest", "Highest current here",
                  print(Current{std::floor(r.highest_current->in(ampere)*10) / 10, ampere}).text());
    }
    const supply::Circuit& circuit = app.book().shop.circuit;
    const auto& run_awg = circuit.marked_75c ? r.run_min_awg : r.run_min_awg_60c;
    if (circuit.run_mm2 ? r.run_min_mm2.has_value() : run_awg.has_value()) {
        body.line("circuit/run_min", "Wiring, at least",
                  circuit.run_mm2 ? print_field(*r.run_min_mm2, FieldUnit::mm2, units)
                                  : std::to_string(*run_awg) + " AWG");
    }
    if (r.by_section ? r.cord_min_mm2.has_value() : r.cord_min_awg.has_value()) {
        body.line("circuit/cord_min", "Extension cord, at least",
                  r.by_section ? print_field(*r.cord_min_mm2, FieldUnit::mm2, units)
                               : std::to_string(*r.cord_min_awg) + " AWG");
    }
    if (r.generator_min) {
        body.line("circuit/generator_min", "Generator, at least",
                  print_significant(r.generator_min->in(volt_ampere) / 1000, 2) + " kVA");
    }
}

/// What differs from one place of work to the next; wires by gauge or by section, as they are sold here.
void first_fields(Body& body) {
    constexpr PathLabel by_gauge[] = {{"shop.circuit.breaker_a", "Breaker"},
                                      {"shop.circuit.run_m", "Wiring, one way"},
                                      {"shop.circuit.run_awg", "Wiring gauge"},
                                      {"shop.circuit.cord_m", "Extension cord"},
                                      {"shop.circuit.cord_awg", "Cord gauge"}};
    constexpr PathLabel by_section[] = {{"shop.circuit.breaker_a", "Breaker"},
                                        {"shop.circuit.run_m", "Wiring, one way"},
                                        {"shop.circuit.run_mm2", "Wiring section"},
                                        {"shop.circuit.cord_m", "Extension cord"},
                                        {"shop.circuit.cord_mm2", "Cord section"}};
    supply_choice(body);
    body.fields(body.app.worksheet().circuit.by_section ? by_section : by_gauge);
}

void other_fields(Body& body) {
    constexpr const char* rules[] = {"ul489", "iec60898b", "iec60898c", "iec60898d"};
    constexpr const char* rule_names[] = {"UL 489", "IEC B", "IEC C", "IEC D"};
    constexpr PathLabel by_gauge[] = {{"shop.circuit.marked_75c", "Marked 75 °C"},
                                      {"shop.circuit.run_mm2", "Wiring section"},
                                      {"shop.circuit.cord_mm2", "Cord section"}};
    constexpr PathLabel by_section[] = {{"shop.circuit.run_awg", "Wiring gauge"},
                                        {"shop.circuit.cord_awg", "Cord gauge"}};
    constexpr PathLabel others[] = {{"shop.circuit.ambient_c", "Air at the wires"},
                                    {"shop.circuit.other_load_a", "Other load"},
                                    {"shop.circuit.compressor_motor_hp", "Compressor motor"},
                                    {"shop.circuit.generator_va", "Generator"},
                                    {"shop.circuit.dedicated", "Wired for this machine"}};
    body.heading("circuit/fields", "More about the circuit");
    country_choice(body);
    body.word_choice("shop.circuit.breaker_rule", "Breaker made to", rules, rule_names);
    plug_choice(body);
    body.app.worksheet().circuit.by_section ? body.fields(by_section) : body.fields(by_gauge);
    body.fields(others);
}

/// What it all comes to, below what was entered.
void outcome(Body& body) {
    Ui& ui = body.ui();
    const supply::Report& r = body.app.worksheet().circuit;
    body.heading("circuit/chain/title", "From the panel to the torch");
    const auto stop = chain_picture(ui, body.inside(chain_picture_height(ui, r.chain)), r.chain, body.app.speech());
    body.gap(12);
    body.heading("circuit/band/title", "When the breaker trips: latest times, none promised");
    band_picture(ui, body.inside(band_picture_height()), r.band, r.verdict == supply::CircuitVerdict::holds);
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
    const auto verdict = [&](Body& body) {
        body.sign("circuit/summary", circuit_sign(app), say_summary(r.message, app.speech()),
                  app.say(r.message.remedy));
    };
    const auto body_of = [&](Body& body) {
        body.gap(10);
        there_words(body);
        remedy(body);
        first_fields(body);
        outcome(body);
        other_fields(body);
        body.notes("circuit/basis", "What this rests on", app.say_all(r.basis));
        body.gap(20);
    };
    framed_panel(app, at, {"circuit", "Circuit, panel to torch", Drawer::of(verdict)}, Drawer::of(body_of));
}

} // namespace torchside::web
