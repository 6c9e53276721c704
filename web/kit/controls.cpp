#include "web/kit/controls.hpp"

#include "generated/words/common.hpp"
#include "generated/words/keypad.hpp"
#include "web/kit/grid.hpp"

namespace torchside::web {
namespace {

std::string with_word(std::string_view state, std::string_view word, bool on) {
    std::string out(state);
    if (on) {
        if (!out.empty()) {
            out += ' ';
        }
        out += word;
    }
    return out;
}

/// The ground of anything that can be pressed.
void press_ground(Ui& ui, std::string_view id, Rect place, bool chosen) {
    if (ui.pressed(id)) {
        ui.pen().fill(place, ui.tokens().hairline);
    } else if (chosen) {
        ui.pen().fill(place, ui.tokens().fill);
    }
}

/// A title and below it quiet words, wrapped, both in the middle of the row.
void two_lines(Ui& ui, Rect row, Type type, std::string_view title, std::string_view quiet) {
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float first = pen.paragraph(type, {}, {}, title, row.w, false);
    const float second = pen.paragraph(Type::label, {}, {}, quiet, row.w, false);
    const float apart = quiet.empty() || first + second + 2 > row.h ? 0.0F : 1.5F;
    const float top = row.centre().y - (first + apart + second) / 2;
    pen.paragraph(type, {row.x, top}, t.ink, title, row.w);
    pen.paragraph(Type::label, {row.x, top + first + apart}, t.quiet, quiet, row.w);
}

float two_line_height(const Ui& ui, Type type, std::string_view title, std::string_view quiet, float room) {
    return std::max(ui.touch_height(), ui.pen().paragraph(type, {}, {}, title, room, false) +
                                           ui.pen().paragraph(Type::label, {}, {}, quiet, room, false) + 8);
}

/// Of the switch in a toggle's row, the half of its width.
float switch_half(const Ui& ui) {
    return ui.glove() ? 56.0F : 34.0F;
}

/// What the words beside it have.
float toggle_room(const Ui& ui, float width) {
    return width - 2 * switch_half(ui) - 42;
}

} // namespace

float link_height(const Ui& ui, std::string_view title, std::string_view quiet, float width) {
    return two_line_height(ui, Type::title, title, quiet, width - 46 - 40);
}

float toggle_height(const Ui& ui, std::string_view label, std::string_view quiet, float width) {
    return std::max(64.0F, two_line_height(ui, Type::text, label, quiet, toggle_room(ui, width)));
}

bool button(Ui& ui, std::string_view id, Rect place, std::string_view label, Look look, Role role,
            std::string_view state, std::string_view of) {
    const bool used = ui.node(id, role, place, label, of, state);
    const Tokens& t = ui.tokens();
    const Pen& pen = ui.pen();
    const bool disabled = state.find("disabled") != std::string_view::npos;
    const bool down = ui.pressed(id);
    Colour ink = disabled ? t.quiet : t.ink;
    if (look == Look::main && !disabled) {
        pen.fill(place, down ? t.quiet : t.ink);
        ink = t.ground;
    } else if (look == Look::quiet) {
        pen.fill(place, down ? t.hairline : t.ground);
        ink = t.quiet;
    } else {
        pen.fill(place, down ? t.hairline : look == Look::chosen ? t.fill : t.ground);
        pen.frame(place, disabled ? t.hairline : t.ink, look == Look::chosen ? 2.0F : 1.0F);
    }
    if (look == Look::chosen) {
        pen.fill({place.x, place.y, place.w, 4}, t.accent);
    }
    const Type type = look == Look::quiet ? Type::label : look == Look::plain ? Type::text : Type::title;
    pen.words_in(place.inset(4, 4), type, ink, label, Align::centre);
    return used;
}

namespace {

/// A glove needs wide cells as well as high ones.
Grid choice_grid(const Ui& ui, Rect place, int columns) {
    return {place, static_cast<std::size_t>(ui.glove() ? std::min(columns, 3) : columns), ui.touch_height()};
}

} // namespace

float choices_height(const Ui& ui, std::size_t count, int columns) {
    return choice_grid(ui, {}, columns).height(count);
}

std::optional<std::size_t> choices(Ui& ui, std::string_view group_id, Rect place, std::string_view name,
                                   std::span<const Choice> items, int columns) {
    std::optional<std::size_t> touched;
    const Grid grid = choice_grid(ui, place, columns);
    ui.open_group(group_id, Role::group, place, name);
    for (std::size_t i = 0; i < items.size(); ++i) {
        const Choice& item = items[i];
        if (button(ui, item.id, grid.cell(i), item.label, item.chosen ? Look::chosen : Look::plain, Role::radio,
                   item.chosen ? "checked" : "")) {
            touched = i;
        }
    }
    ui.close_group();
    return touched;
}

constexpr float verdict_text = 46;  // where the words of a row begin
constexpr float verdict_right = 40; // what the chevron needs

float verdict_height(const Ui& ui, std::string_view sentence, std::string_view remedy, float width) {
    const float room = width - verdict_text - verdict_right;
    const float lines = ui.pen().paragraph(Type::title, {}, {}, sentence, room, false) +
                        ui.pen().paragraph(Type::label, {}, {}, remedy, room, false);
    return std::max(ui.touch_height(), lines + 18);
}

bool verdict_row(Ui& ui, std::string_view id, Rect place, Sign sign, std::string_view sentence, std::string_view remedy,
                 bool chosen) {
    std::string about(ui.word(word_of(sign)));
    if (!remedy.empty()) {
        about += ". ";
        about += remedy;
    }
    const bool used = ui.node(id, Role::button, place, sentence, {}, chosen ? "expanded" : "collapsed", about);
    press_ground(ui, id, place, chosen);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (chosen) {
        pen.fill({place.x, place.y, 4, place.h}, t.accent);
    }
    draw_sign(pen, t, sign, {place.x + 24, place.centre().y});
    const float room = place.w - verdict_text - verdict_right;
    const float lines = pen.paragraph(Type::title, {}, {}, sentence, room, false) +
                        pen.paragraph(Type::label, {}, {}, remedy, room, false);
    const Point at{place.x + verdict_text, place.centre().y - lines / 2};
    const float used_height = pen.paragraph(Type::title, at, colour_of(t, sign), sentence, room);
    pen.paragraph(Type::label, {at.x, at.y + used_height}, t.quiet, remedy, room);
    draw_mark(pen, Mark::chevron, {place.right() - 24, place.centre().y}, t.quiet);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    return used;
}

bool link_row(Ui& ui, std::string_view id, Rect place, std::string_view title, std::string_view quiet, Mark mark,
              bool chosen) {
    const bool used = ui.node(id, Role::button, place, title, {}, chosen ? "expanded" : "collapsed", quiet);
    press_ground(ui, id, place, chosen);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (chosen) {
        pen.fill({place.x, place.y, 4, place.h}, t.accent);
    }
    draw_mark(pen, mark, {place.x + 24, place.centre().y}, t.ink);
    two_lines(ui, {place.x + 46, place.y, place.w - 46 - 40, place.h}, Type::title, title, quiet);
    draw_mark(pen, Mark::chevron, {place.right() - 24, place.centre().y}, t.quiet);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    return used;
}

bool toggle_row(Ui& ui, std::string_view id, Rect place, std::string_view label, bool on, std::string_view quiet) {
    const bool used = ui.node(id, Role::toggle, place, label, {}, on ? "checked" : "", quiet);
    press_ground(ui, id, place, false);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float half = switch_half(ui);
    const float high = ui.glove() ? 48.0F : 30.0F;
    two_lines(ui, {place.x + 14, place.y, toggle_room(ui, place.w), place.h}, Type::text, label, quiet);
    const Rect box{place.right() - 14 - 2 * half, place.centre().y - high / 2, 2 * half, high};
    pen.frame(box, t.ink, 1.5F);
    pen.fill({on ? box.x + half : box.x, box.y, half, high}, t.ink);
    const float line = box.centre().y - Pen::line_height(Type::label) / 2;
    pen.text(Type::label, {box.x + half / 2, line}, on ? t.quiet : t.ground, ui.word(words::keypad::off),
             Align::centre);
    pen.text(Type::label, {box.x + 1.5F * half, line}, on ? t.ground : t.quiet, ui.word(words::keypad::on),
             Align::centre);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    return used;
}

/// Of the value of a field: what a finger puts the caret into.
float box_height(const Ui& ui) {
    return ui.glove() && !ui.low() ? 56.0F : 36.0F;
}

float field_height(const Ui& ui, std::string_view below, float room) {
    const float wrapped = ui.pen().paragraph(Type::label, {}, {}, below, room - 28, false);
    return std::max(box_height(ui) + 13 + wrapped, ui.low() ? 56.0F : ui.touch_height());
}

std::optional<Ui::Entry> field_row(Ui& ui, std::string_view id, Rect place, const FieldLook& look) {
    const bool active = ui.editing(id);
    const std::string_view value = active ? std::string_view(ui.edit()->text) : look.shown;
    constexpr const char* modes[] = {"mode-keypad", "mode-decimal", "mode-text"};
    std::string state = with_word(modes[static_cast<int>(look.keyboard)], "invalid", !look.error.empty());
    state = with_word(state, "focused", active);
    const std::string_view below = look.error.empty() ? look.below : look.error;
    // The box is where the page lays the real input; it is the value's place, not the whole row's.
    const Rect box{place.x + place.w * 0.46F, place.y + 6, place.w * 0.54F - 14, box_height(ui)};
    const Rect target{place.x, place.y, place.w, place.h - 1};
    if (ui.node(id, Role::textbox, active ? box : target, look.label, value, state, below)) {
        ui.start_edit(id, look.shown);
    }
    press_ground(ui, id, place, false);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float value_w = std::min(pen.width(Type::title, value), box.w);
    const float label_end = active ? box.x - 8 : box.right() - value_w - 10;
    pen.words_in({place.x + 14, box.y - 2, label_end - place.x - 14, box.h + 4}, Type::text, t.ink, look.label);
    if (active) {
        pen.fill(box, t.fill);
        pen.frame(box, t.accent, 2);
        if (ui.edit()->fresh) { // as if selected: the next key replaces it
            pen.fill({box.x + 8, box.y + 7, pen.width(Type::title, value) + 4, box.h - 14}, t.hairline);
        }
        const float end = pen.text_fit(Type::title, {box.x + 10, box.centre().y - Pen::line_height(Type::title) / 2},
                                       t.ink, value, box.w - 20);
        pen.fill({end + 2, box.y + 7, 2, box.h - 14}, t.accent);
    } else {
        pen.words_in({box.x, box.y - 2, box.w, box.h + 4}, Type::title, t.ink, value, Align::right);
    }
    if (active) {
        ui.edit_row(place);
    }
    pen.paragraph(Type::label, {place.x + 14, box.bottom() + 1}, look.error.empty() ? t.quiet : t.stop, below,
                  place.w - 28);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    return ui.take_entry(id);
}

float words(Ui& ui, std::string_view id, Type type, Point at, float room, std::string_view text, Colour colour) {
    const float height = ui.pen().paragraph(type, at, colour, text, room);
    ui.node(id, Role::text, {at.x, at.y, room, height}, text);
    return height;
}

float panel_head_height(const Ui& ui) {
    return ui.low() ? 56.0F : ui.touch_height();
}

bool panel_head(Ui& ui, std::string_view id, Rect place, std::string_view title, bool closable) {
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, t.ground);
    std::string heading(id);
    heading += "/title";
    ui.node(heading, Role::heading, place, title, {}, "level2");
    pen.words_in({place.x + 14, place.y, place.w - (closable ? ui.touch_height() + 28 : 28), place.h}, Type::title,
                 t.ink, title);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.rule, 1);
    if (!closable) {
        return false;
    }
    std::string close(id);
    close += "/close";
    const Rect corner{place.right() - ui.touch_height(), place.y, ui.touch_height(), place.h - 1};
    const bool used = ui.node(close, Role::button, corner, words::common::close);
    press_ground(ui, close, corner, false);
    draw_mark(pen, Mark::close, corner.centre(), t.ink, ui.glove() ? 1.6F : 1.0F);
    return used;
}

} // namespace torchside::web
