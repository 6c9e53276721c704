// The chart of the whole shop: every plate against every current, to look up, to touch, and to print and tape to the
// table.
#include <algorithm>
#include <vector>

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/chart.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/picture.hpp"
#include "generated/words/settings.hpp"
#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/kit/plot.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/chart_marks.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float margin = 14;
constexpr float head_height = 34;
constexpr float least_cell = 52;
constexpr float most_high = 64; // where the window has the height
constexpr Word figure_names[] = {words::figure::feed, words::figure::arc, words::figure::pierce_delay,
                                 words::figure::kerf};
constexpr Word figure_tabs[] = {words::figure::feed, words::chart::volts, words::chart::pierce, words::figure::kerf};

struct Grid {
    Rect head, labels, view; // where currents, plates and cells are seen
    Point at;                // where the first cell stands, scrolled
    float w, h;              // of a cell

    [[nodiscard]] Rect cell(std::size_t row, std::size_t column) const {
        return {at.x + w * static_cast<float>(column), at.y + h * static_cast<float>(row), w, h};
    }
};

float label_width(const Ui& ui) {
    return ui.glove() ? 92.0F : 70.0F; // "0.063 in"
}

/// The figure on show, of one cell.
struct CellFigure {
    std::string text;
    std::string range;
    Span span;
    tune::DominantBasis footing;
};

CellFigure figure_of(const App& app, const cut::Settings& s, const tune::DominantBases& on) {
    const Units units = app.units();
    switch (app.scratch.chart_figure) {
    case ChartFigure::feed:
        break;
    case ChartFigure::arc:
        return {show(s.arc.value, units).number, show_range(app, s.arc), span_of(s.arc, volt), on.arc};
    case ChartFigure::pierce_delay:
        if (!s.pierce_delay) {
            return {app.say(words::settings::edge), {}, {}, on.pierce_delay};
        }
        return {show(s.pierce_delay->value, units).number, show_range(app, *s.pierce_delay),
                span_of(*s.pierce_delay, second), on.pierce_delay};
    case ChartFigure::kerf:
        return {show(s.kerf.value, units).number, show_range(app, s.kerf), span_of(s.kerf, mm), on.kerf};
    }
    return {show_feed(app, s.feed.value).number, show_range(app, s.feed), span_of(s.feed, mm_min), on.feed};
}

/// How wide the band is, as the length of a bar: full at four times from low to high, for volts at a half more.
float bar_share(const App& app, const Span& span) {
    return span.low > 0 ? log_share(span.high / span.low, 1, app.scratch.chart_figure == ChartFigure::arc ? 1.5 : 4)
                        : 0;
}

std::string_view unit_text(const App& app) {
    switch (app.scratch.chart_figure) {
    case ChartFigure::feed:
        return app.metric() ? "mm/min" : "in/min";
    case ChartFigure::arc:
        return app.word(words::chart::volts_at_torch);
    case ChartFigure::pierce_delay:
        return "s";
    case ChartFigure::kerf:
        return app.metric() ? "mm" : "in";
    }
    return "";
}

/// Deeper is faster, in five steps that survive a photocopier.
float shade(const ChartCell& cell) {
    const double feed = cell.settings->feed.value.in(mm_min);
    const double steps[] = {700, 1500, 3000, 6000};
    float dark = 0;
    for (const double step : steps) {
        dark += feed >= step ? 0.25F : 0.0F;
    }
    return dark;
}

bool is_job(const App& app, const Chart& chart, std::size_t row, std::size_t column) {
    const Job& job = app.book().job;
    const auto same = [](double a, double b) { return std::fabs(a - b) < 5e-4 * b; }; // their figures read alike
    const Nozzle* nozzle = cut::nozzle_for(app.book().shop.machine.nozzles, job.current);
    const bool same_nozzle = nozzle == nullptr || chart.columns[column].nozzle == nozzle->rated;
    return same(chart.rows[row].in(mm), job.thickness.in(mm)) &&
           same(chart.columns[column].current.in(ampere), job.current.in(ampere)) &&
           same_nozzle; // a hair more current may take the next nozzle
}

