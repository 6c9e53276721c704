// Part: what is cut, along which path, how long it takes, and where it will not come out as drawn.
#include <algorithm>

#include "core/part/measure.hpp"
#include "core/quantity/print.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/part/part_picture.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

std::vector<FigureCell> cells(const App& app) {
    const Worksheet& worksheet = app.worksheet();
    const UnitSystem units = app.book().shop.display.units;
    std::vector<FigureCell> out;
    const auto put = [&](const char* key, const char* name, const Printed& p, const char* opens) {
        out.push_back({key, name, p.number, std::string(p.unit), {}, {}, {}, opens});
    };
    if (const auto& time = worksheet.time) {
        put("time", "Time each", print(time->total.value), "time");
        out.back().about = show_basis(time->total.basis, app.book().shop.example);
        out.back().span = span_of(time->total, second);
        out.back().chosen = app.open_panel() == "time";
        put("cut", "Cut length", print(Length{worksheet.part->cut_mm, mm}, units), "time");
        put("starts", "Arc starts", {std::to_string(time->starts), ""}, "time");
        out.back().about = time->restarts > 0 ? std::to_string(time->restarts) + " behind gaps" : "";
        put("batch", "Whole batch", print(time->batch), "time");
        put("slow", "Slow share", print_percent(time->slow_share), "time");
    }
    if (worksheet.mass) {
        put("mass", "Mass each", print(*worksheet.mass, units), "plate");
    }
    return out;
}

void opens(Body& column, const char* panel, const char* title, std::string_view quiet, Mark mark) {
    App& app = column.app;
    if (column.row(std::string("part/open/") + panel, title, quiet, mark, app.open_panel() == panel)) {
        app.open(panel);
    }
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
float picture_height(const Body& column, std::size_t figures, const std::vector<Verdict>& found) {
    constexpr float least = 192; // for three buttons, one above the other
    const Ui& ui = column.ui();
    float below = figure_grid(ui, {0, 0, column.width(), 0}).height(figures) + 2;
    for (std::size_t i = 0; i < std::min<std::size_t>(2, found.size()); ++i) {
        below += verdict_height(ui, found[i].sentence, found[i].remedy, column.width());
    }
    return std::clamp(column.view() - column.height() - below, ui.glove() ? 220.0F : least, 360.0F);
}

void rows(Body& column, const std::vector<Verdict>& found) {
    App& app = column.app;
    Ui& ui = app.ui();
    ui.open_group("part/verdicts", Role::list, column.strip(0), "What stands in the way, worst first");
    for (const Verdict& v : found) {
        if (!column.verdict("part/verdict/" + v.code, v.sign, v.sentence, v.remedy)) {
            continue;
        }
        if (v.problem) {
            app.scratch.look_at = v.problem;
            app.scratch.contour.reset();
            ui.scroll_to_start("part"); // to the picture, where it stands above the list
        } else {
            app.open(v.panel);
        }
    }
    ui.close_group();
}

} // namespace

void part_screen(App& app, Rect place) {
    const auto body = [&](Body& column) {
        opens(column, "shape", "Shape and sizes", size_words(app), Mark::part);
        opens(column, "plate", "From the plate", sheet_words(app), Mark::chart);
        const auto all = cells(app);
        const auto found = part_verdicts(app);
        if (!app.wide()) {
            part_picture(app, column.strip(picture_height(column, all.size(), found)));
        }
        if (app.scratch.contour && *app.scratch.contour < app.worksheet().part->outline.contours.size()) {
            contour_words(column);
        }
        if (const auto used = column.figures("part/", all)) {
            app.open(all[*used].opens);
        }
        rows(column, found);
        column.gap(12);
    };
    framed_screen(app, place, "part", "Part", Drawer::of(body));
}

void time_panel(App& app, PanelAt at) {
    panel(app, at, "time", "Time of one part", [&](Body& body) {
        body.gap(6);
        const auto& time = app.worksheet().time;
        if (!time) {
            body.gap(6);
            body.text("time/none", missing(app, "time") + '.');
            body.gap(8);
            return;
        }
        body.line("time/cutting", "Cutting", print(time->cutting.value).text());
        body.line("time/piercing", "Piercing", print(time->piercing.value).text());
        body.line("time/moving", "Moving, arc off", print(time->moving).text());
        body.line("time/resting", "Resting, duty cycle", print(time->resting).text());
        body.line("time/total", "Each", print(time->total.value).text());
        body.line("time/range", "8 times in 10 within", show_range(time->total));
        body.line("time/batch", "All " + std::to_string(app.book().job.quantity), print(time->batch).text());
        body.line("time/starts", "Arc starts", std::to_string(time->starts));
        gap_lines(body, "time");
        body.gap(14);
        const std::string slow = print_percent(time->slow_share).text();
        body.text("time/slow",
                  slow == print_percent(0).text()
                      ? std::string("The whole cut runs at 80 % of the feed or more: no slow corners.")
                      : slow + " of the cut runs under 80 % of the feed: corners, small holes and tight curves, "
                               "hatched in the picture. Expect dross there, and switch height control to hold.");
        body.gap(10);
        body.note("time/basis",
                  "Worked out piece by piece from the table's acceleration and corner tolerance, hole speeds, pierce "
                  "delay, heights and rapids; the band comes from the feed and the pierce delay.");
        body.gap(20);
    });
}

} // namespace torchside::web
