#include "web/screens/part/part_picture.hpp"

#include <algorithm>
#include <span>
#include <vector>

#include "core/part/measure.hpp"
#include "core/part/trace.hpp"
#include "core/quantity/print.hpp"
#include "generated/words/contour.hpp"
#include "web/kit/arrow.hpp"
#include "web/kit/column.hpp"
#include "web/kit/controls.hpp"
#include "web/screens/part/path_key.hpp"

namespace torchside::web {
namespace {

constexpr const char* view_name = "part/view";
constexpr float low_picture = 300;        // under it the buttons stand beside the drawing
constexpr std::size_t most_touched = 200; // contours that can be touched one by one
constexpr double most_points = 12000;     // of all lines in one picture

/// Millimetres of the part to places on the screen; y goes up on the part.
struct Scale {
    double px_mm = 1;
    double x0 = 0, y0 = 0;

    [[nodiscard]] Point at(part::Point p) const {
        return {static_cast<float>(x0 + p.x * px_mm), static_cast<float>(y0 - p.y * px_mm)};
    }
    [[nodiscard]] Rect box(const part::Box& b) const {
        const Point corner = at({b.low.x, b.high.y});
        return {corner.x, corner.y, static_cast<float>(b.width() * px_mm), static_cast<float>(b.height() * px_mm)};
    }
};

/// Pixels for a millimetre when the whole part is seen.
double whole_scale(const PartStage& stage, Rect place) {
    constexpr float edge = 34; // for leads, kerf and dimensions
    const double w = std::max(1e-6, stage.high.x - stage.low.x);
    const double h = std::max(1e-6, stage.high.y - stage.low.y);
    return std::min(static_cast<double>(place.w - 2 * edge) / w, static_cast<double>(place.h - 2 * edge) / h);
}

/// Where the whole part lies in its view.
Rect drawn_in(const PartStage& stage, Rect place) {
    const double fit = whole_scale(stage, place);
    const auto w = static_cast<float>((stage.high.x - stage.low.x) * fit);
    const auto h = static_cast<float>((stage.high.y - stage.low.y) * fit);
    return {(place.w - w) / 2, (place.h - h) / 2, w, h};
}

Scale scale_of(const PartStage& stage, Rect place, Ui::View view) {
    const double fit = whole_scale(stage, place);
    const double px = fit * static_cast<double>(view.zoom);
    const double middle_x = (stage.low.x + stage.high.x) / 2;
    const double middle_y = (stage.low.y + stage.high.y) / 2;
    return {px, static_cast<double>(view.corner.x + place.w * view.zoom / 2) - middle_x * px,
            static_cast<double>(view.corner.y + place.h * view.zoom / 2) + middle_y * px};
}

class Drawing {
public:
    Drawing(const Pen& pen, const Scale& scale, Rect place, float step)
        : pen_(pen), scale_(scale), page_(place), step_(step) {}

    void line(std::span<const part::Vertex> row, bool closed, Colour colour, float thickness,
              part::Stretch stretch = {}) {
        points_.clear();
        Rect box{1e9F, 1e9F, 0, 0};
        Point far{-1e9F, -1e9F};
        const auto traced = part::trace(row, closed, 0.25 * static_cast<double>(step_) / scale_.px_mm, stretch);
        for (std::size_t i = 0; i < traced.size(); ++i) {
            const Point p = scale_.at(traced[i]);
            const bool last = i + 1 == traced.size();
            if (!last && !points_.empty() && near(p, points_.back(), step_)) {
                continue;
            }
            points_.push_back(p);
            box = {std::min(box.x, p.x), std::min(box.y, p.y), 0, 0};
            far = {std::max(far.x, p.x), std::max(far.y, p.y)};
        }
        const bool outside = far.x < page_.x || far.y < page_.y || box.x > page_.right() || box.y > page_.bottom();
        if (points_.size() > 1 && !outside) {
            pen_.polyline(points_.data(), static_cast<int>(points_.size()), colour, thickness);
        } else {
            points_.clear();
        }
    }

    /// The way along the line drawn last, where it is long enough: on a shorter one it would be all there is to see.
    void arrow(Colour colour) const { arrow_along(pen_, points_.data(), static_cast<int>(points_.size()), colour, 80); }

