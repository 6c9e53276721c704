// Part: what is cut, along which path, how long it takes, and where it will not come out as drawn.
#include <algorithm>

#include "core/part/measure.hpp"
#include "core/quantity/print.hpp"
#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/part/part_picture.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

struct Cell {
    const char* key;
    const char* name;
    Shown shown;
    Span span{};
    std::string about{};
    const char* panel = "time";
};

std::vector<Cell> cells(const App& app) {
    const Worksheet& sheet = app.worksheet();
    const UnitSystem units = app.book().shop.display.units;
    const auto printed = [](const Printed& p) { return Shown{p.number, std::string(p.unit), ""}; };
    std::vector<Cell> out;
    if (const auto& time = sheet.time) {
        out.push_back({"time", "Time each", printed(print(time->total.value)), span_of(time->total, second),
                       show_basis(time->total.basis, app.book().shop.example)});
        out.push_back({"cut", "Cut length", printed(print(Length{sheet.part->cut_mm, mm}, units))});
        out.push_back({"starts",
                       "Arc starts",
                       {std::to_string(time->starts), "", ""},
                       {},
                       time->restarts > 0 ? std::to_string(time->restarts) + " behind gaps" : ""});
        out.push_back({"batch", "Whole batch", printed(print(time->batch))});
        out.push_back({"slow", "Slow share", printed(print_percent(time->slow_share))});
    }
    if (sheet.mass) {
        out.push_back({"mass", "Mass each", printed(print(*sheet.mass, units)), {}, {}, "plate"});
    }
    return out;
}

float figures(App& app, Rect place, const std::vector<Cell>& all) {
    const FigureGrid grid = figure_grid(app.ui(), place, all.size());
    app.ui().pen().hline(place.x, place.right(), place.y, app.ui().tokens().rule, 1.5F);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Cell& c = all[i];
        if (small_figure(app.ui(), std::string("part/") + c.key, grid.cell(i),
                         {c.name, c.shown.number, c.shown.unit, "", c.about, c.span, c.span.high > c.span.low,
                          app.open_panel() == c.panel && i == 0})) {
            app.open(c.panel);
        }
    }
    draw_lines(app.ui(), grid);
    return grid.height() + 1;
}

float opens(App& app, Rect row, const char* panel, const char* title, std::string_view quiet, Mark mark) {
    row.h = link_height(app.ui(), title, quiet, row.w);
    if (link_row(app.ui(), std::string("part/open/") + panel, row, title, quiet, mark, app.open_panel() == panel)) {
        app.open(panel);
    }
    return row.h;
}

/// "120 × 120 mm, 24 parts".
std::string size_words(const App& app) {
    const PartStage& stage = *app.worksheet().part;
    const int quantity = app.book().job.quantity;
    const std::string parts = std::to_string(quantity) + (quantity == 1 ? " part" : " parts");
    if (stage.outline.contours.empty()) {
        return parts;
    }
    const UnitSystem units = app.book().shop.display.units;
    return print(Length{stage.high.x - stage.low.x, mm}, units).number + " × " +
           print(Length{stage.high.y - stage.low.y, mm}, units).text() + ", " + parts;
}

/// "24 from a sheet, 1 sheet".
std::string sheet_words(const App& app) {
    const int each = app.worksheet().part->sheet.count;
    if (each == 0) {
        return "How many from a sheet, what is left";
    }
    const int sheets = (app.book().job.quantity + each - 1) / each;
    return std::to_string(each) + " from a sheet, " + std::to_string(sheets) + (sheets == 1 ? " sheet" : " sheets");
}

/// What the picture may have: what the figures and the two worst findings leave of the first screen, for they are the answer.
float picture_height(const Ui& ui, Rect place, float above, std::size_t figures, const std::vector<Verdict>& found) {
    constexpr float least = 192; // for three buttons, one above the other
    float below = figure_grid(ui, place, figures).height() + 1;
    for (std::size_t i = 0; i < std::min<std::size_t>(2, found.size()); ++i) {
        below += verdict_height(ui, found[i].sentence, found[i].way_out, place.w);
    }
    return std::clamp(place.h - above - below, ui.glove() ? 220.0F : least, 360.0F);
}