void one_cell(App& app, const Chart& chart, const Grid& grid, std::size_t row, std::size_t column,
              const std::string& plate) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const ChartCell& cell = chart.at(row, column);
    const Rect place = grid.cell(row, column);
    const std::string amps = show(chart.columns[column].current, app.units()).whole();
    const std::string id = "chart/" + std::to_string(row) + '/' + std::to_string(column);
    const bool job = is_job(app, chart, row, column);
    const CellFigure figure = cell.settings ? figure_of(app, *cell.settings, cell.basis)
                                            : CellFigure{"—", {}, {}, tune::DominantBasis::physics};
    const std::string& text = figure.text;
    const std::string about =
        cell.settings ? about_cell(app, figure.range, figure.footing, cell.tested, cell.reach) : std::string();
    ui.open_group(id, Role::cell, place, text,
                  cell.settings ? paper_marks(figure.footing, cell.tested, cell.reach) : std::string());
    const bool used =
        ui.node(id + "/use", Role::button, place, app.say(words::chart::At{.current = amps, .plate = plate}), text,
                job ? "selected" : "", about);
    ui.close_group();
    if (used) {
        app.take(document::apply(app.book(), {{"job.thickness_mm", chart.rows[row].in(mm)},
                                              {"job.current_a", chart.columns[column].current.in(ampere)}}),
                 app.say(words::chart::Picked{.current = amps, .plate = plate}));
    }
    if (cell.settings) {
        pen.fill(place, t.hairline, shade(cell));
    }
    if (ui.pressed(id + "/use")) {
        pen.fill(place, t.hairline);
    }
    const bool clean = cell.reach == cut::Reach::clean;
    const bool tight = place.h < 44; // on a phone, where all plates stand in one view
    const float up = tight ? 7 : 12;
    pen.text(job ? Type::title : Type::text, {place.centre().x, place.centre().y - up},
             cell.settings && clean ? t.ink : t.quiet, text, Align::centre);
    if (cell.settings) {
        const float in = tight ? 6 : 9;
        footing_mark(pen, t.ink, figure.footing, {place.x + in, place.y + in}, tight ? 3.5F : 4.5F);
        tested_mark(pen, t.ink, cell.tested, {place.right() - in, place.y + in});
    }
    if (cell.settings && !clean) { // a corner that is cut off: seen without colour
        pen.triangle({place.x, place.bottom()}, {place.x, place.bottom() - 13}, {place.x + 13, place.bottom()},
                     t.caution);
    }
    if (const float bar = (place.w - 12) * bar_share(app, figure.span); bar > 0) {
        pen.fill({place.centre().x - bar / 2, place.bottom() - (tight ? 4.0F : 10.0F), bar, 3},
                 clean ? t.ink : t.quiet);
    }
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    pen.vline(place.right() - 0.5F, place.y, place.bottom(), t.hairline, 1);
    reach_edges(pen, t, chart, row, column, place);
    if (job) {
        pen.frame(place.inset(-1), t.accent, 4);
    }
}

void heads(App& app, const Chart& chart, const Grid& grid) {
    Ui& ui = app.ui();
    const Rect strip = grid.head;
    ui.open_clip(strip);
    ui.open_group("chart/head", Role::row, strip, words::chart::currents);
    ui.node("chart/corner", Role::columnheader, {strip.x - label_width(ui), strip.y, label_width(ui), strip.h},
            words::chart::plate);
    for (std::size_t c = 0; c < chart.columns.size(); ++c) {
        const Rect head{grid.at.x + grid.w * static_cast<float>(c), strip.y, grid.w, strip.h};
        const std::string amps = show(chart.columns[c].current, app.units()).whole();
        ui.node("chart/head/" + std::to_string(c), Role::columnheader, head, amps);
        ui.pen().text(Type::label, {head.centre().x, head.y + 9}, ui.tokens().quiet, amps, Align::centre);
    }
    ui.close_group();
    ui.close_clip();
}

void row_label(App& app, const Grid& grid, std::size_t row, const Shown& plate) {
    Ui& ui = app.ui();
    const Rect label{grid.labels.x, grid.at.y + grid.h * static_cast<float>(row), grid.labels.w, grid.h};
    ui.node("chart/row/" + std::to_string(row) + "/head", Role::rowheader, label, plate.whole());
    ui.pen().text(Type::text, {label.right() - 8, label.centre().y - 10}, ui.tokens().ink, plate.whole(), Align::right);
}

