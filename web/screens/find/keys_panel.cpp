// What each key does.
#include "generated/words/shop_field.hpp"
#include "generated/words/shortcut.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

void keys_panel(App& app, PanelAt at) {
    using namespace words::shortcut;
    constexpr struct {
        const char* id;
        Word what, key;
        bool single; // can be turned off
    } rows[] = {{"keys/places", places, places_key, true},
                {"keys/find", words::shortcut::find, find_key, false},
                {"keys/these", these, these_key, true},
                {"keys/back", back, back_key, false},
                {"keys/undo", words::shortcut::undo, undo_key, false},
                {"keys/redo", redo, redo_key, false},
                {"keys/take", take, take_key, false},
                {"keys/next", next, next_key, false},
                {"keys/arrows", arrows, arrows_key, false},
                {"keys/width", width, width_key, false},
                {"keys/print", print, print_key, false},
                {"keys/paste", paste, paste_key, false}};
    panel(app, at, "keys", title, [&](Body& body) {
        body.gap(6);
        for (const auto& row : rows) {
            body.line(row.id, row.what, row.key);
        }
        body.gap(10);
        if (!app.book().shop.display.number_keys) {
            body.note("keys/off", off);
            body.gap(10);
        }
        body.field("shop.display.number_keys", words::shop_field::number_keys);
        body.gap(16);
    });
}

} // namespace torchside::web
