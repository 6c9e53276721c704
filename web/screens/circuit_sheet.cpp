// Circuit: does this current hold on this circuit, what gives first, and what would hold.
#include "core/quantity/print.hpp"
#include "web/screens/circuit_picture.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

float answer(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const supply::Report& r = app.sheet().circuit;
    const bool holds = r.verdict == supply::CircuitVerdict::holds;
    const Sign sign = holds ? Sign::holds : r.verdict == supply::CircuitVerdict::may_trip ? Sign::caution : Sign::stop;
    float y = at.y + signed_words(app, "circuit/summary", sign, at, w, r.summary, r.way_out) + 8;
    const double now = app.book().job.current.in(ampere);
    if (r.highest_current && !r.highest_below_machine && r.highest_current->in(ampere) < now && !holds) {
        // Down to a whole ampere, the way a dial is set: rounding up would trip.
        const double amps = static_cast<double>(static_cast<int>(r.highest_current->in(ampere)));
        if (button(ui, "circuit/use", {at.x, y, w, ui.reach()}, "Use " + print_fixed(amps, 0) + " A: it holds here",
                   Look::main)) {
            app.set("job.current_a", amps);
        }
        y += ui.reach() + 8;
    }
    return y - at.y;
}

float figures(App& app, Point at, float w) {
    const supply::Report& r = app.sheet().circuit;
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
        put("circuit/highest", "Highest output that holds", print_fixed(r.highest_current->in(ampere), 1) + " A");
    }
    if (r.run_min_awg) {
        put("circuit/run_min", "Wiring, at least", std::to_string(*r.run_min_awg) + " AWG");
    }
    if (r.cord_min_awg) {
        put("circuit/cord_min", "Extension cord, at least", std::to_string(*r.cord_min_awg) + " AWG");
    }
    if (r.generator_min) {
        put("circuit/generator_min", "Generator, at least",
            print_significant(r.generator_min->in(volt_ampere) / 1000, 2) + " kVA");
    }
    return y - at.y;
}

float fields(App& app, Rect body, float y0) {
    constexpr double lines[] = {120, 208, 230, 240, 400};
    constexpr const char* line_names[] = {"120 V", "208 V", "230 V", "240 V", "400 V"};
    constexpr const char* rules[] = {"ul489", "iec60898b", "iec60898c", "iec60898d"};
    constexpr const char* rule_names[] = {"UL 489", "IEC B", "IEC C", "IEC D"};
    constexpr const char* paths[][2] = {
        {"shop.circuit.breaker_a", "Breaker"},       {"shop.circuit.run_m", "Wiring, one way"},
        {"shop.circuit.run_awg", "Wiring gauge"},    {"shop.circuit.run_mm2", "or its section"},
        {"shop.circuit.cord_m", "Extension cord"},   {"shop.circuit.cord_awg", "Cord gauge"},
        {"shop.circuit.other_load_a", "Other load"}, {"shop.circuit.compressor_motor_hp", "Compressor motor"},
        {"shop.circuit.generator_va", "Generator"},  {"shop.circuit.dedicated", "Wired for this machine"}};
    Ui& ui = app.ui();
    float y = y0;
    y += section(ui, "circuit/fields", {body.x + sheet_margin, y}, body.w, "The circuit");
    y += number_choice(app, {body.x, y, body.w, 0}, "shop.circuit.line_v", "Usual voltages", lines, line_names, 5);
    y += entry(app, {body.x, y, body.w, 0}, "shop.circuit.line_v", "Voltage");
    y += word_choice(app, {body.x, y, body.w, 0}, "shop.circuit.breaker_rule", "Breaker made to", rules, rule_names);
    for (const auto& path : paths) {
        y += entry(app, {body.x, y, body.w, 0}, path[0], path[1]);
    }
    return y - y0;
}

} // namespace

void circuit_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "circuit", "Circuit, panel to torch", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const supply::Report& r = app.sheet().circuit;
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y;
        y += answer(app, {x, y}, w);
        y += chain_picture(ui, {x, y}, w, r.chain) + 12;
        y += section(ui, "circuit/band/title", {x, y}, w, "When the breaker trips: latest times, none promised");
        band_picture(ui, {x, y, w, band_picture_height()}, r.band, r.verdict == supply::CircuitVerdict::holds);
        y += band_picture_height() + 8;
        y += figures(app, {x, y}, w);
        for (std::size_t i = 0; i < r.checks.size(); ++i) {
            const supply::Check& check = r.checks[i];
            y += signed_words(app, "circuit/check/" + std::to_string(i), check.ok ? Sign::holds : Sign::caution, {x, y},
                              w, check.text, check.source);
        }
        y += fields(app, body, y);
        y += section(ui, "circuit/basis", {x, y}, w, "What this rests on");
        for (std::size_t i = 0; i < r.basis.size(); ++i) {
            y +=
                words(ui, "circuit/basis/" + std::to_string(i), Type::label, {x, y}, w, r.basis[i], ui.tokens().quiet) +
                6;
        }
        return y + 20 - body.y;
    });
}

} // namespace torchside::web
