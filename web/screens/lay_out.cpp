// The sheet of paper: title block, places, and one, two or three columns. Nothing is stretched.
#include "core/stock/properties.hpp"
#include "generated/words/change.hpp"
#include "generated/words/place.hpp"
#include "generated/words/settings.hpp"
#include "generated/words/title.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

/// Opens a field with what stands in it, or with what was typed there and not taken.
void edit(App& app, std::string_view id, const std::string& stands) {
    const Draft* draft = app.drafts.find(id);
    app.ui().start_edit(id, draft != nullptr ? draft->text : stands);
}

/// `brief`: what stands there where the label is too long for the cell.
bool title_cell(Ui& ui, std::string_view id, Rect cell, Word label, const Shown& shown, bool open, Word brief = {}) {
    std::string value = shown.unit.empty() ? shown.number : shown.whole();
    if (!shown.other.empty()) {
        value += ", " + shown.other;
    }
    const bool used =
        ui.node(id, Role::button, cell, label, value, open ? "expanded" : "collapsed", words::title::change);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed(id)) {
        pen.fill(cell, t.hairline);
    }
    const float room = cell.w - 12;
    const Type type = pen.figure_type(Type::title, shown.number, shown.unit, room);
    const float step = Pen::line_height(Type::label) + 5;
    const float top = cell.centre().y - (step + Pen::line_height(Type::title)) / 2 - 1;
    const bool fits = brief == Word{} || pen.width(Type::label, ui.word(label)) <= room;
    pen.words_in({cell.x + 8, top, room, Pen::line_height(Type::label)}, Type::label, t.quiet,
                 ui.word(fits ? label : brief));
    if (shown.unit.empty()) {
        pen.words_in({cell.x + 8, top + step - 1, room, Pen::line_height(Type::title)}, Type::title, t.ink,
                     shown.number);
        return used;
    }
    const float end = pen.figure(type, {cell.x + 8, top + step}, t.ink, t.quiet, shown.number, shown.unit);
    if (!shown.other.empty() && end + 7 + pen.width(Type::label, shown.other) <= cell.right() - 4) {
        pen.text(Type::label, {end + 7, top + step + 2}, t.quiet, shown.other);
    }
    return used;
}

void units_switch(App& app, Rect cell) {
    Ui& ui = app.ui();
    const bool metric = app.metric();
    if (ui.node("title/units", Role::button, cell, words::title::units,
                app.word(metric ? words::title::metric : words::title::inch), {}, words::title::switch_units)) {
        app.take(document::set(app.book(), "shop.display.units", metric ? "inch" : "metric"),
                 metric ? words::change::inch : words::change::metric);
    }
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed("title/units")) {
        pen.fill(cell, t.hairline);
    }
    const float w = ui.glove() ? 56.0F : 32.0F;
    const float h = ui.glove() ? 32.0F : 18.0F; // of each half
    const Rect box{cell.centre().x - w / 2, cell.centre().y - h, w, 2 * h};
    pen.fill({box.x, metric ? box.y : box.y + h, w, h}, t.ink);
    pen.frame(box, t.ink, 1.5F);
    const float top = box.y + (h - Pen::line_height(Type::label)) / 2;
    pen.text(Type::label, {box.centre().x, top}, metric ? t.ground : t.ink, "mm", Align::centre);
    pen.text(Type::label, {box.centre().x, top + h}, metric ? t.ink : t.ground, "in", Align::centre);
}

/// Lines above the places when the page has something to say: of the user's work first, and never instead of it.
void notice_strip(App& app, Rect& rest) {
    if (app.notices().update_ready) {
        update_strip(app, rest);
    }
    if (!storage_alert(app).empty()) {
        storage_strip(app, rest);
    }
}

/// What has just been done. The page reads it out.
void said_strip(App& app, Rect strip) {
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    pen.hline(strip.x, strip.right(), strip.y, t.rule, 1);
    draw_sign(pen, t, app.said_sign(), {strip.x + 24, strip.centre().y});
    const float room = strip.w - 60;
    const float h = pen.paragraph(Type::label, {}, {}, app.said(), room, false);
    pen.paragraph(Type::label, {strip.x + 46, strip.centre().y - h / 2}, t.ink, app.said(), room);
    app.ui().node("said", Role::status, strip, app.said(), {}, "live");
}

