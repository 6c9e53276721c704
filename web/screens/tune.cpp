// Tune: the feed as the log knows it, the next test cut to make, and one touch to say what it showed.
#include "core/quantity/print.hpp"
#include "web/kit/controls.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune_picture.hpp"

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

float next_cut(App& app, Point at, float w, const tune::Outlook& o) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float half = w / 2;
    const Shown next = show_feed(o.stop ? o.best : o.next, app.book().shop);
    const Printed chance = print_percent(o.stop ? o.best_clean : o.next_clean);
    const char* name = o.stop ? "Cut at" : "Cut next at";
    ui.node("tune/next", Role::text, {at.x, at.y, half, 76}, name, next.whole());
    ui.node("tune/chance", Role::text, {at.x + half, at.y, half, 76}, "Chance it is clean", chance.text(), {},
            "90 % and you are done");
    pen.text(Type::label, {at.x, at.y + 8}, t.quiet, name);
    pen.figure(Type::second, {at.x, at.y + 22}, t.ink, t.quiet, next.number, next.unit);
    pen.text(Type::label, {at.x + half, at.y + 8}, t.quiet, "Chance it is clean");
    pen.figure(Type::second, {at.x + half, at.y + 22}, t.ink, t.quiet, chance.number, "%");
    pen.text(Type::label, {at.x + half, at.y + 54}, t.quiet, o.stop ? "Done: sure enough" : "90 % and you are done");
    float y = at.y + 78;
    y += words(ui, "tune/advice", Type::text, {at.x, y}, w, app.say(o.advice), t.ink);
    if (const std::string why = why_off_top(app, o); !why.empty()) {
        y += 4 + words(ui, "tune/why", Type::label, {at.x, y + 4}, w, why, t.quiet);
    }
    return y + 12 - at.y;
}

float what_it_showed(App& app, Rect place, const tune::Outlook& o) {
    Ui& ui = app.ui();
    const UnitSystem units = app.book().shop.display.units;
    const float x = place.x + sheet_margin;
    const float w = place.w - 2 * sheet_margin;
    float y = place.y;
    y += scratch_entry(app, {place.x, y, place.w, 0}, "field/scratch/cut_feed", "Cut at",
                       "Feed of the cut you made; the next one if left alone", FieldUnit::mm_min, app.scratch.cut_feed);
    // What was asked for is what was dialled in: the log gets the figure that stood on the screen.
    const Speed next = to_dial(o.next, app.book().shop.table.max_feed, units);
    const Speed feed = app.scratch.cut_feed ? Speed{*app.scratch.cut_feed, mm_min} : next;
    y += 18 + words(ui, "tune/shows", Type::label, {x, y + 12}, w,
                    "What did the cut at " + print(feed, units).text() + " show?", ui.tokens().quiet);
    const float gap = 8;
    const float tile_w = (w - 2 * gap) / 3;
    const float tile_h = 136;
    for (std::size_t i = 0; i < std::size(shows); ++i) {
        if (tile(ui, {x + (tile_w + gap) * static_cast<float>(i), y, tile_w, tile_h}, shows[i])) {
            add_cut(app, feed, shows[i].verdict);
        }
    }
    return y + tile_h + 12 - place.y;
}

/// The sheets of this place, in one row, so that each is one touch away.
float sheet_tiles(App& app, Point at, float w) {
    struct Sheet {
        const char* sheet;
        const char* title;
        std::string quiet;
        Mark mark;
    };
    const Sheet sheets[] = {{"read", "Read a cut", "What you see, what to turn, how far", Mark::tune},
                            {"coupon", "Test coupons", "Ladders, kerf, tilt: programs to cut", Mark::part},
                            {"log", "The log",
                             std::to_string(app.book().shop.tests.size()) + " cuts, to look at, correct or delete",
                             Mark::quote}};
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    constexpr float gap = 8;
    const float cell_w = (w - 2 * gap) / 3;
    const float cell_h = std::max(60.0F, ui.reach());
    for (std::size_t i = 0; i < std::size(sheets); ++i) {
        const Sheet& s = sheets[i];
        const std::string id = std::string("tune/") + s.sheet;
        const bool open = app.open_sheet() == s.sheet;
        const Rect cell{at.x + (cell_w + gap) * static_cast<float>(i), at.y, cell_w, cell_h};
        if (ui.node(id, Role::button, cell, s.title, {}, open ? "expanded" : "collapsed", s.quiet)) {
            app.open(s.sheet);
        }
        pen.fill(cell, ui.pressed(id) ? t.hairline : open ? t.fill : t.ground);
        pen.frame(cell, t.ink, 1);
        draw_mark(pen, s.mark, {cell.centre().x, cell.y + 18}, t.ink);
        pen.text(Type::text, {cell.centre().x, cell.y + 34}, t.ink, s.title, Align::centre);
    }
    return cell_h;
}

} // namespace

void tune_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("tune", Role::main, place, "Tune");
    const bool pad = wants_keypad(app, "field/scratch/cut_feed");
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const Point at = ui.open_region("tune", place);
    const float x = place.x + sheet_margin;
    const float w = place.w - 2 * sheet_margin;
    float y = at.y + 8;
    const std::size_t here = cuts_of_job(app.book()).size();
    const std::string count = std::to_string(here) + (here == 1 ? " cut of this stock" : " cuts of this stock");
    ui.pen().text(Type::label, {x, y}, ui.tokens().quiet, "Which feed is right");
    ui.pen().text(Type::label, {x + w, y}, ui.tokens().quiet, place.w > 340 ? count : "", Align::right);
    y += 20;
    if (const auto& tuning = app.tuning(); tuning.ok()) {
        const float picture = tune_picture_height(place.h);
        tune_picture(app, {x, y, w, picture}, tuning.value());
        y += picture;
        ui.pen().hline(place.x, place.right(), y, ui.tokens().rule, 1.5F);
        y += next_cut(app, {x, y}, w, tuning.value().outlook);
        ui.pen().hline(place.x, place.right(), y, ui.tokens().rule, 1.5F);
        y += what_it_showed(app, {place.x, y, place.w, 0}, tuning.value().outlook);
    } else {
        y += words(ui, "tune/refused", Type::text, {x, y}, w, app.in_units(tuning.fault().text), ui.tokens().stop) + 14;
    }
    y += sheet_tiles(app, {x, y}, w) + 12;
    ui.close_region({place.w, y - at.y});
    if (pad) {
        number_keypad(app, pad_place);
    }
    ui.close_group();
}

} // namespace torchside::web
