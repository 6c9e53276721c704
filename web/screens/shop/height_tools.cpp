#include "web/screens/shop/height_tools.hpp"

#include "core/quantity/print.hpp"
#include "core/supply/divider.hpp"
#include "web/screens/cut/figure_tools.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

void reading(Body& body) {
    const App& app = body.app;
    const auto& settings = app.worksheet().settings;
    if (!settings) {
        return;
    }
    body.gap(14);
    body.text("height/reading", "At this cut the torch stands at " + show(settings->arc.value).whole() +
                                    " and the controller reads " + show(settings->controller).whole() + ".");
    body.gap(4);
    const supply::ControllerInput tap = supply::check_tap(app.book().shop.height_control, settings->arc.high);
    if (tap.message) {
        body.sign("height/tap", sign_of(tap.message->severity), say(*tap.message, app.speech()),
                  app.say(tap.basis.front()));
    }
}

/// Two cuts at two heights give the volts of a millimetre.
void gradient(Body& body) {
    App& app = body.app;
    App::Scratch& s = app.scratch;
    body.heading("height/gradient", "Volts of height, from two cuts");
    body.reading("field/scratch/low_mm", "Low height", "Torch to plate", FieldUnit::mm, s.low_mm);
    body.reading("field/scratch/low_v", "Volts there", "At the torch: controller volts times the divider",
                 FieldUnit::volt, s.low_v);
    body.reading("field/scratch/high_mm", "High height", app.metric() ? "About 0.5 mm more" : "About 0.02 in more",
                 FieldUnit::mm, s.high_mm);
    body.reading("field/scratch/high_v", "Volts there ", "Same plate, same feed", FieldUnit::volt, s.high_v);
    if (!s.low_mm || !s.low_v || !s.high_mm || !s.high_v) {
        return;
    }
    const auto slope = supply::calibrate({Voltage{*s.low_v, volt}, Length{*s.low_mm, mm}},
                                         {Voltage{*s.high_v, volt}, Length{*s.high_mm, mm}});
    body.gap(10);
    if (!slope.ok()) {
        body.refusal("height/slope", app.say(slope.fault().told()));
        return;
    }
    const double steps = slope.value().in(volt_per_mm);
    const std::string text = app.metric() ? print_fixed(steps, 1) + " V/mm" : print_fixed(steps * 25.4, 0) + " V/in";
    if (body.button("height/slope/use", "Use " + text, Look::main)) {
        app.set("shop.height_control.gradient_v_mm", steps, "Volts of height");
    }
}

/// What the controller's own input does to a divider of two resistors.
void loading(Body& body) {
    App::Scratch& s = body.app.scratch;
    body.heading("height/loading", "A divider of your own, loaded by the input");
    body.reading("field/scratch/upper", "Upper resistor", "In kilohm, from the arc", FieldUnit::kilohm, s.upper_kohm);
    body.reading("field/scratch/lower", "Lower resistor", "In kilohm, across the input", FieldUnit::kilohm,
                 s.lower_kohm);
    body.reading("field/scratch/input", "Input resistance", "In kilohm, of the controller", FieldUnit::kilohm,
                 s.input_kohm);
    const bool whole = s.upper_kohm && s.lower_kohm && s.input_kohm && *s.lower_kohm > 0 && *s.input_kohm > 0;
    if (!whole) {
        return;
    }
    const supply::Divider divider{Resistance{*s.upper_kohm * 1e3, ohm}, Resistance{*s.lower_kohm * 1e3, ohm}};
    const Resistance input{*s.input_kohm * 1e3, ohm};
    body.line("height/loading/open", "With nothing connected", print_significant(supply::ratio(divider), 4) + ":1");
    body.line("height/loading/loaded", "With this input",
              print_significant(supply::loaded_ratio(divider, input), 4) + ":1");
    body.line("height/loading/error", "It reads off by",
              print_percent(supply::loading_error(divider, input), 2).text());
}

} // namespace

void height_tools(Body& body) {
    reading(body);
    body.heading("height/identify", "What does the controller read?");
    arc_tools(body);
    gradient(body);
    loading(body);
    body.gap(24);
}

} // namespace torchside::web
