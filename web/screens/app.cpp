#include "web/screens/app.hpp"

#include <utility>

#include "core/store/workbook_file.hpp"
#include "generated/words/done.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/paper.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

constexpr float two_columns = 700;
constexpr float three_columns = 1100;
constexpr int most_builds = 6; // an activation, what it opens, the field after it, and a view that shrank: never a loop

} // namespace

App::App() {
    take_route(platform::fragment());
    book_ = store_.load();
    model_ = ShopModel(book_.shop);
    worksheet_ = evaluate(book_, &part_memo_, model_);
}

const Tokens& App::tokens() const {
    switch (book_.shop.display.theme) {
    case Theme::paper:
        return paper;
    case Theme::night:
        return night;
    case Theme::automatic:
        break;
    }
    return platform::prefers_dark() ? night : paper;
}

void App::drop_stale() {
    if (stale_ && !building_) {
        stale_ = false;
        if (chart_inputs_ != chart_inputs(book_.shop, book_.job.material, model_)) {
            chart_.reset(); // no thickness changes it
        }
        tuning_.reset();
        reading_.reset();
        coupon_.reset();
    }
}

const Chart& App::chart() {
    drop_stale();
    if (!chart_) {
        chart_inputs_ = chart_inputs(book_.shop, book_.job.material, model_);
        chart_ = torchside::chart(book_.shop, book_.job.material, model_);
    }
    return *chart_;
}

const Outcome<Tuning>& App::tuning() {
    drop_stale();
    if (!tuning_) {
        tuning_ = torchside::tuning(book_, model_);
    }
    return *tuning_;
}

SeenCut App::seen() const {
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    SeenCut s;
    s.signs = scratch.cut.signs;
    s.measured.kerf_top = length(scratch.cut.kerf_top);
    s.measured.kerf_bottom = length(scratch.cut.kerf_bottom);
    s.measured.left_deg = scratch.cut.left_deg;
    s.measured.right_deg = scratch.cut.right_deg;
    s.measured.lag = length(scratch.cut.lag);
    s.height = length(scratch.cut.height);
    if (scratch.cut_feed) {
        s.feed = Speed{*scratch.cut_feed, mm_min};
    }
    if (scratch.cut.arc) {
        s.arc = Voltage{*scratch.cut.arc, volt};
    }
    return s;
}

const Outcome<tune::CutDiagnosis>& App::reading() {
    drop_stale();
    const SeenCut now = seen();
    if (!reading_ || !(read_ == now)) {
        reading_ = read_cut(book_, now, model_);
        read_ = now;
    }
    return *reading_;
}

const Outcome<tune::Coupon>& App::coupon() {
    drop_stale();
    if (!coupon_ || coupon_kind_ != scratch.coupon) {
        coupon_kind_ = scratch.coupon;
        coupon_ = torchside::coupon(book_, scratch.coupon, model_);
    }
    return *coupon_;
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
    return !system_keyboard && !platform::fine_pointer();
}

void App::go(Page page) {
    page_ = page;
    said_.clear();
    open("");
}

/// One step on from a change its bar still stands; the second takes it away.
void App::step_on() {
    if (change_ && change_->shown && ++change_->steps > 1) {
        change_.reset();
    }
}

void App::open(std::string_view panel) {
    step_on();
    open_panel_ = panel;
    asked_line_v.reset();
    show_qr = asks_new_key = false; // what is shown to a customer was asked for
    refusal_.clear();
    ui_.stop_edit();
}

void App::back() {
    if (ui_.edit()) {
        refusal_.clear();
        ui_.stop_edit();
    } else if (!open_panel_.empty()) {
        close();
    } else {
        go(Page::cut);
    }
}

void App::take_route(std::string_view fragment) {
    page_ = Page::cut;
    if (fragment.starts_with("#j=")) {
        auto read = document::open_job_link(fragment);
        refusal_ = read.ok() ? "" : read.fault().field + ": " + say(read.fault().text);
        incoming = read.ok() ? std::optional(std::move(read.value())) : std::nullopt;
        incoming_from = From::link;
        open_panel_ = "incoming";
        return;
    }
    std::string_view rest;
    for (const PageRow& row : pages()) {
        if (fragment.starts_with(row.address)) {
            page_ = row.page;
            rest = fragment.substr(row.address.size());
        }
    }
    open_panel_ = rest.size() > 1 && rest[0] == '/' ? rest.substr(1) : std::string_view();
}

void App::pointer_up(Point p, double now) {
    const std::string tapped = ui_.gesture.up(p, now, ui_.tree(), ui_.regions, !platform::reduced_motion());
    if (!tapped.empty()) {
        ui_.activate(tapped);
    }
}

void App::notice(std::string_view kind, std::string_view text) {
    if (kind == "update-ready") {
        notices_.update_ready = true;
    } else if (kind == "offline-ready") {
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
    } else if (kind == "file") {
        say_of_file(text);
    } else if (kind == "sealed") {
        links.take_sealed(text);
    } else if (kind == "qr") {
        note_issued(links.take_qr(text));
    } else if (kind == "no-qr") {
        show_qr = false;
        links.fail_qr();
        say(word(words::done::no_qr), Sign::caution);
    } else if (kind == "copied") {
        note_issued(links.handed(kind));
        say(word(words::done::copied));
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
    const bool chart = std::exchange(printing_chart_, false) || open_panel_ == "chart";
    return chart ? prints::chart(*this) : prints::card(*this);
}

void App::open_file(std::string_view text) {
    auto read = document::read_workbook(text);
    if (read.ok()) {
        bring(std::move(read.value()), From::backup);
        return;
    }
    const Fault& fault = read.fault();
    const bool foreign = fault.field == "workbook" || fault.text == document::no_version();
    say_of_file(foreign ? say(words::done::foreign_file) : say(words::done::BadEntry{.why = fault.text}));
}

void App::bring(Workbook book, From from) {
    incoming = std::move(book);
    incoming_from = from;
    incoming_lost = 0;
    incoming_key = false;
    go(Page::shop);
    open("incoming");
}

void App::rescue() {
    if (auto read = store_.salvage()) {
        const int lost = read->lost;
        bring(std::move(read->workbook), From::damaged);
        incoming_lost = lost;
    } else {
        refusal_ = word(words::done::unreadable);
    }
}

void App::let_go() {
    letting_go = false;
    store_.begin_anew();
    written_ = document::write_workbook(book_);
    store_.save(book_, written_);
}

void App::say_of_file(std::string_view why) {
    go(Page::shop);
    open("kept"); // where backups are opened: the reason stands there
    refusal_ = why;
}

void App::build(Pen& pen, Rect screen, double now) {
    drop_stale();
    building_ = true;
    columns_ = screen.w >= three_columns ? 3 : screen.w >= two_columns ? 2 : 1;
    ui_.speak(speech().language);
    ui_.begin(pen, tokens(), screen, now, book_.shop.display.glove);
    pen.fill(screen, tokens().ground);
    lay_out(*this, screen, columns_);
    ui_.end();
    building_ = false;
    if (theirs_wait_ && !ui_.edit()) {
        take_theirs();
        platform::request_frame();
    }
    if (change_ && !ui_.edit()) {
        change_->typed.clear(); // the next letter typed anywhere is another change
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
    std::string path(row_of(page_).address);
    if (!open_panel_.empty()) {
        path += '/';
        path += open_panel_;
    }
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
