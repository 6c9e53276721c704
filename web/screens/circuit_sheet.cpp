// Circuit: does this current hold on this circuit, what gives first, and what would hold.
#include "core/quantity/print.hpp"
#include "web/screens/circuit_picture.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/supply_choice.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// The highest current of this circuit, when the one that is set is more.
float way_out(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const supply::Report& r = app.sheet().circuit;
    const double now = app.book().job.current.in(ampere);
    if (!r.highest_current || r.highest_below_machine || !(r.highest_current->in(ampere) < now)) {
        return 0;
    }
    // Down to a whole ampere, the way a dial is set: rounding up would be too much.
    const double amps = static_cast<double>(static_cast<int>(r.highest_current->in(ampere)));
    if (button(ui, "circuit/use", {at.x, at.y + 8, w, ui.reach()}, "Use " + print_fixed(amps, 0) + " A", Look::main)) {
        app.set("job.current_a", amps, "Current");
    }
    return ui.reach() + 16;
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

float figures(App& app, Point at, float w) {
    const supply::Report& r = app.sheet().circuit;
    const UnitSystem units = app.book().shop.display.units;
    float y = at.y;
    const auto put = [&](const char* id, const char* name, const std::string& value) {
        y += line(app, id, {at.x, y}, w, name, value);
    };
    put("circuit/input", "Draws while cutting", print(r.input).text());
    put("circuit/rated", "At the rated load voltage", print(r.input_at_rated_load).text());
    put("circuit/effective", "Heating, by duty", print(r.effective).text());
    put("circuit/machine_v", "At the machine",
        print(r.machine).text() + ", " + print_percent(r.drop_share, 1).text() + " lost");
    put("circuit/arc", "Arc in ten minutes", print(r.arc_per_10_min).text());
    if (r.highest_current) {
        // Down to a tenth: rounded up it would be too much.
        put("circuit/highest", "Highest current here",
            print(Current{std::floor(r.highest_current->in(ampere)*10) / 10, ampere}).text());
    }
    const supply::Circuit& circuit = app.book().shop.circuit;
    const auto& run_awg = circuit.marked_75c ? r.run_min_awg : r.run_min_awg_60c;
    if (circuit.run_mm2 ? r.run_min_mm2.has_value() : run_awg.has_value()) {
        put("circuit/run_min", "Wiring, at least",
            circuit.run_mm2 ? print_field(*r.run_min_mm2, FieldUnit::mm2, units) : std::to_string(*run_awg) + " AWG");
    }
    if (r.by_section ? r.cord_min_mm2.has_value() : r.cord_min_awg.has_value()) {
        put("circuit/cord_min", "Extension cord, at least",
            r.by_section ? print_field(*r.cord_min_mm2, FieldUnit::mm2, units)
                         : std::to_string(*r.cord_min_awg) + " AWG");
    }
    if (r.generator_min) {
        put("circuit/generator_min", "Generator, at least",
            print_significant(r.generator_min->in(volt_ampere) / 1000, 2) + " kVA");
    }
    return y - at.y;
}

using Path = const char* const[2];

float entries(App& app, Rect body, float y0, std::span<Path> paths) {
    float y = y0;
    for (const auto& path : paths) {
        y += entry(app, {body.x, y, body.w, 0}, path[0], path[1]);
    }
    return y - y0;
}

/// What differs from one place of work to the next; wires by gauge or by section, as they are sold here.
float first_fields(App& app, Rect body, float y0) {
    constexpr const char* by_gauge[][2] = {{"shop.circuit.breaker_a", "Breaker"},
                                           {"shop.circuit.run_m", "Wiring, one way"},
                                           {"shop.circuit.run_awg", "Wiring gauge"},
                                           {"shop.circuit.cord_m", "Extension cord"},
                                           {"shop.circuit.cord_awg", "Cord gauge"}};
    constexpr const char* by_section[][2] = {{"shop.circuit.breaker_a", "Breaker"},
                                             {"shop.circuit.run_m", "Wiring, one way"},
                                             {"shop.circuit.run_mm2", "Wiring section"},
                                             {"shop.circuit.cord_m", "Extension cord"},
                                             {"shop.circuit.cord_mm2", "Cord section"}};
    const float y = y0 + supply_choice(app, {body.x, y0, body.w, 0});
    return y + (app.sheet().circuit.by_section ? entries(app, body, y, by_section) : entries(app, body, y, by_gauge)) -
           y0;
}

float other_fields(App& app, Rect body, float y0) {
    constexpr const char* rules[] = {"ul489", "iec60898b", "iec60898c", "iec60898d"};
    constexpr const char* rule_names[] = {"UL 489", "IEC B", "IEC C", "IEC D"};
    constexpr const char* by_gauge[][2] = {{"shop.circuit.marked_75c", "Marked 75 °C"},
                                           {"shop.circuit.run_mm2", "Wiring section"},
                                           {"shop.circuit.cord_mm2", "Cord section"}};
    constexpr const char* by_section[][2] = {{"shop.circuit.run_awg", "Wiring gauge"},
                                             {"shop.circuit.cord_awg", "Cord gauge"}};
    constexpr const char* paths[][2] = {{"shop.circuit.ambient_c", "Air at the wires"},
                                        {"shop.circuit.other_load_a", "Other load"},
                                        {"shop.circuit.compressor_motor_hp", "Compressor motor"},
                                        {"shop.circuit.generator_va", "Generator"},
                                        {"shop.circuit.dedicated", "Wired for this machine"}};
    float y = y0 + section(app.ui(), "circuit/fields", {body.x + sheet_margin, y0}, body.w, "More about the circuit");
    y += country_choice(app, {body.x, y, body.w, 0});
    y += word_choice(app, {body.x, y, body.w, 0}, "shop.circuit.breaker_rule", "Breaker made to", rules, rule_names);
    y += plug_choice(app, {body.x, y, body.w, 0});
    y += app.sheet().circuit.by_section ? entries(app, body, y, by_section) : entries(app, body, y, by_gauge);
    return y + entries(app, body, y, paths) - y0;
}

/// What it all comes to, below what was entered.
float outcome(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const supply::Report& r = app.sheet().circuit;
    const float x = at.x;
    float y = at.y + section(ui, "circuit/chain/title", at, w, "From the panel to the torch");
    const float chain = chain_picture_height(ui, r.chain);
    const auto stop = chain_picture(ui, {x, y, w, chain}, r.chain, app.speech());
    y += chain + 12;
    y += section(ui, "circuit/band/title", {x, y}, w, "When the breaker trips: latest times, none promised");
    band_picture(ui, {x, y, w, band_picture_height()}, r.band, r.verdict == supply::CircuitVerdict::holds);
    y += band_picture_height() + 8;
    y += figures(app, {x, y}, w);
    for (std::size_t i = 0; i < r.checks.size(); ++i) {
        const supply::Check& check = r.checks[i];
        const Sign sign = check.ok                                   ? Sign::holds
                          : check.message.severity == Severity::stop ? Sign::stop
                                                                     : Sign::caution;
        y += signed_words(app, "circuit/check/" + std::to_string(i), sign, {x, y}, w, say(check.message, app.speech()),
                          app.say(check.source));
    }
    y += words(ui, "circuit/guard", Type::text, {x, y}, w, app.say(r.guard), ui.tokens().ink) + 8;
    if (stop) {
        go_to(app, *stop);
    }
    return y - at.y;
}

float basis(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const supply::Report& r = app.sheet().circuit;
    float y = at.y + section(ui, "circuit/basis", at, w, "What this rests on");
    for (std::size_t i = 0; i < r.basis.size(); ++i) {
        const std::string id = "circuit/basis/" + std::to_string(i);
        y += words(ui, id, Type::label, {at.x, y}, w, app.say(r.basis[i]), ui.tokens().quiet) + 6;
    }
    return y - at.y;
}

} // namespace

void circuit_sheet(App& app, Rect place, bool closable) {
    const supply::Report r = app.sheet().circuit; // as the sheet begins: a touch below may make another
    const float w = place.w - 2 * sheet_margin;
    const auto verdict = [&](Rect at) {
        return signed_words(app, "circuit/summary", circuit_sign(app), {at.x + sheet_margin, at.y}, w,
                            say_summary(r.message, app.speech()), app.say(r.message.remedy));
    };
    const auto body_of = [&](Rect body) {
        const float x = body.x + sheet_margin;
        float y = body.y + 10;
        y += there_words(app, {x, y}, w);
        y += way_out(app, {x, y}, w);
        y += first_fields(app, body, y);
        y += outcome(app, {x, y}, w);
        y += other_fields(app, body, y);
        y += basis(app, {x, y}, w);
        return y + 20 - body.y;
    };
    SheetFrame frame{"circuit", "Circuit, panel to torch", closable};
    frame.verdict_height =
        signed_words_height(app.ui(), w, say_summary(r.message, app.speech()), app.say(r.message.remedy));
    frame.verdict = Drawer::of(verdict);
    framed_sheet(app, place, frame, Drawer::of(body_of));
}

} // namespace torchside::web
