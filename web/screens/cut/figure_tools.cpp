#include "web/screens/cut/figure_tools.hpp"

#include "core/quantity/print.hpp"
#include "core/supply/arc_check.hpp"
#include "core/supply/divider.hpp"
#include "core/tune/coupon.hpp"
#include "generated/words/common.hpp"
#include "generated/words/figure_about.hpp"
#include "web/screens/cut/volts_picture.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using supply::ArcState;

tune::TestCut row_of(const App& app) {
    const Shop& shop = app.book().shop;
    return cut_of_job(app.book(),
                      to_dial(app.worksheet().settings->feed.value, shop.table.max_feed, shop.display.units));
}

/// "5 V is 1 mm of height here": known once the gradient is.
std::string in_height(const App& app, Voltage off) {
    const auto& gradient = app.book().shop.height_control.gradient;
    if (!gradient) {
        return {};
    }
    const double sign = off < Voltage{} ? -1.0 : 1.0;
    const Length height = supply::height_at(sign * off, {}, *gradient);
    return ' ' +
           app.say(words::figure_about::InHeight{.height = height, .volts = show(sign * off, app.units()).whole()});
}

void arc_answer(Body& body, const supply::ArcCheck& check) {
    App& app = body.app;
    const bool turn = check.state == ArcState::high || check.state == ArcState::low;
    body.sign("arc/answer", check.state == ArcState::as_expected ? Sign::holds : Sign::caution, app.say(check.text),
              app.say(check.to_do) + (turn ? in_height(app, check.off) : std::string()));
    body.gap(8);
    if (check.ratio) {
        if (body.button("arc/divider",
                        app.say(words::common::Use{.what = print_trimmed(*check.ratio, 2, app.units()) + ":1"}),
                        Look::main)) {
            app.ui().stop_edit();
            app.set("shop.height_control.divider_ratio", *check.ratio, words::common::divider);
        }
        body.gap(8);
    } else if (check.state != ArcState::no_reading) {
        if (body.button("arc/log",
                        app.say(words::figure_about::LogVolts{.volts = show(check.torch, app.units()).whole()}))) {
            tune::TestCut row = row_of(app);
            row.arc = check.torch;
            app.ui().stop_edit();
            if (app.log(document::add(app.book(), row), words::figure_about::volts_logged)) {
                app.scratch.inputs.reading_v.reset();
            }
        }
        body.gap(8);
    }
}

} // namespace

void arc_tools(Body& body) {
    App& app = body.app;
    const auto& settings = app.worksheet().settings;
    if (!settings) {
        return;
    }
    body.reading(arc_reading_field, words::figure_about::reads, words::figure_about::reads_about, FieldUnit::volt,
                 app.scratch.inputs.reading_v);
    if (!app.scratch.inputs.reading_v) {
        volts_picture(body, {});
        return;
    }
    const double ratio = app.book().shop.height_control.divider_ratio;
    const auto check = supply::check_arc(settings->arc, ratio, Voltage{*app.scratch.inputs.reading_v, volt});
    if (check.ok()) {
        const bool keyed =
            app.ui().editing(arc_reading_field) && app.own_keypad(); // the answer must stand above the keys
        if (!keyed) {
            volts_picture(body, check.value());
        }
        arc_answer(body, check.value());
    } else {
        body.gap(8);
        body.refusal("arc/refused", app.say(check.fault().told()));
    }
}

void kerf_tools(Body& body) {
    App& app = body.app;
    const Units units = app.units();
    const Length drawn = units.metric() ? Length{50, mm} : Length{2, inch};
    body.reading("field/scratch/kerf_square_mm", words::figure_about::square,
                 app.say(words::figure_about::SquareAbout{.size = drawn}), FieldUnit::mm,
                 app.scratch.inputs.kerf_square);
    if (!app.scratch.inputs.kerf_square) {
        return;
    }
    const Length kerf = tune::kerf_from(drawn, Length{*app.scratch.inputs.kerf_square, mm}, false);
    constexpr Length least{0.1, mm};
    constexpr Length most{15, mm};
    body.gap(8);
    if (kerf < least || kerf > most) {
        body.refusal("kerf/refused",
                     app.say(words::figure_about::KerfRange{.least = drawn - most, .most = drawn - least}));
        return;
    }
    if (body.button("kerf/log", app.say(words::figure_about::LogKerf{.kerf = kerf}), Look::main)) {
        tune::TestCut row = row_of(app);
        row.kerf_top = kerf;
        row.kerf_bottom = kerf;
        app.ui().stop_edit();
        if (app.log(document::add(app.book(), row), words::common::kerf_logged)) {
            app.scratch.inputs.kerf_square.reset();
        }
    }
    body.gap(8);
}

} // namespace torchside::web
