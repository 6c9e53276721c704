// Part: what is cut, along which path, how long it takes, and where it will not come out as drawn.
#include <algorithm>

#include "core/part/measure.hpp"
#include "core/quantity/print.hpp"
#include "generated/words/missing.hpp"
#include "generated/words/part_screen.hpp"
#include "generated/words/part_time.hpp"
#include "generated/words/place.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/part/part_picture.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

std::vector<FigureCell> cells(const App& app) {
    const Worksheet& worksheet = app.worksheet();
    const Units units = app.units();
    std::vector<FigureCell> out;
    const auto put = [&](const char* key, Word name, const Printed& p, const char* opens) {
        out.push_back({key, app.say(name), p.number, std::string(p.unit), {}, {}, {}, opens});
    };
    if (const auto& time = worksheet.time) {
        put("time", words::part_screen::time, print(time->total.value, units), "time");
        out.back().about = show_basis(app, time->total.basis);
        out.back().span = span_of(time->total, second);
        out.back().chosen = app.open_panel() == "time";
        put("cut", words::part_screen::cut, print(Length{worksheet.part->cut_mm, mm}, units), "time");
        put("starts", words::part_screen::starts, {std::to_string(time->starts), ""}, "time");
        out.back().about = time->restarts > 0 ? app.say(words::part_screen::Restarts{.count = time->restarts}) : "";
        put("batch", words::part_screen::batch, print(time->batch, units), "time");
        put("slow", words::part_screen::slow, print_percent(time->slow_share), "time");
    }
    if (worksheet.mass) {
        put("mass", words::part_screen::mass, print(*worksheet.mass, units), "plate");
    }
    return out;
}

void opens(Body& column, const char* panel, Word title, Label quiet, Mark mark) {
    App& app = column.app;
    if (column.row(std::string("part/open/") + panel, title, quiet, mark, app.open_panel() == panel)) {
        app.open(panel);
    }
}

/// "120 × 120 mm, 24 parts".
std::string size_words(const App& app) {
    const PartStage& stage = *app.worksheet().part;
    const int quantity = app.book().job.quantity;
    if (stage.outline.contours.empty()) {
        return app.say(words::part_screen::Count{.count = quantity});
    }
    return app.say(words::part_screen::SizeCount{.count = quantity, .size = across_up(app, {stage.low, stage.high})});
}

/// "24 from a sheet, 1 sheet".
std::string sheet_words(const App& app) {
    const int each = app.worksheet().part->sheet.count;
    if (each == 0) {
        return app.say(words::part_screen::layout_about);
    }
    const int sheets = (app.book().job.quantity + each - 1) / each;
    return app.say(words::part_screen::LayoutCount{.each = each, .sheets = sheets});
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
    ui.open_group("part/verdicts", Role::list, column.strip(0), words::part_screen::checks);
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
        opens(column, "shape", words::part_screen::shape, size_words(app), Mark::part);
        opens(column, "plate", words::part_screen::layout, sheet_words(app), Mark::chart);
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
    framed_screen(app, place, "part", words::place::part, Drawer::of(body));
}

void time_panel(App& app, PanelAt at) {
    using namespace words::part_time;
    panel(app, at, "time", title, [&](Body& body) {
        body.gap(6);
        const auto& time = app.worksheet().time;
        if (!time) {
            body.gap(6);
            body.text("time/none", missing(app, words::missing::time) + '.');
            body.gap(8);
            return;
        }
        body.line("time/cutting", cutting, print(time->cutting.value, body.app.units()).text());
        body.line("time/piercing", piercing, print(time->piercing.value, body.app.units()).text());
        body.line("time/moving", moving, print(time->moving, body.app.units()).text());
        body.line("time/resting", cooling, print(time->resting, body.app.units()).text());
        body.line("time/total", each, print(time->total.value, body.app.units()).text());
        body.line("time/range", likely, show_range(app, time->total));
        body.line("time/batch", app.say(All{.count = app.book().job.quantity}),
                  print(time->batch, body.app.units()).text());
        body.line("time/starts", starts, std::to_string(time->starts));
        gap_lines(body, "time");
        body.gap(14);
        const std::string slow = print_percent(time->slow_share).text();
        body.text("time/slow", app.say(slow == print_percent(0).text() ? Text(not_slow) : Slow{.share = slow}));
        body.gap(10);
        body.note("time/basis", basis);
        body.gap(20);
    });
}

} // namespace torchside::web
