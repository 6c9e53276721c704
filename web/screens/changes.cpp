// Every way a screen changes the workbook, and the bar that takes the last change back.
#include "web/screens/changes.hpp"

#include <algorithm>
#include <utility>

#include "core/quantity/print.hpp"
#include "core/schema/schema.hpp"
#include "core/store/late.hpp"
#include "core/store/workbook_file.hpp"
#include "generated/words/change.hpp"
#include "generated/words/keypad.hpp"
#include "generated/words/manners.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {

std::string value_words(const App& app, std::string_view path, const document::Scalar& value, const Workbook& book) {
    using Kind = document::Scalar::Type;
    if (value.type == Kind::none || (value.type == Kind::text && value.text.empty())) {
        return app.say(words::change::blank);
    }
    if (value.type == Kind::text) {
        return value.text;
    }
    if (value.type == Kind::flag) {
        return app.say(value.number != 0 ? words::keypad::on : words::keypad::off);
    }
    const auto info = document::field(path);
    const Units units{book.shop.display.units, app.units().decimal};
    return path == "job.thickness_mm"
               ? show_plate(Length{value.number, mm}, book.job.material, units).whole()
               : show_field(value.number, info ? info->unit : FieldUnit::none, book.shop.rates.currency, units);
}

namespace {

bool same_cut(const Job& a, const Job& b) {
    return a.material == b.material && a.thickness == b.thickness && a.current == b.current;
}

/// "6" of "6 → 8 mm": a unit that both have is said once.
std::string without_unit(std::string from, const std::string& to) {
    const std::size_t gap = to.rfind(' ');
    if (gap != std::string::npos && from.ends_with(to.substr(gap))) {
        from.resize(from.size() - (to.size() - gap));
    }
    return from;
}

std::string name_of(const App& app, std::string_view path, Label label, const document::Scalar& from,
                    const document::Scalar& to) {
    using Kind = document::Scalar::Type;
    const std::string_view what = app.word(label);
    if (from.type == Kind::text || to.type == Kind::text) {
        return app.say(words::change::Rewritten{.what = what});
    }
    const std::string now = value_words(app, path, to, app.book());
    if (to.type == Kind::flag) {
        return app.say(words::change::Choice{.to = now, .what = what});
    }
    const std::string before = without_unit(value_words(app, path, from, app.book()), now);
    return app.say(words::change::Number{.from = before, .to = now, .what = what});
}

std::string told(const App& app, const Fault& fault) {
    return app.say(fault.told());
}

} // namespace

void App::hold(Workbook next) {
    book_ = std::move(next);
    spoken_.choose(book_.shop.display.language);
    derived_.follow(book_);
    links.reset();
    drafts.settle(book_);
}

void App::adopt(Workbook next) {
    hold(std::move(next));
    keep_soon();
}

void App::keep_soon() {
    const double now = platform::now_ms();
    save_delay_.changed(now);
    platform::keep_in(static_cast<int>(save_delay_.left_ms(now)));
}

void App::keep_now() {
    if (save_delay_.waits()) {
        save_delay_.kept();
        store_.save(book_, document::write_workbook(book_));
    }
}

/// Another tab kept its work: what was changed here and there is put together, and what was changed in both is asked.
void App::take_theirs() {
    theirs_wait_ = false;
    put_together(store_.together(book_));
}

/// What was changed in both is asked; what is asked already stays so.
void App::ask_of(document::Merged& merged) {
    if (merged.conflicts.empty()) {
        return;
    }
    if (clash) {
        merged.mine = document::merge(clash->theirs, clash->mine, merged.mine).mine;
        merged.conflicts.insert(merged.conflicts.end(), clash->paths.begin(), clash->paths.end());
    }
    clash = Clash{merged.theirs, std::move(merged.mine), std::move(merged.conflicts)};
}

/// What a closed page left behind is put to what lies in the browser; from there this tab takes it as any other's work.
void App::put_late(std::string_view found) {
    if (auto late = document::put_late(found)) {
        platform::put(late->slot == document::Slot::a ? 0 : 1, late->record);
        ask_of(late->merged);
    }
}

