// What a phone and a desk expect beside the screens: what the page tells of the device, fingers that hold or pull, edges that move.
#include <algorithm>
#include <utility>

#include "core/codec/decimal.hpp"
#include "generated/words/done.hpp"
#include "generated/words/manners.hpp"
#include "generated/words/news.hpp"
#include "generated/words/rows.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/find/find_index.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/tables.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr float pull_enough = 96; // px: no thumb does that by mistake
constexpr float pull_shows = 24;
constexpr int warning_ms = 60; // felt through a glove, and over before it annoys

constexpr std::string_view first_edge = "edge/first";
constexpr std::string_view last_edge = "edge/last";

void edge(Ui& ui, std::string_view id, Label name, float x, float width, Rect screen) {
    constexpr float wide = 14; // what a mouse can hit
    const Rect place{x - wide / 2, screen.y, wide, screen.h};
    ui.node(id, Role::separator, place, name, std::to_string(static_cast<int>(width)));
    const Tokens& t = ui.tokens();
    for (const float side : {-1.5F, 1.5F}) {
        ui.pen().vline(x + side, place.centre().y - 12, place.centre().y + 12, t.quiet, 1);
    }
}

} // namespace

bool App::hear_manners(std::string_view kind, std::string_view text) {
    if (kind == "update-ready") {
        notices_.update_ready = true;
        notices_.update_news = text;
    } else if (kind == "may-install" || kind == "installed") {
        notices_.may_install = kind == "may-install";
    } else if (kind == "find") {
        open_find(*this);
    } else if (kind == "keys") {
        open("keys");
    } else if (kind == "undo" || kind == "redo") {
        if (change() != nullptr && change()->undone == (kind == "redo")) {
            undo();
        }
    } else if (kind == "pasted") {
        paste_into_log(*this, text);
    } else if (kind == "no-clipboard") {
        say(word(words::rows::no_paste), Sign::caution);
    } else if (kind == "edge") { // "edge/first 16", or without a number
        const std::size_t gap = text.find(' ');
        move_edge(text.substr(0, gap),
                  gap == std::string_view::npos
                      ? std::nullopt
                      : std::optional(static_cast<float>(codec::read_decimal(text.substr(gap + 1)))));
    } else {
        return false;
    }
    return true;
}

void App::say_copied() {
    const std::string what = std::exchange(scratch.copied, {});
    say(what.empty() ? std::string(word(words::done::copied))
                     : say(words::manners::Copied{.what = std::string_view(what)}));
}

std::vector<std::string> warning_codes(const App& app) {
    std::vector<std::string> out;
    for (const Verdict& verdict : verdicts(app)) {
        if (verdict.sign != Sign::holds) {
            out.push_back(verdict.code + (verdict.sign == Sign::stop ? "!" : ""));
        }
    }
    return out;
}

void App::feel_warnings() {
    if (!warned_) {
        return;
    }
    const std::vector<std::string> before = std::move(*warned_);
    warned_.reset();
    const std::vector<std::string> now = warning_codes(*this);
    const bool another = std::any_of(now.begin(), now.end(), [&](const std::string& code) {
        return std::find(before.begin(), before.end(), code) == before.end();
    });
    if (another && book_.shop.display.vibration) {
        platform::vibrate(warning_ms);
    }
}

bool App::can_pull() const {
    return !wide() && open_panel().empty() && !platform::fine_pointer();
}

void App::pointer_down(Point p, double now) {
    const Node* node = ui_.tree().control_at(p);
    if (node != nullptr && node->role == Role::separator) {
        edge_ = node->id;
        edge_at_ = p.x;
        return;
    }
    ui_.gesture.down(p, now, ui_.tree(), ui_.regions);
}

void App::pointer_move(Point p, double now) {
    if (!edge_.empty()) {
        move_edge(edge_, p.x - edge_at_);
        edge_at_ = p.x;
        return;
    }
    ui_.gesture.move(p, now, ui_.regions);
}

void App::pointer_up(Point p, double now) {
    if (!edge_.empty()) {
        edge_.clear();
        return;
    }
    const bool pulled = can_pull() && ui_.gesture.pulled() >= pull_enough;
    const std::string tapped = ui_.gesture.up(p, now, ui_.tree(), ui_.regions, !platform::reduced_motion());
    if (pulled) {
        open("news");
    } else if (!tapped.empty() && !(ui_.gesture.held() && copy_figure(*this, tapped))) {
        ui_.activate(tapped);
    } else if (const int by = ui_.gesture.swiped(); by != 0 && scratch.bench.on) {
        ui_.activate(by > 0 ? "bench/next" : "bench/previous");
    }
}

void App::move_edge(std::string_view id, std::optional<float> by) {
    const Navigation::Widths usual;
    Navigation::Widths now = navigation_.widths();
    if (navigation_.columns() < 3) {
        now.last = navigation_.wanted().last; // it has none here
    }
    if (id == first_edge) {
        now.first = by ? now.first + *by : usual.first;
    } else {
        now.last = by ? now.last - *by : usual.last;
    }
    navigation_.widen(now);
    platform::remember("columns", navigation_.packed_widths());
}

void column_edges(App& app, Rect screen, int columns) {
    if (!platform::fine_pointer()) {
        return; // too thin for a finger
    }
    Ui& ui = app.ui();
    const Navigation::Widths widths = app.widths();
    ui.open_group("edges", Role::navigation, screen, words::manners::columns);
    edge(ui, first_edge, words::manners::first_column, screen.x + widths.first + 1, widths.first, screen);
    if (columns > 2) {
        edge(ui, last_edge, words::manners::last_column, screen.right() - widths.last - 1, widths.last, screen);
    }
    ui.close_group();
}

void pull_strip(App& app, Rect screen) {
    Ui& ui = app.ui();
    const float pulled = ui.gesture.pulled();
    if (pulled < pull_shows || app.wide() || !app.open_panel().empty() || platform::fine_pointer()) {
        return;
    }
    const Pen& pen = ui.pen();
    const Rect strip{screen.x, screen.y, screen.w, std::min(pulled, 56.0F)};
    pen.fill(strip, ui.tokens().fill);
    pen.hline(strip.x, strip.right(), strip.bottom(), ui.tokens().rule, 2);
    pen.words_in(strip.inset(14, 0), Type::text, ui.tokens().ink,
                 ui.word(pulled >= pull_enough ? words::news::let_go : words::news::pull), Align::centre);
}

} // namespace torchside::web
