#include "web/screens/shop/height_tools.hpp"

#include "core/quantity/print.hpp"
#include "core/supply/divider.hpp"
#include "generated/words/common.hpp"
#include "generated/words/height_tools.hpp"
#include "generated/words/shop_field.hpp"
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
    body.text("height/reading",
              app.say(words::height_tools::Reading{.controller = show(settings->controller, app.units()).whole(),
                                                   .torch = show(settings->arc.value, app.units()).whole()}));
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
    ToolInputs& s = app.scratch.inputs;
    body.heading("height/gradient", words::height_tools::gradient);
    body.reading("field/scratch/low_mm", words::height_tools::low, words::height_tools::low_about, FieldUnit::mm,
                 s.low_mm);
    body.reading("field/scratch/low_v", words::height_tools::low_volts, words::common::volts_at_torch, FieldUnit::volt,
                 s.low_v);
    body.reading("field/scratch/high_mm", words::height_tools::high, app.say(words::height_tools::high_about),
                 FieldUnit::mm, s.high_mm);
    body.reading("field/scratch/high_v", words::height_tools::high_volts, words::height_tools::high_volts_about,
                 FieldUnit::volt, s.high_v);
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
    const std::string text =
        app.metric() ? print_fixed(steps, 1, app.units()) + " V/mm" : print_fixed(steps * 25.4, 0) + " V/in";
    if (body.button("height/slope/use", app.say(words::common::Use{.what = text}), Look::main)) {
        app.set("shop.height_control.gradient_v_mm", steps, words::shop_field::gradient);
    }
}

/// What the controller's own input does to a divider of two resistors.
void loading(Body& body) {
    const App& app = body.app;
    ToolInputs& s = body.app.scratch.inputs;
    const auto in_ratio = [&app](double ratio) {
        return app.say(words::height_tools::Ratio{.ratio = words::significant(ratio, 4)});
    };
    body.heading("height/loading", words::height_tools::loading);
    body.reading("field/scratch/upper", words::height_tools::upper, words::height_tools::upper_about, FieldUnit::kilohm,
                 s.upper_kohm);
    body.reading("field/scratch/lower", words::height_tools::lower, words::height_tools::lower_about, FieldUnit::kilohm,
                 s.lower_kohm);
    body.reading("field/scratch/input", words::height_tools::input, words::height_tools::input_about, FieldUnit::kilohm,
                 s.input_kohm);
    const bool whole = s.upper_kohm && s.lower_kohm && s.input_kohm && *s.lower_kohm > 0 && *s.input_kohm > 0;
    if (!whole) {
        return;
    }
    const supply::Divider divider{Resistance{*s.upper_kohm * 1e3, ohm}, Resistance{*s.lower_kohm * 1e3, ohm}};
    const Resistance input{*s.input_kohm * 1e3, ohm};
    body.line("height/loading/open", words::height_tools::unloaded, in_ratio(supply::ratio(divider)));
    body.line("height/loading/loaded", words::height_tools::loaded, in_ratio(supply::loaded_ratio(divider, input)));
    body.line("height/loading/error", words::height_tools::error,
              print_percent(supply::loading_error(divider, input), 2, body.app.units()).text());
}

} // namespace

void height_tools(Body& body) {
    reading(body);
    body.heading("height/identify", words::height_tools::what_reads);
    arc_tools(body);
    gradient(body);
    loading(body);
    body.gap(24);
}

} // namespace torchside::web
