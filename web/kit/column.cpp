#include "web/kit/column.hpp"

#include <algorithm>

namespace torchside::web {

Rect Column::strip(float height) {
    const Rect place{place_.x, y_, place_.w, height};
    y_ += height;
    return place;
}

Rect Column::inside(float height) {
    return strip(height).inset(margin, 0);
}

Grid Column::grid(std::size_t count, std::size_t columns, float high) {
    const Grid grid{{at().x, y_, room(), 0}, columns, high};
    y_ += grid.height(count);
    return grid;
}

void Column::words(std::string_view id, Type type, Label label, Colour colour) {
    const std::string_view text = ui_->word(label);
    y_ += draws() ? web::words(*ui_, id, type, at(), room(), text, colour)
                  : ui_->pen().paragraph(type, {}, {}, text, room(), false);
}

void Column::heading(std::string_view id, Label label) {
    const std::string_view title = ui_->word(label);
    const Point corner = at();
    const float height =
        23 + ui_->pen().paragraph(Type::label, {corner.x, corner.y + 18}, ui_->tokens().quiet, title, room());
    ui_->node(id, Role::heading, {corner.x, corner.y, room(), height}, title, {}, "level3");
    y_ += height;
}

void Column::line(std::string_view id, Label left, Label right) {
    const std::string_view name = ui_->word(left);
    const std::string_view value = ui_->word(right);
    const Tokens& t = ui_->tokens();
    const Pen& pen = ui_->pen();
    const Point corner = at();
    const float w = room();
    const float name_w = pen.width(Type::text, name);
    const float value_w = pen.width(Type::title, value);
    const bool beside = name_w + value_w + 10 <= w;
    // A long name wraps beside a short value; two long ones stand one under the other.
    const float name_room = beside || value_w <= w / 2 ? w - value_w - 10 : w;
    const float name_h = pen.paragraph(Type::text, {corner.x, corner.y + 8}, t.ink, name, name_room);
    const float value_y = name_room < w || beside ? corner.y + 8 : corner.y + 8 + name_h;
    const float value_h = pen.paragraph(Type::title, {corner.x, value_y}, t.ink, value, w, true, Align::right);
    const float height = std::max(corner.y + 8 + name_h, value_y + value_h) + 8 - corner.y;
    ui_->node(id, Role::text, {corner.x, corner.y, w, height}, name, value);
    pen.hline(corner.x, corner.x + w, corner.y + height, t.hairline, 1);
    y_ += height + 1;
}

void Column::sign(std::string_view id, Sign sign, Label sentence, Label below) {
    const std::string_view text = ui_->word(sentence);
    const std::string_view source = ui_->word(below);
    constexpr float words_from = 32;
    const Tokens& t = ui_->tokens();
    const Pen& pen = ui_->pen();
    const Point corner = at();
    const float x = corner.x + words_from;
    const float w = room() - words_from;
    const float text_h = pen.paragraph(Type::text, {}, {}, text, w, false);
    const float source_h = source.empty() ? 0 : 2 + pen.paragraph(Type::label, {}, {}, source, w, false);
    const float end = corner.y + 10 + text_h + source_h;
    if (draws()) {
        draw_sign(pen, t, sign, {corner.x + 10, corner.y + 20});
        web::words(*ui_, id, Type::text, {x, corner.y + 10}, w, text, colour_of(t, sign));
        if (!source.empty()) {
            web::words(*ui_, std::string(id) + "/source", Type::label, {x, corner.y + 10 + text_h + 2}, w, source,
                       t.quiet);
        }
        pen.hline(corner.x, corner.x + room(), end + 10, t.hairline, 1);
    }
    y_ = end + 11;
}

void Column::notes(std::string_view id, Label title, std::span<const std::string> all) {
    heading(id, title);
    for (std::size_t i = 0; i < all.size(); ++i) {
        note(std::string(id) + '/' + std::to_string(i), all[i]);
        gap(6);
    }
}

void Column::rule() {
    if (draws()) {
        ui_->pen().hline(place_.x, place_.right(), y_, ui_->tokens().rule, 1.5F);
    }
}

bool Column::row(std::string_view id, Label name, Label below, Mark mark, bool chosen) {
    const std::string_view title = ui_->word(name);
    const std::string_view quiet = ui_->word(below);
    return link_row(*ui_, id, strip(link_height(*ui_, title, quiet, place_.w)), title, quiet, mark, chosen);
}

bool Column::verdict(std::string_view id, Sign sign, Label title, Label below, bool chosen) {
    const std::string_view sentence = ui_->word(title);
    const std::string_view way_out = ui_->word(below);
    return verdict_row(*ui_, id, strip(verdict_height(*ui_, sentence, way_out, place_.w)), sign, sentence, way_out,
                       chosen);
}

bool Column::toggle(std::string_view id, Label name, bool on, Label below) {
    const std::string_view label = ui_->word(name);
    const std::string_view quiet = ui_->word(below);
    return toggle_row(*ui_, id, strip(toggle_height(*ui_, label, quiet, place_.w)), label, on, quiet);
}

bool Column::button(std::string_view id, Label label, Look look, std::string_view state) {
    return buttons({id, label, look, state}).has_value();
}

std::optional<std::size_t> Column::buttons(const Side& left, const std::optional<Side>& right) {
    const Grid cells = grid(1, right ? 2 : 1, ui_->touch_height());
    const auto used = [&](std::size_t cell, const Side& side) {
        return web::button(*ui_, side.id, cells.cell(cell), ui_->word(side.label), side.look, Role::button, side.state,
                           side.of);
    };
    std::optional<std::size_t> which;
    if (draws() && used(0, left)) {
        which = 0;
    }
    if (draws() && right && used(1, *right)) {
        which = 1;
    }
    return which;
}

std::optional<std::size_t> Column::choices(std::string_view group, Label name, std::span<const Choice> items,
                                           int columns) {
    return web::choices(*ui_, group, inside(choices_height(*ui_, items.size(), columns)), ui_->word(name), items,
                        columns);
}

bool Column::figure(std::string_view id, const FigureLook& look, std::span<const double> cuts) {
    return big_figure(*ui_, id, strip(big_figure_height(*ui_)), look, cuts);
}

std::optional<std::size_t> Column::figures(std::string_view prefix, std::span<const FigureCell> cells,
                                           std::size_t columns) {
    Grid grid = figure_grid(*ui_, {place_.x, y_, place_.w, 0});
    grid.columns = columns > 0 ? columns : grid.columns;
    y_ += grid.height(cells.size()) + 2;
    return small_figures(*ui_, prefix, grid, cells);
}

} // namespace torchside::web
