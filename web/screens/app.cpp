#include "web/screens/app.hpp"

#include <utility>

#include "core/schema/entry.hpp"
#include "core/store/cuts_file.hpp"
#include "core/store/workbook_file.hpp"
#include "generated/words/done.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/paper.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

constexpr int most_builds = 6; // an activation, what it opens, the field after it, and a view that shrank: never a loop

} // namespace

App::App() {
    book_ = store_.load();
    navigation_.unpack_widths(platform::remembered("columns"));
    spoken_.choose(book_.shop.display.language);
    take_route(platform::fragment());
    derived_.follow(book_);
}

const Tokens& App::tokens() const {
    const platform::Wishes wishes = platform::wishes();
    const Theme theme = book_.shop.display.theme;
    const bool dark = theme == Theme::automatic ? wishes.dark : theme == Theme::night;
    if (wishes.contrast) {
        return dark ? night_contrast : paper_contrast;
    }
    return dark ? night : paper;
}

const Chart& App::chart() {
    return derived_.chart(book_);
}

const Outcome<Tuning>& App::tuning() {
    return derived_.tuning(book_);
}

const Outcome<tune::CutDiagnosis>& App::diagnosis() {
    return derived_.diagnosis(book_, seen_cut(scratch.inputs));
}

const Outcome<tune::Coupon>& App::coupon() {
    return derived_.coupon(book_, scratch.inputs.coupon);
}

void App::say(std::string_view what, Sign sign) {
    said_ = what;
    said_sign_ = sign;
}

std::string App::say(const Text& text) const {
    return torchside::say(text, speech());
}

std::vector<std::string> App::say_all(const std::vector<Text>& texts) const {
    std::vector<std::string> out;
    for (const Text& text : texts) {
        out.push_back(say(text));
    }
    return out;
}

bool App::own_keypad() const {
    return !scratch.system_keyboard && !platform::fine_pointer();
}

void App::go(Page page) {
    navigation_.go(page);
    said_.clear();
    left();
}

/// One step on from a change its bar still stands; the second takes it away.
void App::step_on() {
    if (change_ && change_->shown && ++change_->steps > 1) {
        change_.reset();
    }
}

void App::left() {
    step_on();
    recent_.note(book_.job);
    scratch.reset();
    if (!open_panel().starts_with("start")) {
        scratch.before_start.reset();
    }
    refusal_.clear();
    ui_.stop_edit();
}

void App::open(std::string_view panel) {
    navigation_.open(panel);
    left();
}

void App::back() {
    if (ui_.edit()) {
        refusal_.clear();
        ui_.stop_edit();
        return;
    }
    if (navigation_.back()) {
        said_.clear();
    }
    left();
}

namespace {

/// What the entry is that a backup or a link has wrong, and what it may be, as its field says it; none for what no person entered.
struct WrongEntry {
    Text meaning{};
    Text ask{};
};

std::optional<WrongEntry> wrong_entry(const Fault& fault) {
    const auto info = document::field(fault.field);
    if (!info || info->kind == document::FieldKind::object || info->kind == document::FieldKind::outline) {
        return {};
    }
    return WrongEntry{info->meaning, fault.ask.empty() ? document::enter(*info) : fault.ask};
}

Text why_no_link(const Fault& fault) {
    if (fault.field == "link") {
        return fault.told();
    }
    const auto entry = wrong_entry(fault);
    return entry ? Text(words::done::BadLinkEntry{.ask = entry->ask, .meaning = entry->meaning})
                 : Text(words::done::odd_link);
}

Text why_no_backup(const Fault& fault) {
    if (fault.field == "workbook" || fault.text == document::no_version()) {
        return words::done::foreign_file;
    }
    const auto entry = wrong_entry(fault);
    return entry ? Text(words::done::BadEntry{.ask = entry->ask, .meaning = entry->meaning})
                 : Text(words::done::odd_entry);
}

} // namespace

void App::take_route(std::string_view fragment) {
    navigation_.follow(fragment);
    if (fragment.starts_with("#j=")) {
        auto read = document::open_job_link(fragment);
        refusal_ = read.ok() ? "" : say(why_no_link(read.fault()));
        scratch.incoming = {};
        if (read.ok()) {
            scratch.incoming.book = std::move(read.value());
        }
        navigation_.open("incoming");
    }
}

