#include "web/screens/figure_tools.hpp"

#include "core/quantity/print.hpp"
#include "core/supply/arc_check.hpp"
#include "core/supply/divider.hpp"
#include "core/tune/coupon.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using supply::ArcState;

tune::TestCut row_of(const App& app) {
    const Shop& shop = app.book().shop;
    return cut_of_job(app.book(), to_dial(app.sheet().settings->feed.value, shop.table.max_feed, shop.display.units));
}

/// "5 V is 1 mm of height here": known once the gradient is.
std::string in_height(const App& app, Voltage off) {
    const auto& gradient = app.book().shop.height_control.gradient;
    if (!gradient) {
        return {};
    }
    const double sign = off < Voltage{} ? -1.0 : 1.0;
    const Length height = supply::height_at(sign * off, {}, *gradient);
    return ' ' + show(sign * off).whole() + " is " + show_text(height, app.book().shop.display.units) +
           " of height here.";
}

float arc_answer(App& app, Rect body, const supply::ArcCheck& check) {
    Ui& ui = app.ui();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = body.y;
    const bool turn = check.state == ArcState::high || check.state == ArcState::low;
    y += signed_words(app, "arc/answer", check.state == ArcState::as_expected ? Sign::holds : Sign::caution, {x, y}, w,
                      app.say(check.text), app.say(check.to_do) + (turn ? in_height(app, check.off) : std::string())) +
         8;
    if (check.ratio) {
        if (button(ui, "arc/divider", {x, y, w, ui.reach()}, "Use " + print_trimmed(*check.ratio, 2) + ":1",
                   Look::main)) {
            ui.stop_edit();
            app.set("shop.height_control.divider_ratio", *check.ratio, "Divider ratio");
        }
        y += ui.reach() + 8;
    } else if (check.state != ArcState::no_reading) {
        if (button(ui, "arc/log", {x, y, w, ui.reach()}, "Log " + show(check.torch).whole() + " of a good cut")) {
            tune::TestCut row = row_of(app);
            row.arc = check.torch;
            ui.stop_edit();
            if (app.log(document::add(app.book(), row), "Arc volts logged")) {
                app.scratch.reading_v.reset();
            }
        }
        y += ui.reach() + 8;
    }
    return y - body.y;
}

} // namespace

float arc_tools(App& app, Rect place) {
    const auto& settings = app.sheet().settings;
    if (!settings) {
        return 0;
    }
    float y = place.y;
    y += scratch_entry(app, {place.x, y, place.w, 0}, arc_reading_field, "Controller reads",
                       "Volts it shows while this cut runs", FieldUnit::volt, app.scratch.reading_v);
    if (!app.scratch.reading_v) {
        return y - place.y;
    }
    const double ratio = app.book().shop.height_control.divider_ratio;
    const auto check = supply::check_arc(settings->arc, ratio, Voltage{*app.scratch.reading_v, volt});
    if (check.ok()) {
        y += arc_answer(app, {place.x, y, place.w, 0}, check.value());
    } else {
        const float w = place.w - 2 * sheet_margin;
        y += 8 + words(app.ui(), "arc/refused", Type::text, {place.x + sheet_margin, y + 8}, w,
                       app.in_units(check.fault().text), app.ui().tokens().stop);
    }
    return y - place.y;
}

float kerf_tools(App& app, Rect place) {
    Ui& ui = app.ui();
    const UnitSystem units = app.book().shop.display.units;
    const Length drawn = units == UnitSystem::metric ? Length{50, mm} : Length{2, inch};
    const float x = place.x + sheet_margin;
    const float w = place.w - 2 * sheet_margin;
    const std::string idle =
        "Of a square of " + show_text(drawn, units) + ", cut on the line; mean of top and bottom edge";
    float y = place.y;
    y += scratch_entry(app, {place.x, y, place.w, 0}, "field/scratch/kerf_square_mm", "The square measures", idle,
                       FieldUnit::mm, app.scratch.kerf_square);
    if (!app.scratch.kerf_square) {
        return y - place.y;
    }
    const Length kerf = tune::kerf_from(drawn, Length{*app.scratch.kerf_square, mm}, false);
    constexpr Length least{0.1, mm};
    constexpr Length most{15, mm};
    y += 8;
    if (kerf < least || kerf > most) {
        return y +
               words(ui, "kerf/refused", Type::text, {x, y}, w,
                     "Enter " + show_text(drawn - most, units) + " to " + show_text(drawn - least, units) +
                         ": the square comes out smaller by the kerf.",
                     ui.tokens().stop) -
               place.y;
    }
    if (button(ui, "kerf/log", {x, y, w, ui.reach()}, "Log a kerf of " + show_text(kerf, units), Look::main)) {
        tune::TestCut row = row_of(app);
        row.kerf_top = kerf;
        row.kerf_bottom = kerf;
        ui.stop_edit();
        if (app.log(document::add(app.book(), row), "Kerf logged")) {
            app.scratch.kerf_square.reset();
        }
    }
    return y + ui.reach() + 8 - place.y;
}

} // namespace torchside::web
