// The sheet of paper: title block, places, and one, two or three columns. Nothing is stretched.
#include "core/stock/properties.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/part_picture.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float left_column = 360;
constexpr float right_column = 440;

struct PlaceTab {
    Place place;
    const char* id;
    const char* name;
    Mark mark;
};
constexpr PlaceTab tabs[] = {{Place::cut, "place/cut", "Cut", Mark::cut},
                             {Place::tune, "place/tune", "Tune", Mark::tune},
                             {Place::part, "place/part", "Part", Mark::part},
                             {Place::quote, "place/quote", "Quote", Mark::quote},
                             {Place::shop, "place/shop", "Shop", Mark::shop}};

void place_screen(App& app, Rect place) {
    switch (app.place()) {
    case Place::cut:
        cut_screen(app, place);
        break;
    case Place::tune:
        tune_screen(app, place);
        break;
    case Place::part:
        part_screen(app, place);
        break;
    case Place::quote:
        quote_screen(app, place);
        break;
    case Place::shop:
        shop_screen(app, place);
        break;
    }
}

void picture_panel(App& app, Rect place) {
    if (app.place() == Place::part) {
        part_picture(app, place);
    } else {
        chart_panel(app, place);
    }
}

const char* sheet_beside(Place place) {
    constexpr const char* sheets[] = {"stock", "log", "shape", "costs", "machine"}; // by Place
    return sheets[static_cast<std::size_t>(place)];
}

bool title_cell(Ui& ui, std::string_view id, Rect cell, std::string_view label, const Shown& shown, bool open) {
    std::string value = shown.unit.empty() ? shown.number : shown.whole();
    if (!shown.other.empty()) {
        value += ", " + shown.other;
    }
    const bool used =
        ui.node(id, Role::button, cell, label, value, open ? "expanded" : "collapsed", "Change the stock");
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed(id)) {
        pen.fill(cell, t.hairline);
    }
    const float top = cell.centre().y - 24;
    pen.words_in({cell.x + 8, top + 2, cell.w - 12, Pen::line_height(Type::label)}, Type::label, t.quiet, label);
    if (shown.unit.empty()) {
        pen.words_in({cell.x + 8, top + 22, cell.w - 12, 24}, Type::title, t.ink, shown.number);
        return used;
    }
    const float end = pen.figure(Type::title, {cell.x + 8, top + 24}, t.ink, t.quiet, shown.number, shown.unit);
    if (!shown.other.empty() && end + 7 + pen.width(Type::label, shown.other) <= cell.right() - 4) {
        pen.text(Type::label, {end + 7, top + 26}, t.quiet, shown.other);
    }
    return used;
}

void units_switch(App& app, Rect cell) {
    Ui& ui = app.ui();
    const bool metric = app.metric();
    if (ui.node("title/units", Role::button, cell, "Units", metric ? "metric" : "inch", {},
                "Switch between mm and inch")) {
        app.set("shop.display.units", metric ? "inch" : "metric");
    }
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    if (ui.pressed("title/units")) {
        pen.fill(cell, t.hairline);
    }
    const Rect box{cell.centre().x - 16, cell.centre().y - 18, 32, 36};
    pen.fill({box.x, metric ? box.y : box.y + 18, 32, 18}, t.ink);
    pen.frame(box, t.ink, 1.5F);
    pen.text(Type::label, {box.centre().x, box.y + 0.5F}, metric ? t.ground : t.ink, "mm", Align::centre);
    pen.text(Type::label, {box.centre().x, box.y + 18.5F}, metric ? t.ink : t.ground, "in", Align::centre);
}

/// One line above the places when the page has something to say.
void notice_strip(App& app, Rect& rest) {
    Ui& ui = app.ui();
    const App::Notices& notices = app.notices();
    const bool refused = app.keeper().refused();
    if (!notices.update_ready && !notices.other_tab && !refused && !app.keeper().read_only() && !app.replaced) {
        return;
    }
    const Rect strip = rest.take_bottom(ui.reach());
    ui.pen().hline(strip.x, strip.right(), strip.y, ui.tokens().rule, 1);
    if (app.replaced) {
        undo_row(app, strip);
        return;
    }
    if (notices.update_ready) {
        if (link_row(ui, "notice/update", strip, "New version: use it now", "Your work is kept. Or it waits",
                     Mark::back)) {
            platform::use_update();
        }
        return;
    }
    const std::string_view text = app.keeper().read_only() ? "Saved by a newer Torchside: shown, not overwritten"
                                  : refused                ? "This browser keeps nothing: changes go when it closes"
                                                           : "Open in another tab too: the last change made wins";
    draw_sign(ui.pen(), ui.tokens(), Sign::caution, {strip.x + 24, strip.centre().y});
    ui.node("notice/storage", Role::alert, strip, text);
    ui.pen().paragraph(Type::label, {strip.x + 46, strip.y + 10}, ui.tokens().ink, text, strip.w - 60);
}