void App::notice(std::string_view kind, std::string_view text) {
    if (hear_manners(kind, text)) {
        return;
    }
    if (kind == "offline-ready") {
        notices_.offline_ready = true;
    } else if (kind == "storage-refused") {
        store_.refuse();
    } else if (kind == "may-be-cleared") {
        notices_.may_be_cleared = true;
    } else if (kind == "kept" || kind == "not-kept" || kind == "behind" || kind == "other-tab") {
        const bool theirs = store_.hears(kind);
        theirs_wait_ = theirs_wait_ || theirs;
        if (theirs_wait_ && (kind == "behind" || !ui_.edit())) {
            take_theirs();
        }
    } else if (kind == "keep") {
        keep_now();
        platform::leave(store_.waiting(), drafts.packed());
    } else if (kind == "late") {
        put_late(text);
    } else if (kind == "typed") {
        drafts.unpack(text, book_);
    } else if (kind == "awake") {
        scratch.bench.awake = text == "on"     ? Bench::Awake::on
                              : text == "none" ? Bench::Awake::none
                                               : Bench::Awake::refused;
    } else if (kind == "words") {
        spoken_.hear();
    } else if (kind == "file") {
        say_of_file(text);
    } else if (kind == "sealed") {
        links.take_sealed(text);
    } else if (kind == "qr") {
        note_issued(links.take_qr(text));
    } else if (kind == "no-qr") {
        scratch.show_qr = false;
        links.fail_qr();
        say(word(words::done::no_qr), Sign::caution);
    } else if (kind == "copied") {
        note_issued(links.handed(kind));
        say_copied();
    } else if (kind == "shared") {
        note_issued(links.handed(kind));
    } else if (kind == "not-copied") {
        links.hand({}, {});
        say(word(words::done::not_copied), Sign::caution);
    } else if (kind == "saved") {
        note_issued(links.handed(kind));
        say(say(words::done::Saved{.file = text}));
    } else if (kind == "not-saved") {
        links.hand({}, {});
        say(say(words::done::NotSaved{.file = text}), Sign::caution);
    } else if (kind == "route") {
        step_on();
        take_route(text);
    }
}

void App::print_chart() {
    printing_chart_ = true;
    platform::print();
}

std::string App::to_print() {
    const bool chart = std::exchange(printing_chart_, false) || open_panel() == "chart";
    return chart ? prints::chart(*this) : prints::card(*this);
}

void App::open_file(std::string_view text) {
    if (document::looks_like_cuts(text)) {
        auto cuts = document::read_cuts(text);
        go(Page::tune);
        open("taken");
        scratch.cuts = cuts ? std::move(cuts.value()) : std::vector<tune::SharedCut>();
        refusal_ = cuts ? "" : say(cuts.fault().told());
        return;
    }
    auto read = document::read_workbook(text);
    if (read.ok()) {
        bring(std::move(read.value()), Incoming::From::backup);
        return;
    }
    say_of_file(say(why_no_backup(read.fault())));
}

void App::bring(Workbook book, Incoming::From from) {
    scratch.incoming = {std::move(book), from};
    go(Page::shop);
    open("incoming");
}

void App::rescue() {
    if (auto read = store_.salvage()) {
        const int lost = read->lost;
        bring(std::move(read->workbook), Incoming::From::damaged);
        scratch.incoming.lost = lost;
    } else {
        refusal_ = word(words::done::unreadable);
    }
}

void App::let_go() {
    scratch.letting_go = false;
    store_.begin_anew();
    keep_soon();
    keep_now();
}

void App::say_of_file(std::string_view why) {
    go(Page::shop);
    open("kept"); // where backups are opened: the reason stands there
    refusal_ = why;
}

void App::build(Pen& pen, Rect screen, double now) {
    derived_.begin_build(book_);
    navigation_.fit(screen.w);
    ui_.speak(speech().language);
    ui_.begin(pen, tokens(), screen, now, book_.shop.display.glove);
    pen.fill(screen, tokens().ground);
    lay_out(*this, screen, navigation_.columns());
    if (ui_.gesture.pulled() > 0) {
        pull_strip(*this, screen);
    }
    ui_.end();
    derived_.end_build();
    if (theirs_wait_ && !ui_.edit()) {
        take_theirs();
        platform::request_frame();
    }
    if (change_ && !ui_.edit() && !ui_.gesture.drags()) {
        change_->typed.clear(); // the next letter typed anywhere, or the next drag, is another change
    }
}

ImDrawData* App::frame(const Fonts& fonts, float density, Rect screen, double now) {
    const bool gliding = ui_.gesture.glide(now, ui_.regions);
    for (int built = 0; built < most_builds; ++built) {
        Pen pen(canvas_.start(screen.w * density, screen.h * density), fonts, density);
        build(pen, screen, now);
        if (ui_.changed()) {
            continue;
        }
        // The field under edit went with a window that grew narrow: its panel stood beside the place. What was typed has been taken,
        // or kept as a draft, letter by letter. Before the whole program is there the panel may yet come.
        if (!platform::whole() || !ui_.edit() || ui_.tree().find(ui_.edit()->id) != nullptr) {
            break;
        }
        ui_.stop_edit();
    }
    publish();
    if (change_) {
        change_->shown = true;
    }
    if (gliding) {
        platform::request_frame();
    }
    const double until_shown = ui_.gesture.until_shown(now);
    if (until_shown >= 0) {
        platform::wake(static_cast<int>(until_shown) + 1);
    }
    return canvas_.finish();
}

void App::frame_without_canvas(double now) {
    // ImGui still lays out text; it needs a font atlas and a size, not a graphics card.
    static Fonts fonts;
    static bool built = false;
    if (!built) {
        fonts.build(1);
        built = true;
    }
    frame(fonts, 1, {0, 0, 360, 740}, now);
}

void App::publish() {
    if (&tokens() != announced_theme_) {
        announced_theme_ = &tokens();
        platform::theme(announced_theme_->name, announced_theme_->ground_css);
    }
    const std::string path = navigation_.address();
    if (path != announced_) {
        announced_ = path;
        platform::place(path);
    }
    if (ui_.moving()) {
        return; // places move with every frame of a scroll; the page learns them when it rests
    }
    std::string wire = ui_.tree().wire();
    if (wire != published_) {
        published_ = std::move(wire);
        platform::publish(published_);
    }
}

} // namespace torchside::web
