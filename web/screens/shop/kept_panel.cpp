// Kept work: where it lies, its backups, what to do when it cannot be read or kept, and what two tabs changed at once.
#include <algorithm>

#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "generated/words/done.hpp"
#include "generated/words/kept.hpp"
#include "generated/words/storage.hpp"
#include "generated/words/tabs.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

std::string_view storage_alert(const App& app) {
    switch (app.store().found()) {
    case WorkbookStore::Found::unreadable:
        return app.word(words::storage::unreadable);
    case WorkbookStore::Found::newer:
        return app.word(words::storage::newer);
    case WorkbookStore::Found::nothing:
    case WorkbookStore::Found::work:
        break;
    }
    if (app.clash) {
        return app.word(words::storage::clash);
    }
    return app.store().refused() ? app.word(words::storage::refused) : std::string_view();
}

void storage_strip(App& app, Rect& rest) {
    Ui& ui = app.ui();
    const std::string_view text = storage_alert(app);
    const bool asked = app.clash && !app.store().left_alone();
    const std::string_view remedy = app.word(app.store().left_alone() ? words::storage::see_acts
                                             : asked                  ? words::storage::see_both
                                                                      : words::storage::save_file);
    const Rect bar = rest.take_bottom(verdict_height(ui, text, remedy, rest.w));
    ui.pen().hline(bar.x, bar.right(), bar.y, ui.tokens().rule, 1);
    ui.node("notice/alert", Role::alert, bar, text);
    if (verdict_row(ui, "notice/storage", bar, app.store().left_alone() ? Sign::stop : Sign::caution, text, remedy)) {
        if (!asked) {
            app.go(Page::shop);
        }
        app.open(asked ? "tabs" : "kept");
    }
}

namespace {

/// A button, with what room is below each of these.
bool act(Body& body, const char* id, Word label, Look look = Look::plain) {
    const bool used = body.button(id, label, look);
    body.gap(8);
    return used;
}

/// Work that is left alone: its bytes as a file, what can be read of it, and the way on without it.
void unreadable(Body& body) {
    App& app = body.app;
    const bool newer = app.store().found() == WorkbookStore::Found::newer;
    body.sign("kept/unread", Sign::stop, newer ? words::kept::newer : words::kept::unreadable);
    body.gap(12);
    if (act(body, "kept/bytes", words::kept::save_bytes, Look::main)) {
        platform::save_kept();
        app.say(app.say(words::done::Saved{.file = std::string_view("torchside-kept-work.txt")}));
    }
    if (newer) {
        return;
    }
    if (act(body, "kept/rescue", words::kept::salvage)) {
        app.rescue();
    }
    if (!app.scratch.letting_go) {
        app.scratch.letting_go = act(body, "kept/let_go", words::kept::let_go);
        return;
    }
    body.sign("kept/sure", Sign::caution, words::kept::sure);
    body.gap(12);
    if (act(body, "kept/gone", words::kept::replace)) {
        app.let_go();
    }
    if (act(body, "kept/stay", words::kept::stay)) {
        app.scratch.letting_go = false;
    }
}

/// Where the work is, and how safe it is there.
void where_it_is(Body& body) {
    const App& app = body.app;
    if (app.store().refused()) {
        body.sign("kept/refused_all", Sign::caution, words::kept::refused);
    } else {
        body.text("kept/how", words::kept::where);
        body.gap(12);
        body.text("kept/clear", app.notices().may_be_cleared ? words::kept::may_clear : words::kept::you_may_clear);
    }
    body.gap(12);
}

} // namespace

void save_backup(App& app) {
    app.keep_now();
    platform::download("torchside-backup.json", "application/json", document::write_workbook(app.book()));
    app.say(app.say(words::done::Saved{.file = std::string_view("torchside-backup.json")}));
}

void kept_body(Body& body) {
    App& app = body.app;
    const bool alone = app.store().left_alone();
    body.gap(12);
    if (alone) {
        unreadable(body);
    } else {
        where_it_is(body);
    }
    if (act(body, "kept/save", words::kept::save, alone ? Look::plain : Look::main)) {
        save_backup(app);
    }
    if (act(body, "kept/open", words::kept::open)) {
        platform::pick_file(".json,application/json");
    }
    body.gap(4);
    if (!app.refusal().empty()) {
        body.refusal("kept/refused", app.say(words::kept::NotChanged{.why = app.refusal()}));
        body.gap(12);
    }
    body.note("kept/licences", words::kept::licenses);
    body.gap(16);
}

namespace {

/// A value of one side; of a list, how many entries.
std::string one_side(const App& app, std::string_view path, const Workbook& book) {
    const auto value = document::get(book, path);
    return value ? value_words(app, path, *value, book) : app.say(words::tabs::own_entries);
}

} // namespace

void clash_panel(App& app, PanelAt at) {
    panel(app, at, "tabs", words::tabs::title, [&](Body& body) {
        body.gap(12);
        if (!app.clash) {
            body.text("tabs/none", words::tabs::none);
            body.gap(12);
            return;
        }
        body.text("tabs/what", words::tabs::what);
        body.gap(12);
        const App::Clash& clash = *app.clash;
        for (std::size_t i = 0; i < clash.paths.size(); ++i) {
            const std::string id = "tabs/" + std::to_string(i);
            const auto info = document::field(clash.paths[i]);
            const std::string_view name = info && info->meaning != Word{} ? app.word(info->meaning) : clash.paths[i];
            body.words(id, Type::text, name, body.ui().tokens().quiet);
            body.gap(2);
            body.line(id + "/here", words::tabs::here, one_side(app, clash.paths[i], clash.mine));
            body.line(id + "/there", words::tabs::there, one_side(app, clash.paths[i], clash.theirs));
            body.gap(10);
        }
        if (act(body, "tabs/mine", words::tabs::use_here, Look::main)) {
            app.settle_clash(true);
        } else if (act(body, "tabs/theirs", words::tabs::use_there)) {
            app.settle_clash(false);
        }
        body.gap(8);
    });
}

} // namespace torchside::web