void live_words(App& app) {
    std::string spoken;
    if (const auto& settings = app.worksheet().settings) {
        spoken = app.say(words::settings::Feed{.feed = show_feed(app, settings->feed.value).whole()});
    } else {
        spoken = app.say(app.worksheet().capacity.reason);
    }
    if (app.change() != nullptr) {
        spoken = change_words(app) + spoken;
    }
    if (app.open_panel().starts_with("start")) {
        spoken.insert(0, start_words(app));
    }
    app.ui().node("live", Role::status, {0, 0, 1, 1}, spoken, {}, "live");
}

/// Title block and places at the top of what scrolls: a low window has no height for them to stand in.
void lead_with_places(App& app) {
    Ui& ui = app.ui();
    ui.lead_with({&app, title_block_height(ui) + place_bar_height(ui), [](void* of, Rect place) {
                      App& it = *static_cast<App*>(of);
                      title_block(it, place.take_top(title_block_height(it.ui())));
                      place_bar(it, place);
                  }});
}

void left_side(App& app, Rect column) {
    Ui& ui = app.ui();
    const bool covered = !app.wide() && !app.open_panel().empty();
    const bool typing = !app.wide() && ui.edit() && app.own_keypad(); // the keypad needs the room
    // Questions have the screen to themselves, and a chart needs all of it for all plates at once.
    const bool whole = covered && (app.open_panel() == "chart" || app.open_panel().starts_with("start"));
    if (!ui.low() && !whole) {
        title_block(app, column.take_top(title_block_height(ui)));
        if (!typing) {
            place_bar(app, column.take_bottom(place_bar_height(ui)));
        }
    } else if (!covered) {
        lead_with_places(app);
    }
    if (app.book().shop.example) {
        const bool slim = typing || ui.low();
        example_strip(app, column.take_top(example_strip_height(ui, slim)), slim);
    }
    if (!typing) {
        // A bar that comes must not move what the thumb is on, nor put Undo in its place: there it has room of its own.
        const bool keeps_room = covered && app.open_panel().starts_with("start");
        if (app.change() != nullptr) {
            change_bar(app, column);
        } else if (keeps_room && !ui.low()) {
            column.take_bottom(change_bar_height(ui));
        }
        const bool waits = app.drafts.first() != nullptr;
        if (waits && app.open_panel() != "send" && !draft_in_sight(app)) {
            draft_bar(app, column);
        }
        if (!app.said().empty()) {
            said_strip(app, column.take_bottom(52));
        }
        notice_strip(app, column);
        if (!ui.low() ||
            (app.change() == nullptr && app.drafts.first() == nullptr)) { // or no room is left for the places
            first_steps(app, column);
        }
    }
    if (covered) {
        draw_panel(app, column, app.open_panel(), true);
    } else {
        row_of(app.page()).screen(app, column);
    }
    ui.lead_with({});
}

/// A panel gets the width that its lines can use; what is left shows the part of the quote, or the chart.
void beside_panel(App& app, Rect place, std::string_view panel, bool another) {
    constexpr float widest_panel = 640;
    constexpr float least_picture = 360;
    Rect rest = place;
    if (place.w >= widest_panel + 2 + least_picture) {
        place = rest.take_left(widest_panel);
        app.ui().pen().vline(rest.x + 1, rest.y, rest.bottom(), app.ui().tokens().rule, 2);
        rest.take_left(2);
        row_of(app.page()).picture(app, rest);
    }
    draw_panel(app, place, panel, another);
}

} // namespace

std::string panel_on_show(const App& app) {
    return !app.open_panel().empty() || !app.wide() ? app.open_panel() : std::string(row_of(app.page()).panel);
}

float title_block_height(const Ui& ui) {
    return ui.low() && !ui.glove() ? 50.0F : std::max(58.0F, ui.touch_height() + 2);
}

void title_block(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Job& job = app.book().job;
    const Units units = app.units();
    ui.open_group("title", Role::group, place, words::title::job);
    pen.hline(place.x, place.right(), place.bottom() - 1, t.rule, 2);
    Rect row{place.x, place.y, place.w, place.h - 2};
    const Rect units_cell = row.take_left(ui.glove() ? 84.0F : 58.0F); // away from Close, which is below the right end
    const float w = row.w;
    const Rect metal = row.take_left(w * 0.38F);
    const Rect thickness = row.take_left(w * (ui.glove() ? 0.35F : 0.38F));
    const bool open = app.open_panel() == "stock";
    if (title_cell(ui, "title/metal", metal, words::title::metal, {app.say(stock::name(job.material)), "", ""}, open)) {
        app.open("stock");
        ui.show("stock/metal");
    }
    if (title_cell(ui, "title/thickness", thickness, words::title::thickness,
                   show_plate(job.thickness, job.material, units), open)) {
        app.open("stock");
        edit(app, "stock/thickness", show_plate(job.thickness, job.material, units).whole());
    }
    if (title_cell(ui, "title/current", row, words::title::current, show(job.current, units), open,
                   words::title::current_short)) {
        app.open("stock");
        edit(app, "stock/current", show(job.current, units).whole());
    }
    units_switch(app, units_cell);
    for (const float x : {metal.x, thickness.x, row.x}) {
        pen.vline(x, place.y, place.bottom() - 2, t.rule, 1);
    }
    ui.close_group();
}