void App::put_together(std::optional<document::Merged> merged) {
    if (!merged) {
        return; // none that can be read: the strip says so
    }
    ask_of(*merged);
    if (change_) { // undone, it must not take back what the other tab did
        change_->before = document::merge(book_, change_->before, merged->theirs).mine;
    }
    const std::size_t rows = book_.shop.tests.size() + book_.shop.wear.sets.size() + book_.shop.machine.nozzles.size();
    hold(std::move(merged->theirs));
    if (rows != book_.shop.tests.size() + book_.shop.wear.sets.size() + book_.shop.machine.nozzles.size()) {
        drafts.drop_path("shop.tests"); // their rows are others now
        drafts.drop_path("shop.machine.nozzles");
        const std::string panel = open_panel();
        if (panel.starts_with("log/") || panel.starts_with("wear/")) {
            open(panel.substr(0, panel.find('/')));
        }
    }
    save_delay_.kept(); // what waited is in what was put together
    const std::string written = document::write_workbook(book_);
    if (written != document::write_workbook(store_.theirs())) {
        store_.save(book_, written);
    }
}

void App::settle_clash(bool mine) {
    const Clash asked = std::move(*clash);
    clash.reset();
    close();
    if (mine) { // what has been changed since stays, where it is not what was asked
        take(document::merge(asked.theirs, asked.mine, book_).mine, words::change::kept_mine);
    }
}

bool App::accepted(const Outcome<Workbook>& changed) {
    if (!changed.ok()) {
        refusal_ = told(*this, changed.fault());
        return false;
    }
    refusal_.clear();
    said_.clear();
    return true;
}

void App::step_to(Workbook next, Label name) {
    if (!warned_) {
        warned_ = warning_codes(*this);
    }
    change_ = Change{std::string(word(name)), book_};
    if (!same_cut(book_.job, next.job)) {
        change_->inputs = scratch.inputs;
        scratch.inputs.forget_cut();
    }
    adopt(std::move(next));
}

bool App::take(Outcome<Workbook> changed, Label name) {
    if (!accepted(changed)) {
        return false;
    }
    if (document::write_workbook(changed.value()) != document::write_workbook(book_)) { // else it is so already
        step_to(std::move(changed.value()), name);
    }
    return true;
}

bool App::set(std::string_view path, const document::Scalar& value, Label label, By by) {
    if (by == By::touch) {
        drafts.drop_path(path);
    }
    Outcome<Workbook> changed = document::set(book_, path, value);
    if (!accepted(changed)) {
        return false;
    }
    const document::Scalar now = document::get(book_, path).value_or(document::Scalar());
    if (document::get(changed.value(), path) == now) {
        return true; // touched or typed again what is so already
    }
    const bool goes_on = by == By::typing && change_ && change_->typed == path;
    const document::Scalar first = goes_on ? change_->first : now;
    Workbook before = goes_on ? std::move(change_->before) : book_;
    std::optional<ToolInputs> inputs = goes_on ? std::move(change_->inputs) : std::nullopt;
    step_to(std::move(changed.value()), name_of(*this, path, label, first, value));
    if (inputs) {
        change_->inputs = std::move(inputs);
    }
    if (goes_on && value == first) {
        give_up(); // typed back to what it was
    } else if (by == By::typing) {
        change_->before = std::move(before);
        change_->typed = path;
        change_->first = first;
    }
    return true;
}

void App::add(Outcome<Workbook> changed) {
    if (changed.ok()) {
        adopt(std::move(changed.value()));
    }
}

bool App::log(Outcome<Workbook> changed, Label name) {
    if (!take(std::move(changed), name)) {
        return false;
    }
    drafts.drop_path("");
    if (change_) {
        change_->inputs = scratch.inputs;
    }
    return true;
}

bool App::remove(std::string_view path, Label name) {
    drafts.drop_path(path.substr(0, path.find('['))); // its rows are others now
    return take(document::remove(book_, path), name);
}

