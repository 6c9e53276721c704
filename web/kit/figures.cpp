#include "web/kit/figures.hpp"

#include <algorithm>

#include "web/kit/plot.hpp"

namespace torchside::web {

void draw_band(const Pen& pen, const Tokens& t, Rect place, Span span, std::span<const double> cuts) {
    const float y = place.bottom() - 3;
    pen.hline(place.x, place.right(), y, t.hairline, 1);
    // The hairline reaches twice as far as the 80 % band on either side: about 99 % of what is plausible.
    const double low = span.value - 2.0 * (span.value - span.low);
    const double high = span.value + 2.0 * (span.high - span.value);
    if (!(high > low)) {
        return;
    }
    const auto at = [&](double v) { return place.x + place.w * linear_share(v, low, high); };
    const float x0 = at(span.low);
    const float x1 = at(span.high);
    pen.fill({x0, y - 1.5F, std::max(2.0F, x1 - x0), 3}, t.ink);
    for (const double cut : cuts) {
        if (cut > low && cut < high) {
            pen.disc({at(cut), y}, 4.5F, t.ground);
            pen.ring({at(cut), y}, 3.5F, t.ink, 1.5F);
        }
    }
    const float x = at(span.value);
    const float half = place.h > 14 ? 5.5F : 4.5F;
    pen.triangle({x - half, y - 2 - 1.6F * half}, {x + half, y - 2 - 1.6F * half}, {x, y - 2}, t.accent);
}

float big_figure_height(const Ui& ui) {
    return ui.glove() ? 168.0F : 150.0F; // the larger words below it are higher, and take a second line
}

bool big_figure(Ui& ui, std::string_view id, Rect place, const FigureLook& look, std::span<const double> cuts) {
    std::string value(look.number);
    value += ' ';
    value += look.unit;
    const bool used =
        ui.node(id, Role::button, place, look.name, value, look.chosen ? "expanded" : "collapsed", look.about);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed(id)) {
        pen.fill(place, t.fill);
    }
    const Rect in = place.inset(14, 8);
    pen.text(Type::label, {in.x, in.y}, t.quiet, ui.word(look.name));
    pen.text(Type::label, {in.right(), in.y}, t.quiet, look.aside, Align::right);
    const Type type = pen.figure_type(Type::figure, look.number, look.unit, in.w);
    const float lower =
        (Pen::line_height(Type::figure) - Pen::line_height(type)) / 2; // in the middle of the room for it
    pen.figure(type, {in.x - 2, in.y + 12 + lower}, t.ink, t.quiet, look.number, look.unit);
    draw_band(pen, t, {in.x, in.y + 84, in.w, 18}, look.span, cuts);
    pen.paragraph(Type::label, {in.x, in.y + (ui.glove() ? 108.0F : 104.0F)}, t.quiet, look.about, in.w);
    return used;
}

Grid figure_grid(const Ui& ui, Rect place) {
    constexpr float narrow = 480; // three words side by side in a glove's large type need more
    return {place, ui.glove() && place.w < narrow ? 2U : 3U, ui.glove() ? 96.0F : 76.0F, {0, 1}};
}

namespace {

bool small_figure(Ui& ui, std::string_view id, Rect place, const FigureCell& look) {
    std::string value = look.number;
    if (!look.unit.empty()) {
        value += ' ' + look.unit;
    }
    if (!look.aside.empty()) {
        value += ", " + look.aside;
    }
    const bool used =
        ui.node(id, Role::button, place, look.name, value, look.chosen ? "expanded" : "collapsed", look.about);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed(id) || look.chosen) {
        pen.fill(place, t.fill);
    }
    if (look.chosen) {
        pen.fill({place.x, place.y, place.w, 4}, t.accent);
    }
    const Rect in = place.inset(8, 5);
    pen.words_in({in.x, in.y, in.w, Pen::line_height(Type::label)}, Type::label, t.quiet, look.name);
    const float top = in.y + (ui.glove() ? 23.0F : 14.0F);                         // of the figure
    const Type type = pen.figure_type(Type::second, look.number, look.unit, in.w); // "19 min 30 s" is long
    const float lower = (Pen::line_height(Type::second) - Pen::line_height(type)) / 2;
    const float end = pen.figure(type, {in.x, top + lower}, t.ink, t.quiet, look.number, look.unit);
    if (!look.aside.empty()) { // beside the figure, or else beside its name
        const float right = place.right() - 4;
        const float from = right - pen.width(Type::label, look.aside) - 4;
        const float name_end = in.x + pen.width(Type::label, look.name);
        if (end <= from) {
            pen.text(Type::label, {right, top + 10}, t.quiet, look.aside, Align::right);
        } else if (name_end <= from) {
            pen.text(Type::label, {right, in.y}, t.quiet, look.aside, Align::right);
        }
    }
    if (look.span.high > look.span.low) {
        draw_band(pen, t, {in.x, in.bottom() - 13, in.w, 12}, look.span);
    }
    return used;
}

} // namespace

std::optional<std::size_t> small_figures(Ui& ui, std::string_view prefix, const Grid& grid,
                                         std::span<const FigureCell> cells) {
    std::optional<std::size_t> used;
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Rect all = grid.place;
    const float bottom = all.y + grid.height(cells.size()) + 1;
    pen.hline(all.x, all.right(), all.y, t.rule, 1.5F);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        std::string id(prefix);
        id += cells[i].key;
        if (small_figure(ui, id, grid.cell(i), cells[i])) {
            used = i;
        }
    }
    for (std::size_t i = 1; i < grid.columns; ++i) {
        pen.vline(grid.cell(i).x, all.y, bottom, t.hairline, 1);
    }
    for (std::size_t row = 1; row < grid.rows(cells.size()); ++row) {
        pen.hline(all.x, all.right(), grid.cell(row * grid.columns).y, t.hairline, 1);
    }
    pen.hline(all.x, all.right(), bottom, t.rule, 1.5F);
    return used;
}

} // namespace torchside::web
