// Kept work: where it lies, its backups, what to do when it cannot be read or kept, and what two tabs changed at once.
#include <algorithm>

#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"

namespace torchside::web {

std::string_view storage_alert(const App& app) {
    switch (app.keeper().found()) {
    case Keeper::Found::unreadable:
        return "What is kept here can't be read. This sheet is empty, and is not kept over it.";
    case Keeper::Found::newer:
        return "What is kept here is of a newer Torchside: left alone. This sheet is empty and not kept.";
    case Keeper::Found::nothing:
    case Keeper::Found::work:
        break;
    }
    if (app.clash) {
        return "The same was changed in another tab. Choose which holds.";
    }
    return app.keeper().refused() ? "This browser keeps nothing: changes go when the page closes." : std::string_view();
}

void storage_strip(App& app, Rect& rest) {
    Ui& ui = app.ui();
    const std::string_view text = storage_alert(app);
    const bool asked = app.clash && !app.keeper().left_alone();
    const char* way_out = app.keeper().left_alone() ? "Touch for what can be done"
                          : asked                   ? "Touch to see both"
                                                    : "Touch to save a file instead";
    const Rect bar = rest.take_bottom(verdict_height(ui, text, way_out, rest.w));
    ui.pen().hline(bar.x, bar.right(), bar.y, ui.tokens().rule, 1);
    ui.node("notice/alert", Role::alert, bar, text);
    if (verdict_row(ui, "notice/storage", bar, app.keeper().left_alone() ? Sign::stop : Sign::caution, text, way_out)) {
        if (!asked) {
            app.go(Place::shop);
        }
        app.open(asked ? "tabs" : "kept");
    }
}

namespace {

struct Column {
    App& app;
    float x, y, w;

    void say(const char* id, std::string_view text, Type type = Type::text) {
        y += words(app.ui(), id, type, {x, y}, w, text,
                   type == Type::label ? app.ui().tokens().quiet : app.ui().tokens().ink) +
             12;
    }
    void sign(const char* id, Sign what, std::string_view text) {
        y += signed_words(app, id, what, {x, y}, w, text, "") + 12;
    }
    bool act(const char* id, std::string_view label, Look look = Look::plain) {
        const bool used = button(app.ui(), id, {x, y, w, app.ui().reach()}, label, look);
        y += app.ui().reach() + 8;
        return used;
    }
};

/// Work that is left alone: its bytes as a file, what can be read of it, and the way on without it.
void unreadable(App& app, Column& column) {
    const bool newer = app.keeper().found() == Keeper::Found::newer;
    column.sign(
        "kept/unread", Sign::stop,
        newer ? "What this browser keeps was saved by a newer Torchside. It is as it was, and nothing is kept over it. "
                "Load "
                "the page again with the network on; then the newer version can read it."
              : "What this browser keeps can't be read: both copies of it are damaged, or hold something that this "
                "version does not know. They are as they were, and nothing is kept over them.");
    if (column.act("kept/bytes", "Save what is there as a file", Look::main)) {
        platform::save_kept();
        app.say("Saved as torchside-kept-work.txt. Look in your downloads.");
    }
    if (newer) {
        return;
    }
    if (column.act("kept/rescue", "See what can be read")) {
        app.rescue();
    }
    if (!app.letting_go) {
        app.letting_go = column.act("kept/let_go", "Start without it");
        return;
    }
    column.sign("kept/sure", Sign::caution, "From then on it is replaced by what you enter. Save it as a file first.");
    if (column.act("kept/gone", "Replace it")) {
        app.let_go();
    }
    if (column.act("kept/stay", "Leave it as it is")) {
        app.letting_go = false;
    }
}

} // namespace

float kept_body(App& app, Rect place) {
    Column column{app, place.x + sheet_margin, place.y + 12, place.w - 2 * sheet_margin};
    if (app.keeper().left_alone()) {
        unreadable(app, column);
    } else if (app.keeper().refused()) {
        column.sign(
            "kept/refused_all", Sign::caution,
            "This browser keeps nothing for this page: its site data is blocked, its storage is full, or the window "
            "is a private one. What you enter goes when the page closes. Save a backup file before.");
    } else {
        column.say("kept/how", "Your shop and job stay in this browser, on this device, and are sent nowhere.");
        column.say("kept/clear",
                   app.notices().may_be_cleared
                       ? "This browser has not promised to keep them: it may clear them when it runs short "
                         "of room, and a private window forgets all when it closes. Take a backup file now and then."
                       : "You or the browser may clear what a page keeps, so take a backup file now and then.");
    }
    if (column.act("kept/save", "Save a backup file", app.keeper().left_alone() ? Look::plain : Look::main)) {
        platform::download("torchside-backup.json", "application/json", document::write_workbook(app.book()));
        app.say("Saved as torchside-backup.json. Look in your downloads.");
    }
    if (column.act("kept/open", "Open a backup file")) {
        platform::pick_file(".json,application/json");
    }
    column.y += 4;
    if (!app.refusal().empty()) {
        column.y += words(app.ui(), "kept/refused", Type::text, {column.x, column.y}, column.w,
                          "Nothing was changed. " + app.refusal(), app.ui().tokens().stop) +
                    12;
    }
    column.say(
        "kept/licences",
        "Set in B612 (OFL 1.1). Drawn with Dear ImGui and SDL2. All licences are in licences.txt beside the page.",
        Type::label);
    return column.y + 4 - place.y;
}

namespace {

/// A value of one side; of a list, how many entries.
std::string one_side(std::string_view path, const Workbook& book) {
    const auto value = document::get(book, path);
    return value ? value_words(path, *value, book) : "its own entries";
}

} // namespace

void clash_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "tabs", "Changed in two tabs", closable, [&](Rect body) {
        Column column{app, body.x + sheet_margin, body.y + 12, body.w - 2 * sheet_margin};
        if (!app.clash) {
            column.say("tabs/none", "Nothing is to be chosen: both tabs hold the same.");
            return column.y - body.y;
        }
        column.say("tabs/what",
                   "These were changed here and in another tab. All else is put together already. Until you "
                   "choose, what the other tab kept holds.");
        const App::Clash& clash = *app.clash;
        for (std::size_t i = 0; i < clash.paths.size(); ++i) {
            const std::string id = "tabs/" + std::to_string(i);
            const auto info = document::field(clash.paths[i]);
            const std::string name(info && !info->meaning.empty() ? info->meaning : std::string_view(clash.paths[i]));
            column.y +=
                words(app.ui(), id, Type::text, {column.x, column.y}, column.w, name, app.ui().tokens().quiet) + 2;
            column.y += line(app, id + "/here", {column.x, column.y}, column.w, "This tab",
                             one_side(clash.paths[i], clash.mine));
            column.y += line(app, id + "/there", {column.x, column.y}, column.w, "The other tab",
                             one_side(clash.paths[i], clash.theirs)) +
                        10;
        }
        if (column.act("tabs/mine", "Use this tab's", Look::main)) {
            app.settle_clash(true);
        } else if (column.act("tabs/theirs", "Use the other tab's")) {
            app.settle_clash(false);
        }
        return column.y + 8 - body.y;
    });
}

} // namespace torchside::web
