// Tune: the feed as the log knows it, the next test cut to make, and one touch to say what it showed.
#include "core/quantity/print.hpp"
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

namespace torchside::web {
namespace {

struct Shows {
    tune::Verdict verdict;
    const char* id;
    Word name, sign;
    Word logged; // what the undo bar calls it
};
constexpr Shows shows[] = {
    {tune::Verdict::too_slow, "tune/slow", words::common::too_slow, words::feed_test::slow_sign,
     words::feed_test::slow_logged},
    {tune::Verdict::clean, "tune/clean", words::common::clean, words::feed_test::clean_sign,
     words::feed_test::clean_logged},
    {tune::Verdict::too_fast, "tune/fast", words::common::too_fast, words::feed_test::fast_sign,
     words::feed_test::fast_logged},
};

/// A cut seen from the side, with what the eye looks for: drops under the plate, sparks below, or sparks over the top.
void cut_drawing(const Pen& pen, const Tokens& t, tune::Verdict verdict, Point c) {
    const Rect left{c.x - 36, c.y - 8, 30, 16};
    const Rect right{c.x + 6, c.y - 8, 30, 16};
    for (const Rect plate : {left, right}) {
        pen.fill(plate, t.fill);
        pen.frame(plate, t.ink, 1.5F);
    }
    pen.fill({c.x - 2, c.y - 20, 4, 28}, t.ink);
    switch (verdict) {
    case tune::Verdict::too_slow:
        for (const float x : {-10.0F, 10.0F}) {
            pen.disc({c.x + x, c.y + 11}, 4.5F, t.ink);
        }
        break;
    case tune::Verdict::clean:
        for (const float x : {-7.0F, 0.0F, 7.0F}) {
            pen.line({c.x, c.y + 9}, {c.x + x, c.y + 22}, t.accent, 2);
        }
        break;
    case tune::Verdict::too_fast:
        for (const float x : {-18.0F, -9.0F, 9.0F, 18.0F}) {
            pen.line({c.x, c.y - 9}, {c.x + x, c.y - 22}, t.accent, 2);
        }
        break;
    }
}

bool tile(Ui& ui, Rect place, const Shows& show) {
    const bool used = ui.node(show.id, Role::button, place, show.name, {}, {}, show.sign);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, ui.pressed(show.id) ? t.hairline : t.ground);
    pen.frame(place, t.ink, 1.5F);
    cut_drawing(pen, t, show.verdict, {place.centre().x, place.y + 30});
    pen.text(Type::title, {place.centre().x, place.y + 57}, t.ink, ui.word(show.name), Align::centre);
    pen.paragraph(Type::label, {place.x + 8, place.y + 78}, t.quiet, ui.word(show.sign), place.w - 14);
    return used;
}

void add_cut(App& app, Speed feed, const Shows& show) {
    tune::TestCut cut = cut_of_job(app.book(), feed);
    cut.verdict = show.verdict;
    if (app.log(document::add(app.book(), cut), show.logged)) {
        app.scratch.cut_feed.reset();
    }
}

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

void next_cut(Body& column, const tune::Outlook& o) {
    const App& app = column.app;
    Ui& ui = column.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    Rect right = column.inside(78);
    const Rect left = right.take_left(right.w / 2);
    const Shown next = show_feed(o.stop ? o.best : o.next, app.book().shop);
    const Printed chance = print_percent(o.stop ? o.best_clean : o.next_clean);
    const std::string_view name = app.word(o.stop ? words::feed_test::cut_at : words::feed_test::cut_next_at);
    ui.node("tune/next", Role::text, {left.x, left.y, left.w, 76}, name, next.whole());
    ui.node("tune/chance", Role::text, {right.x, right.y, right.w, 76}, words::common::clean_chance, chance.text(), {},
            words::feed_test::aim);
    pen.text(Type::label, {left.x, left.y + 8}, t.quiet, name);
    pen.figure(Type::second, {left.x, left.y + 22}, t.ink, t.quiet, next.number, next.unit);
    pen.text(Type::label, {right.x, right.y + 8}, t.quiet, app.word(words::common::clean_chance));
    pen.figure(Type::second, {right.x, right.y + 22}, t.ink, t.quiet, chance.number, "%");
    pen.text(Type::label, {right.x, right.y + 54}, t.quiet,
             app.word(o.stop ? words::feed_test::done : words::feed_test::aim));
    column.text("tune/advice", app.say(o.advice));
    if (const std::string why = why_off_top(app, o); !why.empty()) {
        column.gap(4);
        column.note("tune/why", why);
    }
    column.gap(12);
}

void what_it_showed(Body& column, const tune::Outlook& o) {
    App& app = column.app;
    column.reading("field/scratch/cut_feed", words::feed_test::cut_at, words::feed_test::feed_about, FieldUnit::mm_min,
                   app.scratch.cut_feed);
    // What was asked for is what was dialled in: the log gets the figure that stood on the screen.
    const UnitSystem units = app.book().shop.display.units;
    const Speed next = to_dial(o.next, app.book().shop.table.max_feed, units);
    const Speed feed = app.scratch.cut_feed ? Speed{*app.scratch.cut_feed, mm_min} : next;
    column.gap(12);
    column.note("tune/shows", app.say(words::feed_test::CameOut{.feed = feed}));
    column.gap(6);
    const Grid tiles = column.grid(std::size(shows), 3, 136);
    for (std::size_t i = 0; i < std::size(shows); ++i) {
        if (tile(app.ui(), tiles.cell(i), shows[i])) {
            add_cut(app, feed, shows[i]);
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
        column.gap(12);
    };
    framed_screen(app, place, "tune", words::place::tune, Drawer::of(body), feed_field);
}

} // namespace torchside::web