void App::set_beside(std::string_view path, const document::Scalar& value) {
    auto next = document::set(book_, path, value);
    if (!next.ok()) {
        return;
    }
    adopt(std::move(next.value()));
    if (change_) {
        if (auto before = document::set(change_->before, path, value); before.ok()) {
            change_->before = std::move(before.value());
        }
    }
}

void App::note_issued(const Links::Row& row) {
    if (!row || !document::note_issued(book_.shop.issued, *row)) {
        return;
    }
    if (change_) {
        document::note_issued(change_->before.shop.issued, *row);
    }
    links.noted();
    keep_soon();
    keep_now(); // it is out of the house
}

void App::undo() {
    Change& c = *change_;
    Workbook back = std::exchange(c.before, book_);
    if (c.inputs) {
        std::swap(scratch.inputs, *c.inputs);
    }
    c.undone = !c.undone;
    c.typed.clear();
    c.steps = 0;
    refusal_.clear();
    ui_.stop_edit();
    drafts.drop_path("shop.tests");
    drafts.drop_path("shop.machine.nozzles");
    adopt(std::move(back));
}

/// The last change is none after all.
void App::give_up() {
    if (change_->inputs) {
        scratch.inputs = std::move(*change_->inputs);
    }
    change_.reset();
}

void App::put_back(std::string_view path) {
    if (change_ && !path.empty() && change_->typed == path) {
        Workbook before = std::move(change_->before);
        give_up();
        adopt(std::move(before));
    }
}

std::string App::would_refuse(std::string_view path, const document::Scalar& value) const {
    const auto next = document::set(book_, path, value);
    return next.ok() ? std::string() : told(*this, next.fault());
}

void App::drop_draft(std::string_view id) {
    drafts.drop(id);
    if (ui_.editing(id)) {
        ui_.stop_edit();
    }
    if (id == "find/text") { // there is nothing in it to keep
        close();
    }
}

namespace {

constexpr float bar_button = 88;

std::string bar_words(const App& app) {
    const Change& change = *app.change();
    return change.undone ? app.say(words::change::Undone{.what = change.name}) : change.name;
}

} // namespace

std::string change_words(const App& app) {
    return app.change() == nullptr ? std::string() : bar_words(app) + ". ";
}

/// That the change is kept, below its name: seen each time, spoken the first time alone.
void saved_sign(App& app, Point at, float room) {
    const std::string_view word = app.word(words::manners::saved);
    if (!app.all_kept()) {
        return;
    }
    app.ui().pen().text(Type::label, at, app.ui().tokens().quiet, word);
    const bool first = !std::exchange(app.scratch.said_saved, true);
    app.ui().node("change/saved", first ? Role::status : Role::text, {at.x, at.y, room, Pen::line_height(Type::label)},
                  word);
}

float change_bar_height(const Ui& ui) {
    return std::max(ui.touch_height(), Pen::line_height(Type::text) + Pen::line_height(Type::label) + 12);
}

void change_bar(App& app, Rect& rest) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    app.feel_warnings();
    const std::string text = bar_words(app);
    const float room = rest.w - bar_button - 36;
    const float line = Pen::line_height(Type::label);
    const float lines = pen.paragraph(Type::text, {}, {}, text, room, false) + line;
    const Rect bar = rest.take_bottom(std::max(change_bar_height(ui), lines + 12));
    ui.open_group("change", Role::group, bar, words::change::last);
    pen.fill(bar, t.fill);
    pen.hline(bar.x, bar.right(), bar.y, t.rule, 1);
    const Point at{bar.x + 14, bar.centre().y - lines / 2};
    ui.node("change/what", Role::text, {at.x, at.y, room, lines - line}, text);
    pen.paragraph(Type::text, at, t.ink, text, room);
    saved_sign(app, {at.x, at.y + lines - line}, room);
    const float high = ui.touch_height() - 8;
    const Rect key{bar.right() - bar_button - 8, bar.centre().y - high / 2, bar_button, high};
    const bool used = button(ui, "change/undo", key,
                             ui.word(app.change()->undone ? words::change::redo : words::change::undo), Look::main);
    ui.close_group();
    if (used) {
        app.undo();
    }
}

} // namespace torchside::web
