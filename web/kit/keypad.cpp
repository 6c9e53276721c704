#include "web/kit/keypad.hpp"

#include <algorithm>
#include <iterator>
#include <string>

#include "generated/words/keypad.hpp"
#include "web/kit/controls.hpp"

namespace torchside::web {
namespace {

/// Where the keys stand: upright in five rows, or in three for a low window.
struct Plan {
    int rows, columns;
    float gap;
    struct Cell {
        int column, row, wide = 1;
    };
    Cell nought, point, erase, right[3], below[2], system, next, bare_system, bare_next, done; // bare: no keys below
};
constexpr Plan upright{5,      4,      6,      {0, 3},    {1, 3}, {3, 0}, {{3, 1}, {3, 2}, {3, 3}}, {{2, 3}, {0, 4}},
                       {1, 4}, {2, 4}, {0, 4}, {1, 4, 2}, {3, 4}};
constexpr Plan flat{3,      7,      3,         {3, 2},    {3, 1}, {3, 0}, {{4, 0}, {4, 1}, {4, 2}}, {{5, 0}, {5, 1}},
                    {6, 0}, {5, 2}, {5, 0, 2}, {4, 2, 2}, {6, 2}};

const Plan& plan_of(const Ui& ui) {
    return ui.low() ? flat : upright;
}

/// The eighth key steps on: a second touch makes it a quarter, as a thumb expects.
constexpr std::string_view eighths[] = {"⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"};

void type_eighth(Ui& ui) {
    const std::string text = ui.edit() && !ui.edit()->fresh ? ui.edit()->text : std::string();
    for (std::size_t i = 0; i + 1 < std::size(eighths); ++i) {
        if (std::string_view(text).ends_with(eighths[i])) {
            ui.type("\b");
            ui.type(eighths[i + 1]);
            return;
        }
    }
    if (!std::string_view(text).ends_with(eighths[std::size(eighths) - 1])) {
        ui.type(eighths[0]);
    }
}

/// What is there keeps its digits: a sign is often thought of last.
void turn_sign(Ui& ui) {
    std::string text = ui.edit() ? ui.edit()->text : std::string();
    if (text.find_first_of("0123456789") == std::string::npos) {
        text.clear(); // a dash for "nothing yet"
    }
    for (const std::string_view minus : {"-", "−"}) {
        if (text.starts_with(minus)) {
            return ui.retype(text.substr(minus.size()));
        }
    }
    ui.retype('-' + text);
}

/// A key whose sign does not say how it is called.
struct Called {
    std::string_view key, id;
    Word name;
};
constexpr Called called[] = {{"\"", "inch", words::keypad::inch},
                             {"/", "over", words::keypad::over},
                             {"⅛", "eighth", words::keypad::eighth},
                             {"ga", "gauge", words::keypad::gauge},
                             {"±", "plus-minus", words::keypad::plus_or_minus}};

const Called* called_of(std::string_view key) {
    const auto* it = std::find_if(std::begin(called), std::end(called), [&](const Called& c) { return c.key == key; });
    return it == std::end(called) ? nullptr : it;
}

struct Board {
    Ui& ui;
    const Plan& plan;
    Rect place;

    [[nodiscard]] Rect cell(Plan::Cell at) const {
        const float gap = plan.gap;
        const auto columns = static_cast<float>(plan.columns);
        const auto rows = static_cast<float>(plan.rows);
        const float w = (place.w - gap * (columns + 1)) / columns;
        const float h = (place.h - gap * (rows + 1)) / rows;
        const auto c = static_cast<float>(at.column);
        const auto r = static_cast<float>(at.row);
        const auto n = static_cast<float>(at.wide);
        return {place.x + gap + c * (w + gap), place.y + gap + r * (h + gap), n * w + (n - 1) * gap, h};
    }
    /// A key that types itself.
    void key(std::string_view text, Rect at) const {
        if (text.empty()) {
            return;
        }
        const Called* other = called_of(text);
        const std::string id = "key/" + std::string(other != nullptr ? other->id : text);
        const bool used = ui.node(id, Role::button, at, other != nullptr ? Label(other->name) : Label(text));
        ui.pen().fill(at, ui.pressed(id) ? ui.tokens().hairline : ui.tokens().ground);
        ui.pen().frame(at, ui.tokens().hairline, 1);
        const Type type = text == "⅛" ? Type::second : Type::title;
        ui.pen().text(type, {at.centre().x, at.centre().y - Pen::line_height(type) / 2}, ui.tokens().ink, text,
                      Align::centre);
        if (used) {
            text == "⅛" ? type_eighth(ui) : text == "±" ? turn_sign(ui) : ui.type(text);
        }
    }
    bool mark_key(std::string_view id, Word name, Mark mark, Rect at) const {
        const bool used = ui.node(id, Role::button, at, name);
        ui.pen().fill(at, ui.pressed(id) ? ui.tokens().hairline : ui.tokens().ground);
        ui.pen().frame(at, ui.tokens().hairline, 1);
        draw_mark(ui.pen(), mark, at.centre(), ui.tokens().ink);
        return used;
    }
};

} // namespace

float keypad_height(const Ui& ui) {
    constexpr float field = 69; // that is typed in, with what is said below it
    const Plan& plan = plan_of(ui);
    const auto rows = static_cast<float>(plan.rows);
    const float gaps = (rows + 1) * plan.gap;
    const float row = std::max(52.0F, ui.touch_height() * 0.9F);
    return gaps + (ui.low() ? std::min(rows * row, ui.screen().h - field - gaps) : rows * row);
}

KeypadAnswer keypad(Ui& ui, Rect place, const Keys& keys) {
    ui.open_group("keypad", Role::group, place, words::keypad::name);
    ui.pen().fill(place, ui.tokens().fill);
    ui.pen().hline(place.x, place.right(), place.y + 1, ui.tokens().rule, 2);
    const Plan& plan = plan_of(ui);
    const Board board{ui, plan, place};
    constexpr std::string_view digits[] = {"7", "8", "9", "4", "5", "6", "1", "2", "3"};
    for (int i = 0; i < 9; ++i) {
        board.key(digits[i], board.cell({i % 3, i / 3}));
    }
    board.key("0", board.cell(plan.nought));
    board.key(".", board.cell(plan.point));
    const bool has_below = !keys.below[0].empty();
    if (board.mark_key("key/erase", words::keypad::erase, Mark::erase, board.cell(plan.erase))) {
        ui.type("\b");
    }
    for (int i = 0; i < 3; ++i) {
        board.key(keys.right[i], board.cell(plan.right[i]));
    }
    KeypadAnswer answer = KeypadAnswer::none;
    if (has_below) {
        board.key(keys.below[0], board.cell(plan.below[0]));
        board.key(keys.below[1], board.cell(plan.below[1]));
    }
    const Rect system = board.cell(has_below ? plan.system : plan.bare_system);
    if (board.mark_key("key/system", words::keypad::device, Mark::keyboard, system)) {
        answer = KeypadAnswer::system_keyboard;
    }
    if (button(ui, "key/next", board.cell(has_below ? plan.next : plan.bare_next), ui.word(words::keypad::next))) {
        ui.next_edit();
        answer = KeypadAnswer::done;
    }
    if (button(ui, "key/done", board.cell(plan.done), ui.word(words::keypad::done), Look::main)) {
        ui.finish_edit();
        answer = KeypadAnswer::done;
    }
    ui.close_group();
    return answer;
}

} // namespace torchside::web