/// Size of a cell, and where the first one stands in `view`.
Grid grid_in(const App& app, const Chart& chart, Rect view) {
    constexpr float five_digits = 62;
    const bool far = std::any_of(chart.cells.begin(), chart.cells.end(), [](const ChartCell& cell) {
        return cell.settings && !(cell.settings->feed.value < Speed{9999, mm_min});
    });
    const float least = app.ui().glove() ? 72.0F : far ? five_digits : least_cell;
    const float w = std::max(view.w / static_cast<float>(chart.columns.size()), least);
    const bool whole_sheet = !app.wide() && !app.ui().low(); // a phone shows all plates at once
    return {{}, {}, view, {view.x, view.y}, w, app.ui().glove() ? 72.0F : whole_sheet ? 34.0F : 48.0F};
}

void cells(App& app, const Chart& chart, const Grid& grid) {
    Ui& ui = app.ui();
    heads(app, chart, grid);
    bool any_job = false;
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
        const Shown plate = show_plate(chart.rows[r], chart.metal, app.units());
        ui.open_group("chart/row/" + std::to_string(r), Role::row,
                      {grid.labels.x, grid.cell(r, 0).y, grid.labels.w + grid.view.w, grid.h}, plate.whole());
        ui.open_clip(grid.labels);
        row_label(app, grid, r, plate);
        ui.close_clip();
        ui.open_clip(grid.view);
        for (std::size_t c = 0; c < chart.columns.size(); ++c) {
            any_job = any_job || is_job(app, chart, r, c);
            one_cell(app, chart, grid, r, c, plate.whole());
        }
        ui.close_clip();
        ui.close_group();
    }
    ui.open_clip(grid.view);
    if (!any_job) {
        open_job(app, chart, {grid.at.x, grid.at.y, grid.w, grid.h});
    }
    ui.close_clip();
    const float right = grid.at.x + grid.w * static_cast<float>(chart.columns.size());
    ui.pen().hline(grid.labels.x, std::min(grid.view.right(), right), grid.view.y - 0.5F, ui.tokens().rule, 1.5F);
}

Point size_of_cells(const Chart& chart, const Grid& grid) {
    return {grid.w * static_cast<float>(chart.columns.size()), grid.h * static_cast<float>(chart.rows.size())};
}

void open_table(App& app, Rect place) {
    app.ui().open_group("chart/table", Role::table, place, figure_names[static_cast<int>(app.scratch.chart_figure)],
                        "printable");
}

/// The cells scroll under their currents and beside their plates, in what is left of the panel.
void grid_of(App& app, const Chart& chart, Rect place) {
    Ui& ui = app.ui();
    Rect view = place;
    const Rect head = view.take_top(head_height);
    const Rect labels = view.take_left(label_width(ui));
    open_table(app, place);
    Grid grid = grid_in(app, chart, view);
    grid.h = std::clamp(view.h / static_cast<float>(chart.rows.size()), grid.h, std::max(grid.h, most_high));
    grid.head = {view.x, head.y, view.w, head.h};
    grid.labels = labels;
    grid.at = ui.open_region_anew("chart", view);
    ui.close_clip(); // currents and plates stand outside the view
    cells(app, chart, grid);
    ui.open_clip(view);
    const Point size = size_of_cells(chart, grid);
    ui.close_region({size.x - 0.5F, size.y});
    ui.close_group();
}

float figure_choice(App& app, Rect place) {
    std::vector<Choice> items;
    for (int i = 0; i < 4; ++i) {
        items.push_back({"chart/figure/" + std::to_string(i), app.say(figure_tabs[i]),
                         static_cast<int>(app.scratch.chart_figure) == i});
    }
    Ui& ui = app.ui();
    const float key = ui.touch_height();
    const Rect tabs{place.x, place.y, place.w - key - 8, choices_height(ui, items.size(), 4)};
    if (const auto touched = choices(ui, "chart/figure", tabs, app.word(words::chart::figure), items, 4)) {
        app.scratch.chart_figure = static_cast<ChartFigure>(*touched);
    }
    bool& open = app.scratch.chart_key;
    if (button(ui, "chart/marks", {tabs.right() + 8, place.y, key, key}, "?", open ? Look::chosen : Look::plain,
               Role::button, open ? "expanded" : "collapsed", app.word(words::picture::marks))) {
        open = !open;
    }
    return tabs.h;
}