float rows(App& app, Rect place, const std::vector<Verdict>& found) {
    Ui& ui = app.ui();
    float y = place.y;
    ui.open_group("part/verdicts", Role::list, {place.x, y, place.w, 0}, "What stands in the way, worst first");
    for (const Verdict& v : found) {
        const Rect row{place.x, y, place.w, verdict_height(ui, v.sentence, v.way_out, place.w)};
        if (verdict_row(ui, "part/verdict/" + v.code, row, v.sign, v.sentence, v.way_out)) {
            if (v.problem) {
                app.look_at = v.problem;
                app.contour.reset();
                ui.scroll_to_start("part"); // to the picture, where it stands above the list
            } else {
                app.open(v.panel);
            }
        }
        y += row.h;
    }
    ui.close_group();
    return y - place.y;
}

} // namespace

void part_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("part", Role::main, place, "Part");
    const Point at = ui.open_region("part", place);
    Rect column{at.x, at.y, place.w, 1e6F};
    column.take_top(opens(app, {place.x, at.y, place.w, ui.touch_height()}, "shape", "Shape and sizes", size_words(app),
                          Mark::part));
    column.take_top(opens(app, {place.x, column.y, place.w, ui.touch_height()}, "plate", "From the plate",
                          sheet_words(app), Mark::chart));
    const auto all = cells(app);
    const auto found = part_verdicts(app);
    if (!app.wide()) {
        part_picture(app, column.take_top(picture_height(ui, place, column.y - at.y, all.size(), found)));
    }
    if (app.contour && *app.contour < app.worksheet().part->outline.contours.size()) {
        column.take_top(contour_words(app, column));
    }
    column.take_top(figures(app, column, all));
    column.take_top(rows(app, column, found) + 12);
    ui.close_region({place.w, column.y - at.y});
    ui.close_group();
}

void time_panel(App& app, Rect place, bool closable) {
    panel(app, place, "time", "Time of one part", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const float x = body.x + panel_margin;
        const float w = body.w - 2 * panel_margin;
        float y = body.y + 6;
        const auto& time = app.worksheet().time;
        if (!time) {
            return words(ui, "time/none", Type::text, {x, y + 6}, w, missing(app, "time") + '.', ui.tokens().ink) + 20;
        }
        y += line(app, "time/cutting", {x, y}, w, "Cutting", print(time->cutting.value).text());
        y += line(app, "time/piercing", {x, y}, w, "Piercing", print(time->piercing.value).text());
        y += line(app, "time/moving", {x, y}, w, "Moving, arc off", print(time->moving).text());
        y += line(app, "time/resting", {x, y}, w, "Resting, duty cycle", print(time->resting).text());
        y += line(app, "time/total", {x, y}, w, "Each", print(time->total.value).text());
        y += line(app, "time/range", {x, y}, w, "8 times in 10 within", show_range(time->total));
        y += line(app, "time/batch", {x, y}, w, "All " + std::to_string(app.book().job.quantity),
                  print(time->batch).text());
        y += line(app, "time/starts", {x, y}, w, "Arc starts", std::to_string(time->starts));
        y += gap_lines(app, "time", {x, y}, w);
        y += 14;
        const std::string slow = print_percent(time->slow_share).text();
        y += words(ui, "time/slow", Type::text, {x, y}, w,
                   slow == print_percent(0).text()
                       ? std::string("The whole cut runs at 80 % of the feed or more: no slow corners.")
                       : slow + " of the cut runs under 80 % of the feed: corners, small holes and tight curves, "
                                "hatched in the picture. Expect dross there, and switch height control to hold.",
                   ui.tokens().ink) +
             10;
        y += words(ui, "time/basis", Type::label, {x, y}, w,
                   "Worked out piece by piece from the table's acceleration and corner tolerance, hole speeds, pierce "
                   "delay, heights and rapids; the band comes from the feed and the pierce delay.",
                   ui.tokens().quiet);
        return y + 20 - body.y;
    });
}

} // namespace torchside::web