void live_words(App& app) {
    std::string spoken;
    if (const auto& settings = app.sheet().settings) {
        const auto& feed = settings->feed;
        spoken = "Feed " + show(feed, app.book().shop.display.units).whole();
    } else {
        spoken = app.sheet().capacity.reason;
    }
    app.ui().node("live", Role::status, {0, 0, 1, 1}, spoken, {}, "live");
}

void left_side(App& app, Rect column) {
    Ui& ui = app.ui();
    title_block(app, column.take_top(title_block_height(ui)));
    const bool typing = !app.wide() && ui.edit() && !app.system_keyboard;
    if (!typing) { // the keypad needs the room
        place_bar(app, column.take_bottom(place_bar_height(ui)));
        notice_strip(app, column);
    }
    if (app.wide() || app.open_sheet().empty()) {
        place_screen(app, column);
    } else {
        sheet_panel(app, column, app.open_sheet(), true);
    }
}

} // namespace

float title_block_height(const Ui& ui) {
    return std::max(58.0F, ui.reach() + 2);
}

void title_block(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Job& job = app.book().job;
    const UnitSystem units = app.book().shop.display.units;
    ui.open_group("title", Role::group, place, "Job");
    pen.hline(place.x, place.right(), place.bottom() - 1, t.rule, 2);
    Rect row{place.x, place.y, place.w, place.h - 2};
    const Rect units_cell = row.take_right(58);
    const float w = row.w;
    const Rect metal = row.take_left(w * 0.38F);
    const Rect thickness = row.take_left(w * 0.38F);
    const bool open = app.open_sheet() == "stock";
    if (title_cell(ui, "title/metal", metal, "Metal", {std::string(stock::name(job.material)), "", ""}, open)) {
        app.open("stock");
    }
    if (title_cell(ui, "title/thickness", thickness, "Thickness", show_plate(job.thickness, job.material, units),
                   open)) {
        app.open("stock");
        ui.start_edit("stock/thickness", show_plate(job.thickness, job.material, units).whole());
    }
    if (title_cell(ui, "title/current", row, "Current", show(job.current), open)) {
        app.open("stock");
        ui.start_edit("stock/current", show(job.current).whole());
    }
    units_switch(app, units_cell);
    for (const float x : {thickness.x, row.x, units_cell.x}) {
        pen.vline(x, place.y, place.bottom() - 2, t.rule, 1);
    }
    ui.close_group();
}

float place_bar_height(const Ui& ui) {
    return std::max(63.0F, ui.reach() + 2);
}

void place_bar(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    ui.open_group("places", Role::navigation, place, "Places");
    pen.hline(place.x, place.right(), place.y + 1, t.rule, 2);
    const float w = place.w / static_cast<float>(std::size(tabs));
    for (std::size_t i = 0; i < std::size(tabs); ++i) {
        const PlaceTab& tab = tabs[i];
        const Rect cell{place.x + w * static_cast<float>(i), place.y + 2, w, place.h - 2};
        const bool here = app.place() == tab.place;
        if (ui.node(tab.id, Role::tab, cell, tab.name, {}, here ? "current" : "")) {
            app.go(tab.place);
        }
        if (ui.pressed(tab.id)) {
            pen.fill(cell, t.hairline);
        }
        if (here) {
            pen.fill({cell.x, cell.y - 1, cell.w, 5}, t.accent);
        }
        const float top = cell.centre().y - 22;
        draw_mark(pen, tab.mark, {cell.centre().x, top + 14}, here ? t.ink : t.quiet);
        pen.text(here ? Type::strong_label : Type::label, {cell.centre().x, top + 28}, here ? t.ink : t.quiet, tab.name,
                 Align::centre);
        if (i > 0) {
            pen.vline(cell.x, cell.y, cell.bottom(), t.hairline, 1);
        }
    }
    ui.close_group();
}

void lay_out(App& app, Rect screen, int columns) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    live_words(app);
    if (columns == 1) {
        left_side(app, screen);
        return;
    }
    const Rect whole = screen;
    left_side(app, screen.take_left(left_column));
    ui.pen().vline(screen.x + 1, whole.y, whole.bottom(), t.rule, 2);
    screen.take_left(2);
    const bool pictured = app.place() == Place::cut || app.place() == Place::part; // fills a column of its own
    const bool twice = columns == 3 && app.place() == Place::cut && app.open_sheet() == "chart"; // stands there already
    const std::string sheet = !app.open_sheet().empty() && !twice ? app.open_sheet() : sheet_beside(app.place());
    const bool another = sheet != sheet_beside(app.place()); // closing it brings the usual one back
    if (columns == 2) {
        if (pictured && app.open_sheet().empty()) {
            picture_panel(app, screen);
        } else {
            sheet_panel(app, screen, sheet, pictured || another);
        }
        return;
    }
    const Rect right = screen.take_right(right_column);
    ui.pen().vline(right.x - 1, whole.y, whole.bottom(), t.rule, 2);
    screen.w -= 2;
    if (pictured) {
        picture_panel(app, screen);
        sheet_panel(app, right, sheet, !app.open_sheet().empty());
    } else {
        sheet_panel(app, screen, sheet, another);
        cut_screen(app, right);
    }
}

} // namespace torchside::web
