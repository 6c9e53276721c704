// Tune: the feed as the log knows it, the next test cut to make, and one touch to say what it showed.
#include <algorithm>
#include <span>

#include "core/quantity/print.hpp"
#include "core/worksheet/set_wear.hpp"
#include "generated/words/common.hpp"
#include "generated/words/coupon.hpp"
#include "generated/words/feed_test.hpp"
#include "generated/words/log.hpp"
#include "generated/words/place.hpp"
#include "generated/words/read_cut.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/tune_picture.hpp"
#include "web/screens/tune/verdict_cards.hpp"

namespace torchside::web {
namespace {

/// Why the feed to cut at is not where the curve is highest; empty when it is.
std::string why_off_top(const App& app, const tune::Outlook& o) {
    switch (o.off_top) {
    case tune::OffTop::no:
        break;
    case tune::OffTop::table:
        return app.say(words::feed_test::TopTable{.feed = o.top});
    case tune::OffTop::leans:
        return app.say(words::feed_test::TopLeans{.feed = o.top});
    case tune::OffTop::tells_more:
        return app.say(words::feed_test::TopTells{.feed = o.top});
    }
    return {};
}

/// Why Cut shows another feed than this page; empty when it does not.
std::string why_not_cut(const App& app, const std::string& next) {
    const auto& settings = app.worksheet().settings;
    const std::string there = settings ? show_feed(app, settings->feed.value).whole() : next;
    if (there == next) {
        return {};
    }
    return settings->feed_capped ? app.say(words::feed_test::CutFastest{.feed = there})
                                 : app.say(words::feed_test::CutMiddle{.feed = there});
}

void next_cut(Body& column, const tune::Outlook& o) {
    const App& app = column.app;
    Ui& ui = column.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float more = ui.glove() ? 6.0F : 0.0F; // for larger words over the figures
    Rect right = column.inside(78 + 2 * more);
    const Rect left = right.take_left(right.w / 2);
    const Shown next = show_feed(app, o.stop ? o.best : o.next);
    const Printed chance = print_percent(o.stop ? o.best_clean : o.next_clean);
    const std::string_view name = app.word(o.stop ? words::feed_test::cut_at : words::feed_test::cut_next_at);
    ui.node("tune/next", Role::text, {left.x, left.y, left.w, right.h - 2}, name, next.whole());
    ui.node("tune/chance", Role::text, {right.x, right.y, right.w, right.h - 2}, words::common::clean_chance,
            chance.text(), {}, words::feed_test::aim);
    const float figure = 22 + more;
    pen.text(Type::label, {left.x, left.y + 8}, t.quiet, name);
    pen.figure(Type::second, {left.x, left.y + figure}, t.ink, t.quiet, next.number, next.unit);
    pen.text(Type::label, {right.x, right.y + 8}, t.quiet, app.word(words::common::clean_chance));
    pen.figure(Type::second, {right.x, right.y + figure}, t.ink, t.quiet, chance.number, "%");
    pen.text(Type::label, {right.x, right.y + figure + 32 + more}, t.quiet,
             app.word(o.stop ? words::feed_test::done : words::feed_test::aim));
    const float before = column.height();
    column.text("tune/advice", app.say(o.advice));
    column.gap(std::max(0.0F, 2 * Pen::line_height(Type::text) - (column.height() - before)) + 12);
}

/// Why the next feed is what it is. Below the tiles, which stay where they are whatever is said here.
void reasons(Body& column, const tune::Outlook& o) {
    const App& app = column.app;
    const std::string next = show_feed(app, o.stop ? o.best : o.next).whole();
    if (const std::string why = why_off_top(app, o); !why.empty()) {
        column.gap(4);
        column.note("tune/why", why);
    }
    if (const std::string why = why_not_cut(app, next); !why.empty()) {
        column.gap(4);
        column.note("tune/cut", why);
    }
    const auto& trail = app.worksheet().trail;
    if (trail && set_slows(*trail, app.book().shop)) {
        column.gap(4);
        column.note("tune/worn", app.say(set_slows_why(*trail, app.book().shop)));
    }
    column.gap(12);
}

void what_it_showed(Body& column, const tune::Outlook& o) {
    App& app = column.app;
    column.reading("field/scratch/cut_feed", words::feed_test::cut_at, words::feed_test::feed_about, FieldUnit::mm_min,
                   app.scratch.inputs.cut_feed);
    // What was asked for is what was dialled in: the log gets the figure that stood on the screen.
    const Units units = app.units();
    const Speed next = to_dial(o.next, app.book().shop.table.max_feed, units);
    const Speed feed = app.scratch.inputs.cut_feed ? Speed{*app.scratch.inputs.cut_feed, mm_min} : next;
    column.gap(12);
    column.note("tune/shows", app.say(words::feed_test::CameOut{.feed = feed}));
    column.gap(6);
    const std::span<const Shows> shows = all_shows();
    const Grid tiles = column.grid(shows.size(), 3, 136);
    for (std::size_t i = 0; i < shows.size(); ++i) {
        if (verdict_card(app.ui(), tiles.cell(i), shows[i], "tune/")) {
            log_verdict(app, feed, shows[i]);
        }
    }
    column.gap(12);
}

/// The panels of this page, in one row, so that each is one touch away.
void panel_tiles(Body& column) {
    struct Tile {
        const char* panel;
        Word title;
        std::string quiet;
        Mark mark;
    };
    App& app = column.app;
    const int logged = static_cast<int>(app.book().shop.tests.size());
    const Tile tiles[] = {
        {"read", words::read_cut::title, app.say(words::feed_test::read_about), Mark::tune},
        {"coupon", words::coupon::title, app.say(words::feed_test::coupon_about), Mark::part},
        {"log", words::log::title, app.say(words::feed_test::LogAbout{.count = logged}), Mark::quote}};
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Grid grid = column.grid(std::size(tiles), 3, std::max(60.0F, ui.touch_height()));
    for (std::size_t i = 0; i < std::size(tiles); ++i) {
        const Tile& tile = tiles[i];
        const std::string id = std::string("tune/") + tile.panel;
        const bool open = app.open_panel() == tile.panel;
        const Rect cell = grid.cell(i);
        if (ui.node(id, Role::button, cell, tile.title, {}, open ? "expanded" : "collapsed", tile.quiet)) {
            app.open(tile.panel);
        }
        pen.fill(cell, ui.pressed(id) ? t.hairline : open ? t.fill : t.ground);
        pen.frame(cell, t.ink, 1);
        draw_mark(pen, tile.mark, {cell.centre().x, cell.y + 18}, t.ink);
        pen.text(Type::text, {cell.centre().x, cell.y + 34}, t.ink, ui.word(tile.title), Align::centre);
    }
}

/// The question of the page, and how many cuts answer it.
void question(Body& column) {
    const Pen& pen = column.ui().pen();
    const Colour quiet = column.ui().tokens().quiet;
    const int here = static_cast<int>(cuts_of_job(column.app.book()).size());
    const std::string count = column.app.say(words::feed_test::Here{.count = here});
    column.gap(8);
    const Rect row = column.inside(20);
    pen.text(Type::label, {row.x, row.y}, quiet, column.app.word(words::feed_test::question));
    pen.text(Type::label, {row.right(), row.y}, quiet, column.width() > 340 ? count : "", Align::right);
}

} // namespace

void tune_screen(App& app, Rect place) {
    constexpr std::string_view feed_field = "field/scratch/cut_feed";
    const auto body = [&](Body& column) {
        question(column);
        if (const auto& tuning = app.tuning(); tuning.ok()) {
            tune_picture(app, column.inside(tune_picture_height(column.view())), tuning.value());
            column.rule();
            next_cut(column, tuning.value().outlook);
            column.rule();
            what_it_showed(column, tuning.value().outlook);
        } else {
            column.refusal("tune/refused", app.say(tuning.fault().told()));
            column.gap(14);
        }
        panel_tiles(column);
        column.gap(8);
        if (const auto& tuning = app.tuning(); tuning.ok()) {
            reasons(column, tuning.value().outlook);
        }
    };
    framed_screen(app, place, "tune", words::place::tune, Drawer::of(body), feed_field);
}

} // namespace torchside::web
