#include "web/screens/height_tools.hpp"

#include "core/quantity/print.hpp"
#include "core/supply/divider.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/figure_tools.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

float reading(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const auto& settings = app.sheet().settings;
    if (!settings) {
        return 0;
    }
    const std::string text = "At this cut the torch stands at " + show(settings->arc.value).whole() +
                             " and the controller reads " + show(settings->controller).whole() + ".";
    float y = at.y + 14;
    y += words(ui, "height/reading", Type::text, {at.x, y}, w, text, ui.tokens().ink) + 4;
    const supply::ControllerInput tap = supply::check_tap(app.book().shop.height_control, settings->arc.high);
    if (tap.message) {
        y += signed_words(app, "height/tap", sign_of(tap.message->severity), {at.x, y}, w,
                          say(*tap.message, app.speech()), app.say(tap.basis.front()));
    }
    return y - at.y;
}

/// Two cuts at two heights give the volts of a millimetre.
float gradient(App& app, Rect body, float y0) {
    Ui& ui = app.ui();
    App::Scratch& s = app.scratch;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + section(ui, "height/gradient", {x, y0}, w, "Volts of height, from two cuts");
    const auto field = [&](const char* id, const char* label, const char* idle, FieldUnit unit,
                           std::optional<double>& value) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, id, label, idle, unit, value);
    };
    field("field/scratch/low_mm", "Low height", "Torch to plate", FieldUnit::mm, s.low_mm);
    field("field/scratch/low_v", "Volts there", "At the torch: controller volts times the divider", FieldUnit::volt,
          s.low_v);
    field("field/scratch/high_mm", "High height", app.metric() ? "About 0.5 mm more" : "About 0.02 in more",
          FieldUnit::mm, s.high_mm);
    field("field/scratch/high_v", "Volts there ", "Same plate, same feed", FieldUnit::volt, s.high_v);
    if (!s.low_mm || !s.low_v || !s.high_mm || !s.high_v) {
        return y - y0;
    }
    const auto slope = supply::calibrate({Voltage{*s.low_v, volt}, Length{*s.low_mm, mm}},
                                         {Voltage{*s.high_v, volt}, Length{*s.high_mm, mm}});
    y += 10;
    if (!slope.ok()) {
        return y +
               words(ui, "height/slope", Type::text, {x, y}, w, app.in_units(slope.fault().text), ui.tokens().stop) -
               y0;
    }
    const double steps = slope.value().in(volt_per_mm);
    const std::string text = app.metric() ? print_fixed(steps, 1) + " V/mm" : print_fixed(steps * 25.4, 0) + " V/in";
    if (button(ui, "height/slope/use", {x, y, w, ui.reach()}, "Use " + text, Look::main)) {
        app.set("shop.height_control.gradient_v_mm", steps, "Volts of height");
    }
    return y + ui.reach() - y0;
}

/// What the controller's own input does to a divider of two resistors.
float loading(App& app, Rect body, float y0) {
    Ui& ui = app.ui();
    App::Scratch& s = app.scratch;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + section(ui, "height/loading", {x, y0}, w, "A divider of your own, loaded by the input");
    const auto field = [&](const char* id, const char* label, const char* idle, std::optional<double>& value) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, id, label, idle, FieldUnit::kilohm, value);
    };
    field("field/scratch/upper", "Upper resistor", "In kilohm, from the arc", s.upper_kohm);
    field("field/scratch/lower", "Lower resistor", "In kilohm, across the input", s.lower_kohm);
    field("field/scratch/input", "Input resistance", "In kilohm, of the controller", s.input_kohm);
    const bool whole = s.upper_kohm && s.lower_kohm && s.input_kohm && *s.lower_kohm > 0 && *s.input_kohm > 0;
    if (!whole) {
        return y - y0;
    }
    const supply::Divider divider{Resistance{*s.upper_kohm * 1e3, ohm}, Resistance{*s.lower_kohm * 1e3, ohm}};
    const Resistance input{*s.input_kohm * 1e3, ohm};
    y += line(app, "height/loading/open", {x, y}, w, "With nothing connected",
              print_significant(supply::ratio(divider), 4) + ":1");
    y += line(app, "height/loading/loaded", {x, y}, w, "With this input",
              print_significant(supply::loaded_ratio(divider, input), 4) + ":1");
    y += line(app, "height/loading/error", {x, y}, w, "It reads off by",
              print_percent(supply::loading_error(divider, input), 2).text());
    return y - y0;
}

} // namespace

float height_tools(App& app, Rect place) {
    const float x = place.x + sheet_margin;
    const float w = place.w - 2 * sheet_margin;
    float y = place.y;
    y += reading(app, {x, y}, w);
    y += section(app.ui(), "height/identify", {x, y}, w, "What does the controller read?");
    y += arc_tools(app, {place.x, y, place.w, 0});
    y += gradient(app, place, y);
    y += loading(app, place, y) + 24;
    return y - place.y;
}

} // namespace torchside::web
