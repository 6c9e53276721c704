#include "web/screens/part/size_picture.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "core/part/dimension.hpp"
#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"
#include "core/part/trace.hpp"
#include "core/quantity/field_unit.hpp"
#include "core/schema/schema.hpp"
#include "generated/words/contour.hpp"
#include "generated/words/picture.hpp"
#include "web/kit/arrow.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr std::string_view of_part = "job.part.";
constexpr float beside = 24; // from the part to a dimension line that stands outside it

struct Lit {
    const PathLabel* field = nullptr;
    std::string key{}; // after "job.part."
    std::optional<part::Dimension> line{};
};

/// The size that is typed, or was typed or dragged last, or else the first.
Lit lit_of(App& app, std::span<const PathLabel> sizes) {
    std::string& path = app.scratch.size.path;
    const auto& edit = app.ui().edit();
    const PathLabel* field = nullptr;
    for (const PathLabel& f : sizes) {
        if (edit && edit->id == std::string("field/") + f.path) {
            path = f.path;
        }
        if (path == f.path) {
            field = &f;
        }
    }
    field = field != nullptr ? field : &sizes.front();
    const std::string_view whole = field->path;
    Lit lit{field, std::string(whole.substr(std::min(whole.size(), of_part.size())))};
    lit.line = whole.starts_with(of_part) ? part::dimension_of(app.book().job.part, lit.key) : std::nullopt;
    return lit;
}

struct Scale {
    double px_mm = 1, x0 = 0, y0 = 0;

    [[nodiscard]] Point at(part::Point p) const {
        return {static_cast<float>(x0 + p.x * px_mm), static_cast<float>(y0 - p.y * px_mm)};
    }
};

/// The part small enough to have room to grow into; as it was while a finger has hold of it.
Scale scale_in(const App& app, Rect place) {
    const SizeOnShow& size = app.scratch.size;
    if (size.px_mm > 0) {
        return {size.px_mm, size.x0, size.y0};
    }
    const PartStage& stage = *app.worksheet().part;
    const double w = std::max(1e-6, stage.high.x - stage.low.x);
    const double h = std::max(1e-6, stage.high.y - stage.low.y);
    constexpr double full = 0.86;
    const double px = full * std::min(static_cast<double>(place.w) / w, static_cast<double>(place.h) / h);
    return {px, static_cast<double>(place.centre().x) - w * px / 2 - stage.low.x * px,
            static_cast<double>(place.bottom()) + stage.low.y * px};
}

std::string shown(const App& app, const Lit& lit) {
    const auto info = document::field(lit.field->path);
    const auto value = document::get(app.book(), lit.field->path);
    return info && value ? show_field(value->number, info->unit, app.book().shop.rates.currency, app.units())
                         : std::string();
}

/// The finger has moved: the size that its place means, in steps, kept where the part is still one.
void take_along(App& app, const Lit& lit, const Scale& scale, Point by) {
    SizeOnShow& size = app.scratch.size;
    const auto info = document::field(lit.field->path);
    const auto now = document::get(app.book(), lit.field->path);
    if (!info || !now) {
        return;
    }
    if (!(size.px_mm > 0)) {
        size = {lit.field->path, now->number, scale.px_mm, scale.x0, scale.y0};
        app.ui().stop_edit(); // what was typed has been taken, letter by letter
    }
    const double step = part::drag_step_mm(size.px_mm, app.metric());
    const part::Point moved{static_cast<double>(by.x) / size.px_mm, -static_cast<double>(by.y) / size.px_mm};
    const double wanted = std::clamp(part::dragged_mm(*lit.line, size.was, moved, step), info->low, info->high);
    const double back = now->number > wanted ? step : -step;
    for (double value = wanted; (now->number - value) * back > 0; value += back) { // no further than it is still a part
        const auto next = document::set(app.book(), lit.field->path, value);
        if (next.ok() && part::make_outline(next.value().job.part).ok()) {
            app.set(lit.field->path, value, lit.field->label, App::By::typing);
            return;
        }
    }
}

void outline(const App& app, const Pen& pen, const Tokens& t, const Scale& scale, const Lit& lit) {
    const bool holes = lit.key == "holes" || lit.key == "hole_mm";
    std::vector<Point> points;
    for (const part::Contour& contour : app.worksheet().part->outline.contours) {
        points.clear();
        for (const part::Point p : part::trace(contour.points, true, 0.25 / scale.px_mm)) { // back to its first point
            points.push_back(scale.at(p));
        }
        const bool lights = holes && contour.role == part::Role::inner;
        pen.polyline(points.data(), static_cast<int>(points.size()), lights ? t.accent : t.ink, lights ? 3 : 2);
    }
}

/// Where the line of a size is drawn: on the part, or beside it.
struct Line {
    Point from, to;
    Point knob; // at the end, or, where the line is short, so far from it that it can be seen
};
Line line_of(const App& app, const Scale& scale, const part::Dimension& d) {
    constexpr double least = 44;
    constexpr float away = 30;
    Line line{scale.at(d.from), scale.at(d.to), {}};
    const float off = d.outer ? beside : 0;
    (d.way.x != 0 ? line.from.y : line.from.x) += d.way.x != 0 ? off : -off;
    (d.way.x != 0 ? line.to.y : line.to.x) += d.way.x != 0 ? off : -off;
    const SizeOnShow& held = app.scratch.size; // the knob stays with the finger
    const double length = held.px_mm > 0 ? held.was : std::abs(d.to.x - d.from.x) + std::abs(d.to.y - d.from.y);
    const bool is_short = length * scale.px_mm < least;
    line.knob =
        is_short ? Point{line.to.x + away * static_cast<float>(d.way.x), line.to.y - away * static_cast<float>(d.way.y)}
                 : line.to;
    return line;
}

