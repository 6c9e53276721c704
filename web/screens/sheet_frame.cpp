#include "web/screens/sheet_frame.hpp"

namespace torchside::web {

float line(App& app, std::string_view id, Point at, float w, std::string_view name, std::string_view value) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    ui.node(id, Role::text, {at.x, at.y, w, 36}, name, value);
    const float room = w - ui.pen().width(Type::title, value) - 10;
    ui.pen().text_fit(Type::text, {at.x, at.y + 8}, t.ink, name, room);
    ui.pen().text(Type::title, {at.x + w, at.y + 8}, t.ink, value, Align::right);
    ui.pen().hline(at.x, at.x + w, at.y + 36, t.hairline, 1);
    return 37;
}

float signed_words(App& app, std::string_view id, Sign sign, Point at, float w, std::string_view text,
                   std::string_view source) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    draw_sign(ui.pen(), t, sign, {at.x + 10, at.y + 20});
    float y = at.y + 10;
    y += words(ui, id, Type::text, {at.x + 32, y}, w - 32, text, colour_of(t, sign));
    if (!source.empty()) {
        y += 2 + words(ui, std::string(id) + "/source", Type::label, {at.x + 32, y + 2}, w - 32, source, t.quiet);
    }
    ui.pen().hline(at.x, at.x + w, y + 10, t.hairline, 1);
    return y + 11 - at.y;
}

bool wants_keypad(const App& app, std::string_view prefix) {
    const auto& edit = app.ui().edit();
    return edit && std::string_view(edit->id).starts_with(prefix) && !edit->id.ends_with(".name") &&
           !app.system_keyboard;
}

void number_keypad(App& app, Rect place) {
    const std::string& id = app.ui().edit()->id;
    const bool length = id.ends_with("_mm") || id == "stock/thickness";
    if (keypad(app.ui(), place, length ? length_keys : plain_keys) == KeypadAnswer::system_keyboard) {
        app.system_keyboard = true;
    }
}

} // namespace torchside::web