    /// A broad band under a stretch of the path, made as long as can be seen.
    void band(std::span<const part::Vertex> row, Colour colour, float broad, part::Stretch stretch) {
        const double least = 2 * static_cast<double>(broad) / scale_.px_mm;
        const double more = std::max(0.0, least - (stretch.to_mm - stretch.from_mm)) / 2;
        line(row, false, colour, broad, {std::max(0.0, stretch.from_mm - more), stretch.to_mm + more});
    }

private:
    const Pen& pen_;
    const Scale& scale_;
    Rect page_;
    float step_;
    std::vector<Point> points_;
};

/// The path: leads thin and in the accent, the contour heavy with an arrow for the way it goes.
void paths(const App& app, const Tokens& t, Drawing& drawing) {
    for (const part::Run& run : app.worksheet().part->path.runs) {
        const std::span<const part::Vertex> path(run.path);
        if (path.empty()) {
            continue;
        }
        drawing.line(path.subspan(0, run.contour_begin + 1), false, t.accent, 1.5F);
        drawing.line(path.subspan(run.contour_end - 1), false, t.accent, 1.5F);
        drawing.line(path.subspan(run.contour_begin, run.contour_end - run.contour_begin), false, t.ink, 2);
        drawing.arrow(t.ink);
    }
}

/// Over all lines, so that none runs through them: a dot, for an edge start a ring.
void pierces(const App& app, const Pen& pen, const Tokens& t, const Scale& scale) {
    for (const part::Run& run : app.worksheet().part->path.runs) {
        if (run.path.empty()) {
            continue;
        }
        const Point pierce = scale.at(run.path.front().at);
        pen.disc(pierce, 5.5F, t.ground);
        if (run.edge_start) {
            pen.ring(pierce, 4, t.accent, 1.5F);
        } else {
            pen.disc(pierce, 4, t.accent);
        }
    }
}

constexpr float slow_band = 7; // so much broader than a contour that it is told without its colour

/// Under the path, so that it covers nothing.
void slow_places(const App& app, const Tokens& t, Drawing& drawing) {
    const auto& time = app.worksheet().time;
    if (!time) {
        return;
    }
    const auto& runs = app.worksheet().part->path.runs;
    for (const motion::SlowSpan& span : time->slow) {
        drawing.band(runs[span.run].path, t.caution, slow_band, {span.from_mm, span.to_mm});
    }
}

/// A dimension line with its figure, outside the box it measures.
void dimensions(const App& app, const Pen& pen, const Tokens& t, const Scale& scale, std::size_t contour) {
    const part::Box box = part::box_of(app.worksheet().part->outline.contours[contour]);
    const Rect r = scale.box(box);
    const Units units = app.units();
    pen.frame(r.inset(-3), t.accent, 1.5F);
    const float y = r.y - 14;
    pen.hline(r.x, r.right(), y, t.accent, 1.5F);
    for (const float x : {r.x, r.right()}) {
        pen.vline(x, y - 5, r.y - 4, t.accent, 1.5F);
    }
    const std::string across = print(Length{box.width(), mm}, units).text();
    const float w = pen.width(Type::strong_label, across) + 8;
    pen.fill({r.centre().x - w / 2, y - 9, w, 18}, t.ground);
    pen.text(Type::strong_label, {r.centre().x, y - 9}, t.ink, across, Align::centre);
    const float x = r.right() + 14;
    pen.vline(x, r.y, r.bottom(), t.accent, 1.5F);
    for (const float end : {r.y, r.bottom()}) {
        pen.hline(r.right() + 4, x + 5, end, t.accent, 1.5F);
    }
    const std::string up = print(Length{box.height(), mm}, units).text();
    const float h = pen.width(Type::strong_label, up) + 8;
    pen.fill({x - h / 2, r.centre().y - 9, h, 18}, t.ground);
    pen.text(Type::strong_label, {x, r.centre().y - 9}, t.ink, up, Align::centre);
}

/// A note is a small disc, so that it covers little of what it is about; the worst lie on top.
void problems(const App& app, const Pen& pen, const Tokens& t, const Scale& scale) {
    for (const Severity severity : {Severity::note, Severity::caution, Severity::stop}) {
        for (const part::Problem& problem : app.worksheet().part->problems) {
            if (problem.severity != severity) {
                continue;
            }
            const Point at = scale.at(problem.at);
            pen.disc(at, severity == Severity::note ? 7 : 13, t.ground);
            if (severity == Severity::note) {
                pen.disc(at, 5, t.ink);
            } else {
                draw_sign(pen, t, severity == Severity::stop ? Sign::stop : Sign::caution, at);
            }
        }
    }
}

/// Each contour is a control; the outermost first, so that a hole in it is hit before it.
void contours(App& app, const Scale& scale) {
    Ui& ui = app.ui();
    const auto& all = app.worksheet().part->outline.contours;
    std::vector<std::size_t> order;
    for (const part::Role role : {part::Role::outer, part::Role::open, part::Role::inner}) {
        for (std::size_t i = 0; i < all.size() && order.size() < most_touched; ++i) {
            if (all[i].role == role) {
                order.push_back(i);
            }
        }
    }
    for (const std::size_t i : order) {
        Rect r = scale.box(part::box_of(all[i]));
        const float grow = std::max(0.0F, 48 - std::min(r.w, r.h)) / 2;
        r = r.inset(-grow);
        const bool chosen = app.scratch.contour == i;
        const ContourWords words = words_of(app, i);
        if (ui.node("part/contour/" + std::to_string(i), Role::button, r, words.name, words.size,
                    chosen ? "expanded" : "collapsed", words::contour::show_size)) {
            app.scratch.contour = chosen ? std::nullopt : std::optional(i);
        }
    }
}

/// Below the picture, or, where that would leave little of its height, at its right side. Leaves `place` what is left.
void zoom_buttons(Ui& ui, Rect& place) {
    struct Step {
        const char* id;
        Label label;
        float factor;
    };
    constexpr Step steps[] = {{"part/whole", words::contour::fit, 0},
                              {"part/smaller", Label::sign("−"), 0.5F},
                              {"part/larger", Label::sign("+"), 2}};
    constexpr float gap = 6;
    const float side = ui.touch_height();
    const auto press = [&ui](const Step& step, Rect at) {
        if (button(ui, step.id, at, ui.word(step.label))) {
            ui.zoom_view(view_name, step.factor);
        }
    };
    if (place.h < low_picture && place.h >= 3 * side + 4 * gap) {
        Column column(ui, place.take_right(side + 2 * gap));
        for (const Step& step : steps) {
            column.gap(gap);
            press(step, column.strip(side).inset(gap, 0));
        }
        return;
    }
    const Rect row = place.take_bottom(side + 2 * gap);
    float x = row.right() - 3.3F * side - 3 * gap;
    for (const Step& step : steps) {
        const float w = step.factor > 0 ? side : side * 1.3F;
        press(step, {x, row.y + gap, w, side});
        x += w + gap;
    }
}

/// Enlarged, the view may hold nothing but metal: a small picture of the whole shows which place this is.
void where_it_is(App& app, Rect place, const Scale& scale) {
    constexpr float side = 76;
    const PartStage& stage = *app.worksheet().part;
    const part::Box box{stage.low, stage.high};
    const Rect part = scale.box(box);
    if (part.w <= place.w && part.h <= place.h) {
        return;
    }
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    const double px = (static_cast<double>(side) - 12) / std::max({1e-6, box.width(), box.height()});
    const Rect frame{place.x + 8, place.y + 8, side, side};
    const Scale small{px, static_cast<double>(frame.centre().x) - (box.low.x + box.high.x) / 2 * px,
                      static_cast<double>(frame.centre().y) + (box.low.y + box.high.y) / 2 * px};
    pen.fill(frame, t.ground);
    pen.frame(frame, t.ink, 1);
    pen.push_clip(frame);
    Drawing drawing(pen, small, frame, 2);
    for (const part::Contour& contour : stage.outline.contours) {
        drawing.line(contour.points, contour.role != part::Role::open, t.quiet, 1);
    }
    const auto shrink = static_cast<float>(px / scale.px_mm);
    const Rect whole = small.box(box);
    const Rect seen{whole.x + (place.x - part.x) * shrink, whole.y + (place.y - part.y) * shrink, place.w * shrink,
                    place.h * shrink};
    pen.frame(overlap(seen.inset(-1), frame), t.accent, 2);
    pen.pop_clip();
    app.ui().node("part/where", Role::img, frame, words::contour::where);
}

} // namespace

void part_picture(App& app, Rect place) {
    Ui& ui = app.ui();
    const PartStage& stage = *app.worksheet().part;
    const Tokens& t = ui.tokens();
    const Pen& pen = ui.pen();
    if (stage.outline.contours.empty()) {
        return;
    }
    ui.open_group("part/picture", Role::group, place, words::contour::picture);
    zoom_buttons(ui, place);
    path_key(app, place.take_bottom(path_key_height(app, place.w)));
    const Scale scale = scale_of(stage, place, ui.open_view(view_name, place, drawn_in(stage, place)));
    if (app.scratch.look_at && *app.scratch.look_at < stage.problems.size()) {
        constexpr float near = 8;
        ui.centre_view(view_name, scale.at(stage.problems[*app.scratch.look_at].at), near);
    }
    app.scratch.look_at.reset();
    const auto step = static_cast<float>(std::max(0.5, stage.cut_mm * scale.px_mm / most_points));
    Drawing drawing(pen, scale, place, step);
    for (const part::Contour& contour : stage.outline.contours) {
        drawing.line(contour.points, contour.role != part::Role::open, t.quiet, 1);
    }
    slow_places(app, t, drawing);
    paths(app, t, drawing);
    pierces(app, pen, t, scale);
    problems(app, pen, t, scale);
    if (app.scratch.contour && *app.scratch.contour < stage.outline.contours.size()) {
        dimensions(app, pen, t, scale, *app.scratch.contour);
    }
    contours(app, scale);
    where_it_is(app, place, scale);
    ui.close_view();
    ui.close_group();
}

} // namespace torchside::web
