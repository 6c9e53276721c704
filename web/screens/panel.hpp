// The frame of every screen and panel: head, keypad, and a body that scrolls.
#pragma once

#include "web/kit/keypad.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

/// True while a field whose id starts so is edited with the app's own keypad.
[[nodiscard]] bool wants_keypad(const App& app, std::string_view prefix);
/// The keypad with the keys that the field under edit can use.
void number_keypad(App& app, Rect place);

/// What fills a column; made of a lambda that outlives it.
struct Drawer {
    const void* made_of = nullptr;
    void (*draw)(const void* made_of, Body& body) = nullptr;
    void draw_in(Body& body) const {
        if (draw != nullptr) {
            draw(made_of, body);
        }
    }

    /// How high that is in a column of this width.
    [[nodiscard]] float height_in(App& app, float width) const {
        Body measure(app, {0, 0, width, 0}, Column::Only::measured);
        draw_in(measure);
        return measure.height();
    }

    template <class F>
    static Drawer of(const F& f) {
        return {&f, [](const void* lambda, Body& body) { (*static_cast<const F*>(lambda))(body); }};
    }
};

/// Title and close button. They stand still above the panel, save in a low window while a field is typed in, and in a very
/// low one always: there they scroll away with what the next region holds. Lives until that region is open.
struct PanelHead {
    App& app;
    std::string_view id;
    Label title;
    bool closable;

    void put(Rect& place, bool typing);
    void draw(Rect place);
};

/// What was opened and can be closed is a dialog; a column that always stands there is a part of the page.
[[nodiscard]] inline Role role_of(PanelAt at) {
    return at.closable ? Role::dialog : Role::group;
}

/// A panel: what must stay in sight above (the verdict, while its fields are typed in) and below (an answer), where the
/// window has the height for them, and between them a body that scrolls.
struct PanelFrame {
    std::string_view id;
    Label title;
    Drawer verdict{};
    Drawer foot{};
    bool has_fields = true; // else a field under edit stands in another panel, and so does its keypad
};
void framed_panel(App& app, PanelAt at, const PanelFrame& frame, Drawer body);

/// A page's screen, all of which scrolls. `typed_in`: its field, if it has one that wants the app's keypad.
void framed_screen(App& app, Rect place, std::string_view id, Label name, Drawer body, std::string_view typed_in = {});

template <class F>
void panel(App& app, PanelAt at, std::string_view id, Label title, const F& body) {
    framed_panel(app, at, {id, title}, Drawer::of(body));
}

} // namespace torchside::web
