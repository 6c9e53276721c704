#include "web/screens/tune/coupon_heights.hpp"

#include "core/quantity/print.hpp"
#include "core/worksheet/read_heights.hpp"
#include "generated/words/common.hpp"
#include "generated/words/coupon.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/settings.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/coupon_picture.hpp"

namespace torchside::web {
namespace {

constexpr const char* height_path = "shop.height_control.cut_height_mm";

std::vector<HeightLeg> legs_of(const App& app, const tune::Coupon& coupon) {
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    std::vector<HeightLeg> legs;
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const ToolInputs::Leg& leg = app.scratch.inputs.heights[i];
        legs.push_back({leg.square, leg.arc ? std::optional(Voltage{*leg.arc, volt}) : std::nullopt,
                        length(leg.kerf_top), length(leg.kerf_bottom)});
    }
    return legs;
}

void marks(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    body.heading("coupon/showed", words::coupon::square_which);
    const std::vector<std::size_t> order = from_below(coupon);
    const Grid cells = body.grid(order.size(), 3, body.ui().touch_height());
    body.ui().open_group("coupon/square", Role::group, {cells.place.x, cells.place.y, cells.place.w, 1},
                         words::coupon::square_legs);
    for (std::size_t i = 0; i < order.size(); ++i) {
        bool& square = app.scratch.inputs.heights[order[i]].square;
        if (button(body.ui(), "coupon/square/" + std::to_string(i), cells.cell(i),
                   leg_words(app, coupon, coupon.legs[order[i]]), square ? Look::chosen : Look::plain, Role::toggle,
                   square ? "checked" : "")) {
            square = !square;
        }
    }
    body.ui().close_group();
    body.gap(cells.apart.y);
}

/// One leg's instruments at a time: five legs' fields in a row would be a long way to scroll.
void measured(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    const std::vector<std::size_t> order = from_below(coupon);
    std::size_t& shown = app.scratch.inputs.leg;
    shown = std::min(shown, order.size() - 1);
    body.heading("coupon/measured", words::coupon::measured);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const ToolInputs::Leg& leg = app.scratch.inputs.heights[order[i]];
        const bool filled = leg.arc || leg.kerf_top || leg.kerf_bottom;
        const int number = static_cast<int>(i) + 1;
        items.push_back(
            {"coupon/leg/" + std::to_string(i),
             filled ? app.say(words::coupon::LegDone{.number = number}) : app.say(words::coupon::Leg{.number = number}),
             shown == i});
    }
    if (const auto touched = body.choices("coupon/leg", words::coupon::leg_which, items, body.room() > 320 ? 5 : 3)) {
        app.ui().stop_edit();
        shown = *touched;
    }
    body.gap(4);
    ToolInputs::Leg& leg = app.scratch.inputs.heights[order[shown]];
    const std::string id = "field/scratch/leg/" + std::to_string(shown) + '/';
    body.reading(id + "arc_v", words::figure::arc,
                 app.say(words::coupon::LegVolts{.leg = leg_words(app, coupon, coupon.legs[order[shown]])}),
                 FieldUnit::volt, leg.arc);
    body.reading(id + "kerf_top_mm", words::common::kerf_top, words::common::slot_top, FieldUnit::mm, leg.kerf_top);
    body.reading(id + "kerf_bottom_mm", words::common::kerf_bottom, words::common::slot_bottom, FieldUnit::mm,
                 leg.kerf_bottom);
}

void figures(Body& body, const HeightsResult& r) {
    const App& app = body.app;
    const Units units = app.units();
    if (r.height) {
        body.line("coupon/height", words::coupon::set_height, show_text(*r.height, units));
        body.line("coupon/height/band", words::coupon::height_range,
                  app.say(words::settings::Range{.high = r.high, .low = show(r.low, units).number}));
    }
    const bool divided = app.book().shop.height_control.divider_ratio > 1;
    body.line("coupon/height/arc", divided ? words::coupon::volts_there_torch : words::coupon::volts_there,
              show_range(app, r.arc) + " V");
    if (divided) {
        body.line("coupon/height/controller", words::common::at_controller, show(r.controller, units).whole());
    }
    if (r.gradient) {
        const bool metric = app.metric();
        const auto slope = [metric, units](Gradient g) {
            return print_fixed(g.in(volt_per_mm) * (metric ? 1 : 25.4), metric ? 1 : 0, units);
        };
        body.line("coupon/height/gradient", words::coupon::gradient,
                  app.say(words::settings::Range{.high = slope(r.gradient->high) + (metric ? " V/mm" : " V/in"),
                                                 .low = slope(r.gradient->low)}));
    }
    body.gap(8);
    body.text("coupon/height/advice", app.say(r.advice));
    body.gap(4);
}

/// Rows and height go in together, or the rows alone; either way the next ladder starts afresh.
void keep(App& app, const HeightsResult& r, bool with_height) {
    Outcome<Workbook> next = app.book();
    for (const tune::TestCut& row : r.rows) {
        if (next.ok()) {
            next = document::add(next.value(), row);
        }
    }
    if (with_height && next.ok()) {
        next = document::set(next.value(), height_path, r.height->in(mm));
    }
    if (app.log(std::move(next), with_height ? words::coupon::kept : words::coupon::cuts_logged)) {
        app.scratch.inputs.heights = {};
        app.open(r.rows.empty() ? "" : "log");
    }
}

} // namespace

void heights_showed(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    marks(body, coupon);
    measured(body, coupon);
    body.gap(8);
    const std::vector<HeightLeg> legs = legs_of(app, coupon);
    if (legs == std::vector<HeightLeg>(legs.size())) {
        return;
    }
    const auto read = read_heights(app.book(), coupon, legs, app.model());
    if (!read.ok()) {
        body.refusal("coupon/wrong", app.say(read.fault().told()));
        body.gap(8);
        return;
    }
    const HeightsResult& r = read.value();
    figures(body, r);
    body.gap(8);
    const std::size_t count = r.rows.size();
    const Text cuts = words::common::Cuts{.count = static_cast<int>(count)};
    if (r.height) {
        const std::string name = count > 0 ? app.say(words::coupon::UseHeightLog{.cuts = cuts, .height = *r.height})
                                           : app.say(words::coupon::UseHeight{.height = *r.height});
        const bool used = body.button("coupon/height/use", name, Look::main);
        body.gap(8);
        if (used) {
            return keep(app, r, true);
        }
    }
    if (count > 0) {
        if (body.button("coupon/log", app.say(words::coupon::LogOnly{.cuts = cuts}))) {
            keep(app, r, false);
        }
        body.gap(8);
    }
}

} // namespace torchside::web
