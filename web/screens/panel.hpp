// The frame of every panel, and the lines that fill it.
#pragma once

#include "web/kit/controls.hpp"
#include "web/kit/keypad.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

inline constexpr float panel_margin = 14;

/// Name on the left, figure on the right, a hairline under it; returns the height used.
float line(App& app, std::string_view id, Point at, float w, std::string_view name, std::string_view value);

/// A sentence behind a sign, with its source in quiet print; returns the height used.
float signed_words(App& app, std::string_view id, Sign sign, Point at, float w, std::string_view text,
                   std::string_view source);
[[nodiscard]] float signed_words_height(const Ui& ui, float w, std::string_view text, std::string_view source);

/// True while a field whose id starts so is edited with the app's own keypad.
[[nodiscard]] bool wants_keypad(const App& app, std::string_view prefix);
/// The keypad with the keys that the field under edit can use.
void number_keypad(App& app, Rect place);

/// Draws at the top of the place it is given and returns the height used; made of a lambda that outlives it.
struct Drawer {
    const void* made_of = nullptr;
    float (*draw)(const void* made_of, Rect place) = nullptr;
    float draw_at(Rect place) const { return draw != nullptr ? draw(made_of, place) : 0; }

    template <class F>
    static Drawer of(const F& f) {
        return {&f, [](const void* lambda, Rect place) { return (*static_cast<const F*>(lambda))(place); }};
    }
};

/// What was opened and can be closed is a dialog; a column that always stands there is a part of the page.
[[nodiscard]] inline Role panel_role(bool closable) {
    return closable ? Role::dialog : Role::group;
}

/// Title and close button of a panel. They stand still above it, save in a low window while a field is typed in, and in
/// a very low one always: there they scroll away with what the next region holds. Lives until that region is open.
struct PanelHead {
    App& app;
    std::string_view id, title;
    bool closable;

    void put(Rect& place, bool typing);
    void draw(Rect place);
};

/// A panel: head, what must stay in sight above (the verdict, while its fields are typed in) and below (an answer),
/// where the window has the height for them, and a body that scrolls.
struct PanelFrame {
    std::string_view id, title;
    bool closable;
    float foot_height = 0;
    Drawer foot{};
    float verdict_height = 0;
    Drawer verdict{};
    bool has_fields = true; // else a field under edit stands in another panel, and so does its keypad
};
void framed_panel(App& app, Rect place, PanelFrame frame, Drawer body);

template <class Body>
void panel(App& app, Rect place, std::string_view id, std::string_view title, bool closable, const Body& body) {
    framed_panel(app, place, {id, title, closable}, Drawer::of(body));
}

} // namespace torchside::web
