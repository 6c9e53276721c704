// Find: a word typed, and what it leads to. The same on a phone and at a desk.
#include <algorithm>
#include <optional>
#include <string>

#include "generated/words/find.hpp"
#include "generated/words/shortcut.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/find/find_index.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

constexpr std::string_view field = "find/text";
constexpr std::size_t most_rows = 12; // more is no answer: another letter narrows it

/// The field; true when Enter asks for the first of what was found.
bool typed_in(Body& body) {
    App& app = body.app;
    std::string& typed = app.scratch.find;
    const std::string_view about = app.word(words::find::about);
    const Rect row = body.strip(field_height(app.ui(), about, body.width()));
    const auto entry =
        field_row(app.ui(), field, row, {app.word(words::find::what), typed, about, {}, FieldLook::Keyboard::text});
    if (!entry) {
        return false;
    }
    typed = entry->text;
    return entry->final && !entry->left && !typed.empty();
}

} // namespace

void find_row(Body& body, const char* id) {
    App& app = body.app;
    std::string about(app.word(words::find::about));
    if (platform::fine_pointer()) {
        about += " · ";
        about += app.word(words::shortcut::find_key);
    }
    if (body.row(id, words::find::title, about, Mark::keyboard)) {
        open_find(app);
    }
}

void find_panel(App& app, PanelAt at) {
    const auto body_of = [&](Body& body) {
        const bool entered = typed_in(body);
        const std::vector<Findable> found = find(app, app.scratch.find);
        if (found.empty()) {
            if (entered) {
                app.ui().keep_editing(field, app.scratch.find);
            }
            body.gap(12);
            body.words("find/none", Type::text, words::find::none, app.ui().tokens().quiet);
            body.gap(12);
            return;
        }
        app.ui().open_group("find/found", Role::list, body.strip(0),
                            app.say(words::find::Count{.count = static_cast<int>(found.size())}));
        std::optional<std::size_t> used = entered ? std::optional<std::size_t>(0) : std::nullopt;
        for (std::size_t i = 0; i < std::min(found.size(), most_rows); ++i) {
            if (body.row(found[i].id(), found[i].name, found[i].where, found[i].mark)) {
                used = i;
            }
        }
        app.ui().close_group();
        body.gap(12);
        if (used) {
            open_found(app, found[*used]);
        }
    };
    const PanelFrame frame{.id = "find", .title = words::find::title, .has_fields = false};
    framed_panel(app, at, frame, Drawer::of(body_of));
}

} // namespace torchside::web
