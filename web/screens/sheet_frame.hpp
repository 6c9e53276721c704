// The frame of every sheet, and the lines that fill it.
#pragma once

#include "web/kit/controls.hpp"
#include "web/kit/keypad.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

inline constexpr float sheet_margin = 14;

/// Name on the left, figure on the right, a hairline under it; returns the height used.
float line(App& app, std::string_view id, Point at, float w, std::string_view name, std::string_view value);

/// A sentence behind a sign, with its source in quiet print; returns the height used.
float signed_words(App& app, std::string_view id, Sign sign, Point at, float w, std::string_view text,
                   std::string_view source);

/// True while a field whose id starts so is edited with the app's own keypad.
[[nodiscard]] bool wants_keypad(const App& app, std::string_view prefix);
/// The keypad with the keys that the field under edit can use.
void number_keypad(App& app, Rect place);

/// Head, scrolled body, keypad while a field is edited. `body` draws at the top of the place it is given and returns
/// the height.
template <class Body>
void sheet(App& app, Rect place, std::string_view id, std::string_view title, bool closable, Body body) {
    Ui& ui = app.ui();
    ui.open_group(id, Role::dialog, place, title);
    if (sheet_head(ui, id, place.take_top(sheet_head_height()), title, closable)) {
        app.close();
    }
    const bool pad = wants_keypad(app, "field/");
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const Point at = ui.open_region(id, place);
    const float used = body(Rect{at.x, at.y, place.w, 1e6F});
    ui.close_region({place.w, used});
    if (pad) {
        number_keypad(app, pad_place);
    }
    ui.close_group();
}

} // namespace torchside::web
