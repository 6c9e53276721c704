// Kept work: where it lies, its backups, what to do when it cannot be read or kept, and what two tabs changed at once.
#include <algorithm>

#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

std::string_view storage_alert(const App& app) {
    switch (app.store().found()) {
    case WorkbookStore::Found::unreadable:
        return "What is kept here can't be read. This sheet is empty, and is not kept over it.";
    case WorkbookStore::Found::newer:
        return "What is kept here is of a newer Torchside: left alone. This sheet is empty and not kept.";
    case WorkbookStore::Found::nothing:
    case WorkbookStore::Found::work:
        break;
    }
    if (app.clash) {
        return "The same was changed in another tab. Choose which holds.";
    }
    return app.store().refused() ? "This browser keeps nothing: changes go when the page closes." : std::string_view();
}

void storage_strip(App& app, Rect& rest) {
    Ui& ui = app.ui();
    const std::string_view text = storage_alert(app);
    const bool asked = app.clash && !app.store().left_alone();
    const char* way_out = app.store().left_alone() ? "Touch for what can be done"
                          : asked                  ? "Touch to see both"
                                                   : "Touch to save a file instead";
    const Rect bar = rest.take_bottom(verdict_height(ui, text, way_out, rest.w));
    ui.pen().hline(bar.x, bar.right(), bar.y, ui.tokens().rule, 1);
    ui.node("notice/alert", Role::alert, bar, text);
    if (verdict_row(ui, "notice/storage", bar, app.store().left_alone() ? Sign::stop : Sign::caution, text, way_out)) {
        if (!asked) {
            app.go(Page::shop);
        }
        app.open(asked ? "tabs" : "kept");
    }
}

namespace {

/// A button, with what room is below each of these.
bool act(Body& body, const char* id, std::string_view label, Look look = Look::plain) {
    const bool used = body.button(id, label, look);
    body.gap(8);
    return used;
}

/// Work that is left alone: its bytes as a file, what can be read of it, and the way on without it.
void unreadable(Body& body) {
    App& app = body.app;
    const bool newer = app.store().found() == WorkbookStore::Found::newer;
    body.sign("kept/unread", Sign::stop,
              newer
                  ? "What this browser keeps was saved by a newer Torchside. It is as it was, and nothing is kept over "
                    "it. Load the page again with the network on; then the newer version can read it."
                  : "What this browser keeps can't be read: both copies of it are damaged, or hold something that this "
                    "version does not know. They are as they were, and nothing is kept over them.");
    body.gap(12);
    if (act(body, "kept/bytes", "Save what is there as a file", Look::main)) {
        platform::save_kept();
        app.say("Saved as torchside-kept-work.txt. Look in your downloads.");
    }
    if (newer) {
        return;
    }
    if (act(body, "kept/rescue", "See what can be read")) {
        app.rescue();
    }
    if (!app.letting_go) {
        app.letting_go = act(body, "kept/let_go", "Start without it");
        return;
    }
    body.sign("kept/sure", Sign::caution, "From then on it is replaced by what you enter. Save it as a file first.");
    body.gap(12);
    if (act(body, "kept/gone", "Replace it")) {
        app.let_go();
    }
    if (act(body, "kept/stay", "Leave it as it is")) {
        app.letting_go = false;
    }
}

/// Where the work is, and how safe it is there.
void where_it_is(Body& body) {
    const App& app = body.app;
    if (app.store().refused()) {
        body.sign(
            "kept/refused_all", Sign::caution,
            "This browser keeps nothing for this page: its site data is blocked, its storage is full, or the window "
            "is a private one. What you enter goes when the page closes. Save a backup file before.");
    } else {
        body.text("kept/how", "Your shop and job stay in this browser, on this device, and are sent nowhere.");
        body.gap(12);
        body.text("kept/clear",
                  app.notices().may_be_cleared
                      ? "This browser has not promised to keep them: it may clear them when it runs short "
                        "of room, and a private window forgets all when it closes. Take a backup file now and then."
                      : "You or the browser may clear what a page keeps, so take a backup file now and then.");
    }
    body.gap(12);
}

} // namespace

void kept_body(Body& body) {
    App& app = body.app;
    const bool alone = app.store().left_alone();
    body.gap(12);
    if (alone) {
        unreadable(body);
    } else {
        where_it_is(body);
    }
    if (act(body, "kept/save", "Save a backup file", alone ? Look::plain : Look::main)) {
        platform::download("torchside-backup.json", "application/json", document::write_workbook(app.book()));
        app.say("Saved as torchside-backup.json. Look in your downloads.");
    }
    if (act(body, "kept/open", "Open a backup file")) {
        platform::pick_file(".json,application/json");
    }
    body.gap(4);
    if (!app.refusal().empty()) {
        body.refusal("kept/refused", "Nothing was changed. " + app.refusal());
        body.gap(12);
    }
    body.note(
        "kept/licences",
        "Set in B612 (OFL 1.1). Drawn with Dear ImGui and SDL2. All licences are in licences.txt beside the page.");
    body.gap(16);
}

namespace {

/// A value of one side; of a list, how many entries.
std::string one_side(std::string_view path, const Workbook& book) {
    const auto value = document::get(book, path);
    return value ? value_words(path, *value, book) : "its own entries";
}

} // namespace

void clash_panel(App& app, PanelAt at) {
    panel(app, at, "tabs", "Changed in two tabs", [&](Body& body) {
        body.gap(12);
        if (!app.clash) {
            body.text("tabs/none", "Nothing is to be chosen: both tabs hold the same.");
            body.gap(12);
            return;
        }
        body.text("tabs/what",
                  "These were changed here and in another tab. All else is put together already. Until you "
                  "choose, what the other tab kept holds.");
        body.gap(12);
        const App::Clash& clash = *app.clash;
        for (std::size_t i = 0; i < clash.paths.size(); ++i) {
            const std::string id = "tabs/" + std::to_string(i);
            const auto info = document::field(clash.paths[i]);
            const std::string_view name = info && info->meaning != Word{} ? app.word(info->meaning) : clash.paths[i];
            body.words(id, Type::text, name, body.ui().tokens().quiet);
            body.gap(2);
            body.line(id + "/here", "This tab", one_side(clash.paths[i], clash.mine));
            body.line(id + "/there", "The other tab", one_side(clash.paths[i], clash.theirs));
            body.gap(10);
        }
        if (act(body, "tabs/mine", "Use this tab's", Look::main)) {
            app.settle_clash(true);
        } else if (act(body, "tabs/theirs", "Use the other tab's")) {
            app.settle_clash(false);
        }
        body.gap(8);
    });
}

} // namespace torchside::web