/// What is shown, and of what; returns the height used.
float above(App& app, Rect place) {
    Ui& ui = app.ui();
    const float h = figure_choice(app, place) + 10;
    std::string title = app.say(figure_names[static_cast<int>(app.scratch.chart_figure)]) + ", " +
                        std::string(unit_text(app)) + " · " + app.say(stock::name(app.chart().metal));
    if (!app.book().shop.name.empty()) {
        title += " · " + app.book().shop.name;
    }
    const float lines = ui.pen().paragraph(Type::label, {place.x, place.y + h}, ui.tokens().quiet, title, place.w);
    ui.node("chart/what", Role::heading, {place.x, place.y + h, place.w, lines}, title, {}, "level2 printable");
    const float end = h + lines + 4;
    return end + chart_legend(app, {place.x, place.y + end, place.w, place.h});
}

/// The way to paper; returns the height used. Only measured when `draw` is false.
float below(App& app, Rect place, bool draw) {
    Ui& ui = app.ui();
    const std::string_view title = app.word(words::chart::print);
    const std::string_view about = app.word(words::chart::print_about);
    const Rect print = place.take_top(link_height(ui, title, about, place.w));
    if (draw && link_row(ui, "chart/print", print, title, about, Mark::quote)) {
        app.print_chart();
    }
    return print.h;
}

/// What stands still around the cells leaves room for a few of them.
bool rolls(App& app, const Chart& chart, Rect body) {
    constexpr float title = 60;
    const float still =
        choices_height(app.ui(), 4, 4) + title + legend_height(app, body.w) + below(app, body, false) + head_height;
    return app.ui().low() || body.h - still < 3 * grid_in(app, chart, body).h;
}

/// In a low window all of it scrolls as one; the currents stay at the top as long as there are cells below them.
void rolling_chart(App& app, const Chart& chart, Rect place) {
    Ui& ui = app.ui();
    const float w = place.w - 2 * margin;
    Point at = ui.open_region_anew("chart", place);
    const float left = place.x + margin; // words do not move sideways
    const float top = at.y + 10;
    at.y = top + above(app, {left, top, w, 1e6F});
    const float labels = label_width(ui);
    Grid grid = grid_in(app, chart, {left + labels, 0, w - labels, 0});
    const Point size = size_of_cells(chart, grid);
    const float end = at.y + head_height + size.y;
    below(app, {left, end, w, 1e6F}, true);
    grid.head = {grid.view.x, std::clamp(place.y, at.y, end - head_height), grid.view.w, head_height};
    grid.view = {grid.view.x, grid.head.bottom(), grid.view.w, std::min(end, place.bottom()) - grid.head.bottom()};
    grid.labels = {left, grid.view.y, labels, grid.view.h};
    grid.at = {at.x + margin + labels, at.y + head_height};
    open_table(app, {left, at.y, w, end - at.y});
    cells(app, chart, grid);
    ui.close_group();
    const float used = end - at.y + below(app, {left, end, w, 1e6F}, false) + at.y - top;
    ui.close_region({2 * margin + labels + size.x, used + 20});
}

void chart_body(App& app, Rect place) {
    const Chart& chart = app.chart();
    const bool empty = chart.columns.empty() || chart.rows.empty();
    Rect body = place.inset(margin, 10);
    if (!empty && rolls(app, chart, body)) {
        rolling_chart(app, chart, place);
        return;
    }
    body.take_top(above(app, body));
    below(app, body.take_bottom(below(app, body, false)), true);
    if (!empty) {
        grid_of(app, chart, body);
    }
}

} // namespace

void chart_column(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("chart", Role::group, place, words::settings::chart);
    chart_body(app, place);
    ui.close_group();
}

void chart_panel(App& app, PanelAt at) {
    Ui& ui = app.ui();
    Rect place = at.place;
    ui.open_group("chart", Role::dialog, place, words::settings::chart);
    PanelHead top{app, "chart", words::settings::chart, at.closable};
    top.put(place, false);
    chart_body(app, place);
    ui.close_group();
}

} // namespace torchside::web
