#include "web/screens/coupon_heights.hpp"

#include "core/quantity/print.hpp"
#include "core/worksheet/read_heights.hpp"
#include "web/screens/coupon_picture.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float gap = 8;
constexpr const char* height_path = "shop.height_control.cut_height_mm";

std::vector<HeightLeg> legs_of(const App& app, const tune::Coupon& coupon) {
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    std::vector<HeightLeg> legs;
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const App::Scratch::Leg& leg = app.scratch.heights[i];
        legs.push_back({leg.square, leg.arc ? std::optional(Voltage{*leg.arc, volt}) : std::nullopt,
                        length(leg.kerf_top), length(leg.kerf_bottom)});
    }
    return legs;
}

float marks(App& app, Point at, float w, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    float y = at.y + section(ui, "coupon/showed", at, w, "Which legs have the squarest faces?");
    ui.open_group("coupon/square", Role::group, {at.x, y, w, 1}, "Squarest legs");
    const float cell = (w - 2 * gap) / 3;
    int place = 0;
    for (const std::size_t i : from_below(coupon)) {
        bool& square = app.scratch.heights[i].square;
        const Rect box{at.x + (cell + gap) * static_cast<float>(place % 3),
                       y + (ui.reach() + gap) * static_cast<float>(place / 3), cell, ui.reach()};
        if (button(ui, "coupon/square/" + std::to_string(place), box, leg_words(app, coupon, coupon.legs[i]),
                   square ? Look::chosen : Look::plain, Role::toggle, square ? "checked" : "")) {
            square = !square;
        }
        ++place;
    }
    ui.close_group();
    return y + (ui.reach() + gap) * static_cast<float>((place + 2) / 3) - at.y;
}

/// One leg's instruments at a time: five legs' fields in a row would be a long way to scroll.
float measured(App& app, Rect body, float y0, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    const std::vector<std::size_t> order = from_below(coupon);
    std::size_t& shown = app.scratch.leg;
    shown = std::min(shown, order.size() - 1);
    float y = y0 + section(ui, "coupon/measured", {x, y0}, w, "Measured on a leg, if you can");
    std::vector<Choice> items;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const App::Scratch::Leg& leg = app.scratch.heights[order[i]];
        const bool filled = leg.arc || leg.kerf_top || leg.kerf_bottom;
        items.push_back(
            {"coupon/leg/" + std::to_string(i), "Leg " + std::to_string(i + 1) + (filled ? " ✓" : ""), shown == i});
    }
    const int columns = w > 320 ? 5 : 3;
    const float h = choices_height(ui, items.size(), columns);
    if (const auto touched = choices(ui, "coupon/leg", {x, y, w, h}, "Leg that is measured", items, columns)) {
        ui.stop_edit();
        shown = *touched;
    }
    y += h + 4;
    App::Scratch::Leg& leg = app.scratch.heights[order[shown]];
    const std::string high = leg_words(app, coupon, coupon.legs[order[shown]]);
    const std::string id = "field/scratch/leg/" + std::to_string(shown) + '/';
    const auto field = [&](const char* key, const char* label, const std::string& idle, FieldUnit unit,
                           std::optional<double>& value) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, id + key, label, idle, unit, value);
    };
    field("arc_v", "Arc volts", high + "; at the torch: controller volts times the divider", FieldUnit::volt, leg.arc);
    field("kerf_top_mm", "Kerf, top", "Width of its slot at the top", FieldUnit::mm, leg.kerf_top);
    field("kerf_bottom_mm", "Kerf, bottom", "Width of its slot at the bottom", FieldUnit::mm, leg.kerf_bottom);
    return y - y0;
}

float figures(App& app, Point at, float w, const HeightsResult& r) {
    Ui& ui = app.ui();
    const UnitSystem units = app.book().shop.display.units;
    float y = at.y + 8;
    if (r.height) {
        y += line(app, "coupon/height", {at.x, y}, w, "Set the height to", show_text(*r.height, units));
        y += line(app, "coupon/height/band", {at.x, y}, w, "Square, 8 times in 10, from",
                  show(r.low, units).number + " to " + show_text(r.high, units));
    }
    const bool divided = app.book().shop.height_control.divider_ratio > 1;
    y += line(app, "coupon/height/arc", {at.x, y}, w, divided ? "Arc volts there, at the torch" : "Arc volts there",
              show_range(r.arc) + " V");
    if (divided) {
        y += line(app, "coupon/height/controller", {at.x, y}, w, "At the controller", show(r.controller).whole());
    }
    if (r.gradient) {
        const bool metric = app.metric();
        const auto slope = [metric](Gradient g) {
            return print_fixed(g.in(volt_per_mm) * (metric ? 1 : 25.4), metric ? 1 : 0);
        };
        y += line(app, "coupon/height/gradient", {at.x, y}, w, "Volts of height",
                  slope(r.gradient->low) + " to " + slope(r.gradient->high) + (metric ? " V/mm" : " V/in"));
    }
    y += 8;
    return y + words(ui, "coupon/height/advice", Type::text, {at.x, y}, w, app.say(r.advice), ui.tokens().ink) + 4 -
           at.y;
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
    if (app.log(std::move(next), with_height ? "Cut height and cuts kept" : "Cuts logged")) {
        app.scratch.heights = {};
        app.open(r.rows.empty() ? "" : "log");
    }
}

} // namespace

float heights_showed(App& app, Rect body, float y0, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + marks(app, {x, y0}, w, coupon);
    y += measured(app, body, y, coupon);
    const std::vector<HeightLeg> legs = legs_of(app, coupon);
    if (legs == std::vector<HeightLeg>(legs.size())) {
        return y + 8 - y0;
    }
    const auto read = read_heights(app.book(), coupon, legs, app.model());
    if (!read.ok()) {
        y += 8;
        return y + words(ui, "coupon/wrong", Type::text, {x, y}, w, app.in_units(read.fault().text), ui.tokens().stop) +
               8 - y0;
    }
    const HeightsResult& r = read.value();
    y += figures(app, {x, y}, w, r) + 8;
    const std::size_t count = r.rows.size();
    const std::string cuts = std::to_string(count) + (count == 1 ? " cut" : " cuts");
    if (r.height) {
        const std::string name = "Cut at " + show_text(*r.height, app.book().shop.display.units) + " from now on" +
                                 (count > 0 ? ", log " + cuts : std::string());
        if (button(ui, "coupon/height/use", {x, y, w, ui.reach()}, name, Look::main)) {
            keep(app, r, true);
            return y + ui.reach() + 8 - y0;
        }
        y += ui.reach() + 8;
    }
    if (count > 0) {
        if (button(ui, "coupon/log", {x, y, w, ui.reach()}, "Only put " + cuts + " into the log")) {
            keep(app, r, false);
        }
        y += ui.reach() + 8;
    }
    return y - y0;
}

} // namespace torchside::web
