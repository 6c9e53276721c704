// Tune: the feed as the log knows it, the next test cut to make, and one touch to say what it showed.
#include "core/quantity/print.hpp"
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
    const char* name;
    const char* sign;
};
constexpr Shows shows[] = {
    {tune::Verdict::too_slow, "tune/slow", "Too slow", "Dross below, comes off easily"},
    {tune::Verdict::clean, "tune/clean", "Clean", "Sparks go straight down"},
    {tune::Verdict::too_fast, "tune/fast", "Too fast", "Sparks back over the top"},
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
    pen.text(Type::title, {place.centre().x, place.y + 57}, t.ink, show.name, Align::centre);
    pen.paragraph(Type::label, {place.x + 8, place.y + 78}, t.quiet, show.sign, place.w - 14);
    return used;
}

void add_cut(App& app, Speed feed, tune::Verdict verdict) {
    tune::TestCut cut = cut_of_job(app.book(), feed);
    cut.verdict = verdict;
    if (app.log(document::add(app.book(), cut), verdict == tune::Verdict::clean      ? "Clean cut logged"
                                                : verdict == tune::Verdict::too_fast ? "Too fast logged"
                                                                                     : "Too slow logged")) {
        app.scratch.cut_feed.reset();
    }
}

/// Why the feed to cut at is not where the curve is highest; empty when it is.
std::string why_off_top(const App& app, const tune::Outlook& o) {
    const std::string start = "The curve is highest at " + show_text(o.top, app.book().shop.display.units) + ", but ";
    switch (o.off_top) {
    case tune::OffTop::no:
        break;
    case tune::OffTop::table:
        return start + "this table is slower than that.";
    case tune::OffTop::leans:
        return start + "it leans: more of it is clean at this feed.";
    case tune::OffTop::tells_more:
        return start + "a miss at this feed tells more: fewer test cuts are left.";
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
    const char* name = o.stop ? "Cut at" : "Cut next at";
    ui.node("tune/next", Role::text, {left.x, left.y, left.w, 76}, name, next.whole());
    ui.node("tune/chance", Role::text, {right.x, right.y, right.w, 76}, "Chance it is clean", chance.text(), {},
            "90 % and you are done");
    pen.text(Type::label, {left.x, left.y + 8}, t.quiet, name);
    pen.figure(Type::second, {left.x, left.y + 22}, t.ink, t.quiet, next.number, next.unit);
    pen.text(Type::label, {right.x, right.y + 8}, t.quiet, "Chance it is clean");
    pen.figure(Type::second, {right.x, right.y + 22}, t.ink, t.quiet, chance.number, "%");
    pen.text(Type::label, {right.x, right.y + 54}, t.quiet, o.stop ? "Done: sure enough" : "90 % and you are done");
    column.text("tune/advice", app.say(o.advice));
    if (const std::string why = why_off_top(app, o); !why.empty()) {
        column.gap(4);
        column.note("tune/why", why);
    }
    column.gap(12);
}

void what_it_showed(Body& column, const tune::Outlook& o) {
    App& app = column.app;
    column.reading("field/scratch/cut_feed", "Cut at", "Feed of the cut you made; the next one if left alone",
                   FieldUnit::mm_min, app.scratch.cut_feed);
    // What was asked for is what was dialled in: the log gets the figure that stood on the screen.
    const UnitSystem units = app.book().shop.display.units;
    const Speed next = to_dial(o.next, app.book().shop.table.max_feed, units);
    const Speed feed = app.scratch.cut_feed ? Speed{*app.scratch.cut_feed, mm_min} : next;
    column.gap(12);
    column.note("tune/shows", "What did the cut at " + print(feed, units).text() + " show?");
    column.gap(6);
    const Grid tiles = column.grid(std::size(shows), 3, 136);
    for (std::size_t i = 0; i < std::size(shows); ++i) {
        if (tile(app.ui(), tiles.cell(i), shows[i])) {
            add_cut(app, feed, shows[i].verdict);
        }
    }
    column.gap(12);
}

/// The panels of this page, in one row, so that each is one touch away.
void panel_tiles(Body& column) {
    struct Tile {
        const char* panel;
        const char* title;
        std::string quiet;
        Mark mark;
    };
    App& app = column.app;
    const Tile tiles[] = {{"read", "Read a cut", "What you see, what to turn, how far", Mark::tune},
                          {"coupon", "Test coupons", "Ladders, kerf, tilt: programs to cut", Mark::part},
                          {"log", "The log",
                           std::to_string(app.book().shop.tests.size()) + " cuts, to look at, correct or delete",
                           Mark::quote}};
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
        pen.text(Type::text, {cell.centre().x, cell.y + 34}, t.ink, tile.title, Align::centre);
    }
}

/// The question of the page, and how many cuts answer it.
void question(Body& column) {
    const Pen& pen = column.ui().pen();
    const Colour quiet = column.ui().tokens().quiet;
    const std::size_t here = cuts_of_job(column.app.book()).size();
    const std::string count = std::to_string(here) + (here == 1 ? " cut of this stock" : " cuts of this stock");
    column.gap(8);
    const Rect row = column.inside(20);
    pen.text(Type::label, {row.x, row.y}, quiet, "Which feed is right");
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
    framed_screen(app, place, "tune", "Tune", Drawer::of(body), feed_field);
}

} // namespace torchside::web