float place_bar_height(const Ui& ui) {
    return ui.low() && !ui.glove() ? 50.0F : std::max(63.0F, ui.touch_height() + 2);
}

void place_bar(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    ui.open_group("places", Role::navigation, place, words::place::all);
    pen.hline(place.x, place.right(), ui.low() ? place.bottom() - 1 : place.y + 1, t.rule, 2); // to the content
    const float w = place.w / static_cast<float>(pages().size());
    char key = '0';
    Rect rest{place.x, place.y + (ui.low() ? 0.0F : 2.0F), place.w, place.h - 2};
    for (const PageRow& row : pages()) {
        const Rect cell = rest.take_left(w);
        const bool here = app.page() == row.page;
        std::string state = here ? "current " : "";
        if (app.book().shop.display.number_keys) {
            state += "key-";
            state += ++key;
        }
        if (ui.node(row.tab, Role::tab, cell, row.name, {}, state)) {
            app.go(row.page);
        }
        if (ui.pressed(row.tab)) {
            pen.fill(cell, t.hairline);
        }
        if (here) {
            pen.fill({cell.x, cell.y - 1, cell.w, 5}, t.accent);
        }
        const float grow = ui.glove() ? 1.5F : 1.0F;
        const float top = cell.centre().y - 14 * grow - Pen::line_height(Type::label) / 2;
        draw_mark(pen, row.mark, {cell.centre().x, top + 14 * grow}, here ? t.ink : t.quiet, grow);
        pen.text(here ? Type::strong_label : Type::label, {cell.centre().x, top + 28 * grow}, here ? t.ink : t.quiet,
                 app.word(row.name), Align::centre);
        if (cell.x > place.x) {
            pen.vline(cell.x, cell.y, cell.bottom(), t.hairline, 1);
        }
    }
    ui.close_group();
}

namespace {

/// The second and third column. The first answer stands in the first; these follow when all of the program is there.
[[gnu::noinline]] void beside_answer(App& app, Rect screen, int columns) {
    Ui& ui = app.ui();
    const Rect all = screen;
    const PageRow& row = row_of(app.page());
    const bool pictured = row.answer == nullptr;                                               // a column of its own
    const bool twice = columns == 3 && app.page() == Page::cut && app.open_panel() == "chart"; // stands there already
    const std::string panel = !app.open_panel().empty() && !twice ? app.open_panel() : row.panel;
    const bool another = panel != row.panel; // closing it brings the usual one back
    if (columns == 2) {
        if (pictured && app.open_panel().empty()) {
            row.picture(app, screen);
        } else {
            draw_panel(app, screen, panel, pictured || another);
        }
        return;
    }
    const Rect right = screen.take_right(app.widths().last);
    ui.pen().vline(right.x - 1, all.y, all.bottom(), ui.tokens().rule, 2);
    screen.w -= 2;
    if (pictured) {
        row.picture(app, screen);
        draw_panel(app, right, panel, another);
    } else {
        beside_panel(app, screen, panel, another);
        row.answer(app, right);
    }
}

} // namespace

void lay_out(App& app, Rect screen, int columns) {
    const Pen& pen = app.ui().pen();
    live_words(app);
    const bool bench = app.open_panel() == "bench";
    if (bench != app.scratch.bench.on) {
        turn_bench(app, bench);
    }
    if (bench) {
        bench_screen(app, screen);
        return;
    }
    if (columns == 1) {
        left_side(app, screen);
        return;
    }
    const Rect all = screen;
    const Rect left = screen.take_left(app.widths().first);
    left_side(app, left);
    pen.vline(screen.x + 1, screen.y, screen.bottom(), app.ui().tokens().rule, 2);
    screen.take_left(2);
    if (platform::whole()) {
        beside_answer(app, screen, columns);
        column_edges(app, all, columns);
    } else {
        platform::request_frame(); // comes when it is
    }
}

} // namespace torchside::web
