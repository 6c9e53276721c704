#include "web/screens/cut/figure_help.hpp"

#include <algorithm>
#include <string>

#include "generated/words/about.hpp"
#include "web/screens/cut/figure_sketch.hpp"

namespace torchside::web {
namespace {

struct Help {
    std::string_view key;
    Word what, why, formula, source;
};
constexpr Help all[] = {
    {"feed", words::about::feed, words::about::feed_why, words::about::feed_formula, words::about::feed_source},
    {"arc", words::about::arc, words::about::arc_why, words::about::arc_formula, words::about::arc_source},
    {"cut_height", words::about::cut_height, words::about::cut_height_why, words::about::cut_height_formula,
     words::about::cut_height_source},
    {"pierce_height", words::about::pierce_height, words::about::pierce_height_why, words::about::pierce_height_formula,
     words::about::pierce_height_source},
    {"pierce_delay", words::about::pierce_delay, words::about::pierce_delay_why, words::about::pierce_delay_formula,
     words::about::pierce_delay_source},
    {"kerf", words::about::kerf, words::about::kerf_why, words::about::kerf_formula, words::about::kerf_source},
    {"lead_in", words::about::lead_in, words::about::lead_in_why, words::about::lead_in_formula,
     words::about::lead_in_source},
    {"min_hole", words::about::min_hole, words::about::min_hole_why, words::about::min_hole_formula,
     words::about::min_hole_source},
    {"pressure", words::about::pressure, words::about::pressure_why, words::about::pressure_formula,
     words::about::pressure_source},
    {"post_flow", words::about::post_flow, words::about::post_flow_why, words::about::post_flow_formula,
     words::about::post_flow_source}};

const Help* help_of(std::string_view key) {
    for (const Help& help : all) {
        if (help.key == key) {
            return &help;
        }
    }
    return nullptr;
}

/// A question mark in a square: our stroke, as large as a thumb needs it.
bool question(Ui& ui, std::string_view id, Rect place, Label name, bool open) {
    const bool used = ui.node(id, Role::button, place, name, {}, open ? "expanded" : "collapsed");
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, ui.pressed(id) ? t.hairline : open ? t.fill : t.ground);
    pen.frame(place, t.ink, open ? 2.0F : 1.0F);
    if (open) {
        pen.fill({place.x, place.y, place.w, 4}, t.accent);
    }
    pen.text(Type::second, {place.centre().x, place.centre().y - Pen::line_height(Type::second) / 2}, t.ink, "?",
             Align::centre);
    return used;
}

void explanation(Body& body, const Help& help) {
    constexpr float drawn_h = 96;
    App& app = body.app;
    Ui& ui = app.ui();
    body.gap(10);
    body.text("help/what", help.what);
    body.text("help/why", help.why);
    body.gap(8);
    const Rect strip = body.inside(drawn_h);
    const Rect place{strip.x, strip.y, std::min(strip.w, 240.0F), strip.h};
    figure_sketch(ui.pen(), ui.tokens(), help.key, place);
    ui.node("help/drawing", Role::img, place, help.what);
    body.gap(10);
    bool& derives = app.scratch.derives;
    if (body.button("help/source", words::about::source, derives ? Look::chosen : Look::plain,
                    derives ? "expanded" : "collapsed")) {
        derives = !derives;
    }
    if (derives) {
        body.gap(8);
        body.text("help/formula", app.say(help.formula));
        body.gap(4);
        body.note("help/from", help.source);
    }
    body.gap(10);
    body.rule();
    body.gap(4);
}

} // namespace

void figure_with_help(Body& body, const Figure& figure, Label name, std::string_view value) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Help* help = help_of(figure.key);
    if (help == nullptr) {
        body.line("figure/value", name, value);
        return;
    }
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float side = ui.touch_height();
    Rect row = body.inside(side + 10);
    pen.hline(row.x, row.right(), row.bottom(), t.hairline, 1);
    Rect key = row.take_right(side);
    key = {key.x, key.y + 5, side, side};
    row.take_right(12);
    const std::string_view label = app.word(name);
    const float label_h = Pen::line_height(Type::label);
    const bool one_line = pen.width(Type::second, value) <= row.w;
    const Type type = one_line ? Type::second : Type::title;
    const float value_h = pen.paragraph(type, {}, {}, value, row.w, false);
    const float top = row.centre().y - (label_h + value_h) / 2;
    pen.text(Type::label, {row.x, top}, t.quiet, label);
    pen.paragraph(type, {row.x, top + label_h}, t.ink, value, row.w);
    ui.node("figure/value", Role::text, row, label, value);
    bool& open = app.scratch.explains;
    if (question(ui, "figure/help", key, app.say(words::about::What{.figure = app.word(figure.name)}), open)) {
        open = !open;
        app.scratch.derives = false;
        ui.stop_edit(); // the keys would cover what is explained
    }
    if (open) {
        explanation(body, *help);
    }
}

} // namespace torchside::web