/// The line with its arrows, its end as a knob to take hold of, and its figure in the middle.
void dimension(const App& app, const Scale& scale, const part::Dimension& d, std::string_view figure, bool held) {
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    const Line l = line_of(app, scale, d);
    const Point way{static_cast<float>(d.way.x), static_cast<float>(-d.way.y)};
    if (d.outer) { // from the part to the line
        pen.line(scale.at(d.from), l.from, t.accent, 1);
        pen.line(scale.at(d.to), l.to, t.accent, 1);
    }
    pen.line(l.from, l.knob, t.ground, 6);
    pen.line(l.to, l.knob, t.accent, 1.5F);
    pen.line(l.from, l.to, t.accent, 4);
    const Point across{6 * way.y, -6 * way.x};
    for (const Point end : {l.from, l.to}) {
        pen.line({end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y}, t.accent, 2);
    }
    const float radius = held ? 14 : 11;
    pen.disc(l.knob, radius + 2, t.ground);
    pen.disc(l.knob, radius, t.accent);
    for (const float side : {-1.0F, 1.0F}) { // it goes both ways
        arrow_head(pen, {l.knob.x + 8 * side * way.x, l.knob.y + 8 * side * way.y}, l.knob, t.ground, 6);
    }
    const float w = pen.width(Type::title, figure) + 8;
    const float h = Pen::line_height(Type::title);
    const float length = std::max(std::abs(l.to.x - l.from.x), std::abs(l.to.y - l.from.y));
    const bool fits = d.way.x == 0 ? length > h + 2 * radius + 10 : length > w + 2 * radius + 12;
    Point at{(l.from.x + l.to.x) / 2 - way.x * 6, (l.from.y + l.to.y) / 2 - way.y * 6};
    if (!fits) { // beside the knob, on the side where the line is not
        at = {l.knob.x + way.x * (radius + 6 + w / 2), l.knob.y + way.y * (radius + 4 + h / 2)};
    }
    pen.fill({at.x - w / 2, at.y - h / 2, w, h}, t.ground);
    pen.text(Type::title, {at.x, at.y - h / 2}, t.ink, figure, Align::centre);
}

/// What is lit, and what a hand can do.
void caption(Ui& ui, Rect place, std::string_view name, std::string_view figure, bool drags) {
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.text(Type::title, {place.x, place.y}, t.ink, std::string(name) + "  " + std::string(figure));
    if (drags) {
        pen.paragraph(Type::label, {place.x, place.y + Pen::line_height(Type::title)}, t.quiet,
                      ui.word(words::picture::drag_hint), place.w);
    }
}

} // namespace

void size_picture(Body& body, std::span<const PathLabel> sizes) {
    App& app = body.app;
    Ui& ui = app.ui();
    const bool keyed =
        !app.wide() && ui.edit() && app.own_keypad(); // it stands above field and keys, then, or not at all
    const Rect whole = body.strip(ui.glove() && !keyed ? 250 : app.wide() ? 248 : 196);
    if (!body.draws()) {
        return;
    }
    Lit lit = lit_of(app, sizes);
    const std::string grip = "shape/grip/" + lit.key;
    const auto by = lit.line ? ui.take_drag(grip) : std::nullopt;
    if (!by && !ui.dragged(grip)) {
        app.scratch.size.px_mm = 0; // let go: the whole part again
    }
    const Rect inside = whole.inset(14, 8);
    const std::string_view name = app.word(lit.field->label);
    Rect drawn = inside.inset(36, 0);
    drawn.take_top((keyed ? 1 : 2) * Pen::line_height(Type::title) + 8);
    drawn.take_bottom(beside + 18);
    const Scale scale = scale_in(app, drawn);
    if (by) {
        take_along(app, lit, scale, *by);
        lit = lit_of(app, sizes);
    }
    const std::string figure = shown(app, lit);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    ui.open_group("shape/live", Role::group, whole, words::contour::picture);
    ui.open_clip(whole);
    ui.node("shape/lit", Role::img, {whole.x, whole.y, whole.w, drawn.y - whole.y},
            app.say(words::picture::Lit{.figure = figure, .name = name}));
    outline(app, pen, t, scale, lit);
    if (lit.line) {
        dimension(app, scale, *lit.line, figure, ui.dragged(grip));
        const Point end = line_of(app, scale, *lit.line).knob;
        const float side = ui.touch_height();
        if (ui.node(grip, Role::button, {end.x - side / 2, end.y - side / 2, side, side},
                    app.say(words::picture::Grip{.name = name}), figure, "grip", words::picture::grip_about)) {
            edit_entry(app, lit.field->path);
        }
    }
    caption(ui, inside, name, figure, lit.line && !keyed);
    ui.close_clip();
    ui.close_group();
    pen.hline(whole.x, whole.right(), whole.bottom() - 0.5F, t.hairline, 1);
}

} // namespace torchside::web
