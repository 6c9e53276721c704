// The chart of the whole shop: every plate against every current, to look up, to touch, and to print and tape to the
// table.
#include <vector>

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/kit/plot.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float label_width = 70;
constexpr float head_height = 34;
constexpr float least_cell = 52;
constexpr float most_cell = 76;
constexpr const char* figure_names[] = {"Feed", "Arc volts", "Pierce delay", "Kerf"};
constexpr const char* figure_tabs[] = {"Feed", "Volts", "Pierce", "Kerf"};

struct Grid {
    Rect view;  // where the cells are seen
    Point at;   // where the first cell stands, scrolled
    float w, h; // of a cell

    [[nodiscard]] Rect cell(std::size_t row, std::size_t column) const {
        return {at.x + w * static_cast<float>(column), at.y + h * static_cast<float>(row), w, h};
    }
};

/// The figure on show, of one cell.
struct CellFigure {
    std::string text;
    std::string range;
    Span span;
    tune::Footing footing;
};

CellFigure figure_of(const App& app, const cut::Settings& s, const tune::Footings& on) {
    const UnitSystem units = app.book().shop.display.units;
    switch (app.chart_figure) {
    case ChartFigure::feed:
        break;
    case ChartFigure::arc:
        return {show(s.arc.value).number, show_range(s.arc), span_of(s.arc, volt), on.arc};
    case ChartFigure::pierce_delay:
        if (!s.pierce_delay) {
            return {"edge", {}, {}, on.pierce_delay};
        }
        return {show(s.pierce_delay->value).number, show_range(*s.pierce_delay), span_of(*s.pierce_delay, second),
                on.pierce_delay};
    case ChartFigure::kerf:
        return {show(s.kerf.value, units).number, show_range(s.kerf, units), span_of(s.kerf, mm), on.kerf};
    }
    // Held to the table's fastest, the band may be next to nothing: too narrow to round by.
    return {s.feed_capped ? print(s.feed.value, units).number : print(s.feed, units).value, show_range(s.feed, units),
            span_of(s.feed, mm_min), on.feed};
}

/// How wide the band is, as the length of a bar: full at four times from low to high, for volts at a half more.
float bar_share(const App& app, const Span& span) {
    return span.low > 0 ? log_share(span.high / span.low, 1, app.chart_figure == ChartFigure::arc ? 1.5 : 4) : 0;
}

const char* unit_text(const App& app) {
    const bool metric = app.metric();
    switch (app.chart_figure) {
    case ChartFigure::feed:
        return metric ? "mm/min" : "in/min";
    case ChartFigure::arc:
        return "V at the torch";
    case ChartFigure::pierce_delay:
        return "s";
    case ChartFigure::kerf:
        return metric ? "mm" : "in";
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
    const double dt = chart.rows[row].in(mm)-job.thickness.in(mm);
    const double di = chart.columns[column].current.in(ampere)-job.current.in(ampere);
    return dt * dt < 0.0025 && di * di < 0.04;
}

// In the order of Footing, and of Tested.
constexpr const char* footing_names[] = {"physics", "shop practice", "your cuts"};
constexpr const char* footing_words[] = {"physics", "practice", "cuts"};
constexpr const char* tested_names[] = {"", "Near a cut of yours", "You cut this"};
constexpr const char* tested_words[] = {"", "near", "here"};

constexpr const char* reach_words[] = {"", "Edge start: no clean cut from a pierce", "Severs rough: no clean cut",
                                       ""}; // by Reach

std::string about_cell(const CellFigure& figure, Tested tested, cut::Reach reach) {
    std::string out = reach_words[static_cast<std::size_t>(reach)];
    out += (out.empty() || figure.range.empty() ? "" : ". ") + figure.range;
    out += (out.empty() ? "Basis: " : ". Basis: ") + std::string(footing_names[static_cast<int>(figure.footing)]);
    return tested == Tested::none ? out : out + ". " + tested_names[static_cast<int>(tested)];
}

/// What the style sheet of the printed page draws into the cell.
std::string paper_marks(tune::Footing footing, Tested tested, cut::Reach reach) {
    std::string out = std::string("mark-") + footing_words[static_cast<int>(footing)];
    out += reach == cut::Reach::clean ? "" : " mark-unclean";
    return tested == Tested::none ? out : out + " mark-" + tested_words[static_cast<int>(tested)];
}

/// A square that fills up: empty, half, full. Told apart without colour, and on a photocopy.
void footing_mark(const Pen& pen, Colour ink, tune::Footing footing, Point c) {
    constexpr float half = 4.5F;
    const Rect box{c.x - half, c.y - half, 2 * half, 2 * half};
    const float filled = footing == tune::Footing::cuts ? box.w : footing == tune::Footing::practice ? half : 0;
    pen.fill({box.x, box.y, filled, box.h}, ink);
    pen.frame(box, ink, 1.25F);
}

void tested_mark(const Pen& pen, Colour ink, Tested tested, Point c) {
    if (tested == Tested::here) {
        pen.ring(c, 3.5F, ink, 1.5F);
    } else if (tested == Tested::near) {
        pen.disc(c, 2, ink);
    }
}

/// The marks with their words, in as many lines as they need; returns the height used.
float key(const Pen& pen, const Tokens& t, Point at, float room, bool draw) {
    constexpr float line_height = 20;
    constexpr const char* names[] = {footing_names[0], footing_names[1], footing_names[2], "cut by you", "near a cut"};
    float x = at.x;
    float y = at.y;
    for (int i = 0; i < 5; ++i) {
        const float w = 16 + pen.width(Type::label, names[i]) + 14;
        if (x > at.x && x + w - 14 > at.x + room) {
            x = at.x;
            y += line_height;
        }
        if (draw) {
            const Point c{x + 5, y + 9};
            if (i < 3) {
                footing_mark(pen, t.ink, static_cast<tune::Footing>(i), c);
            } else {
                tested_mark(pen, t.ink, i == 3 ? Tested::here : Tested::near, c);
            }
            pen.text(Type::label, {x + 16, y}, t.ink, names[i]);
        }
        x += w;
    }
    return y + line_height - at.y;
}

void one_cell(App& app, const Chart& chart, const Grid& grid, std::size_t row, std::size_t column,
              const std::string& plate) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const ChartCell& cell = chart.at(row, column);
    const Rect place = grid.cell(row, column);
    const std::string amps = show(chart.columns[column].current).whole();
    const std::string id = "chart/" + std::to_string(row) + '/' + std::to_string(column);
    const bool job = is_job(app, chart, row, column);
    const CellFigure figure =
        cell.settings ? figure_of(app, *cell.settings, cell.basis) : CellFigure{"—", {}, {}, tune::Footing::physics};
    const std::string& text = figure.text;
    const std::string about = cell.settings ? about_cell(figure, cell.tested, cell.reach) : std::string();
    ui.open_group(id, Role::cell, place, text,
                  cell.settings ? paper_marks(figure.footing, cell.tested, cell.reach) : std::string());
    const bool used =
        ui.node(id + "/use", Role::button, place, plate + " at " + amps, text, job ? "selected" : "", about);
    ui.close_group();
    if (used) {
        app.take(document::apply(app.book(), {{"job.thickness_mm", chart.rows[row].in(mm)},
                                              {"job.current_a", chart.columns[column].current.in(ampere)}}));
    }
    if (cell.settings) {
        pen.fill(place, t.hairline, shade(cell));
    }
    if (ui.pressed(id + "/use")) {
        pen.fill(place, t.hairline);
    }
    const bool clean = cell.reach == cut::Reach::clean;
    pen.text(job ? Type::title : Type::text, {place.centre().x, place.centre().y - 12},
             cell.settings && clean ? t.ink : t.quiet, text, Align::centre);
    if (cell.settings) {
        footing_mark(pen, t.ink, figure.footing, {place.x + 9, place.y + 9});
        tested_mark(pen, t.ink, cell.tested, {place.right() - 9, place.y + 9});
    }
    if (cell.settings && !clean) { // a corner that is cut off: seen without colour
        pen.triangle({place.x, place.bottom()}, {place.x, place.bottom() - 13}, {place.x + 13, place.bottom()},
                     t.caution);
    }
    if (const float bar = (place.w - 12) * bar_share(app, figure.span); bar > 0) {
        pen.fill({place.centre().x - bar / 2, place.bottom() - 10, bar, 3}, clean ? t.ink : t.quiet);
    }
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.hairline, 1);
    pen.vline(place.right() - 0.5F, place.y, place.bottom(), t.hairline, 1);
    if (job) {
        pen.frame(place, t.accent, 2);
    }
}

void heads(App& app, const Chart& chart, const Grid& grid, Rect strip) {
    Ui& ui = app.ui();
    ui.pen().push_clip(strip);
    ui.open_group("chart/head", Role::row, strip, "Currents");
    ui.node("chart/corner", Role::columnheader, {strip.x - label_width, strip.y, label_width, strip.h}, "Plate");
    for (std::size_t c = 0; c < chart.columns.size(); ++c) {
        const Rect head{grid.at.x + grid.w * static_cast<float>(c), strip.y, grid.w, strip.h};
        const std::string amps = show(chart.columns[c].current).whole();
        ui.node("chart/head/" + std::to_string(c), Role::columnheader, head, amps);
        ui.pen().text(Type::label, {head.centre().x, head.y + 9}, ui.tokens().quiet, amps, Align::centre);
    }
    ui.close_group();
    ui.pen().pop_clip();
}

void row_label(App& app, const Grid& grid, std::size_t row, const Shown& plate, Rect strip) {
    Ui& ui = app.ui();
    const Rect label{strip.x, grid.at.y + grid.h * static_cast<float>(row), strip.w, grid.h};
    ui.node("chart/row/" + std::to_string(row) + "/head", Role::rowheader, label, plate.whole());
    ui.pen().text(Type::text, {label.right() - 8, label.centre().y - 10}, ui.tokens().ink, plate.whole(), Align::right);
}

void grid_of(App& app, const Chart& chart, Rect place) {
    Ui& ui = app.ui();
    const auto columns = static_cast<float>(chart.columns.size());
    const auto rows = static_cast<float>(chart.rows.size());
    const Rect head{place.x + label_width, place.y, place.w - label_width, head_height};
    const Rect view{head.x, place.y + head_height, head.w, place.h - head_height};
    const float w = std::clamp(view.w / columns, least_cell, most_cell);
    ui.open_group("chart/table", Role::table, place, figure_names[static_cast<int>(app.chart_figure)], "printable");
    const Point at = ui.open_region("chart", view);
    const Grid grid{view, at, w, std::max(48.0F, ui.glove() ? 72.0F : 48.0F)};
    ui.pen().pop_clip(); // heads and labels stand outside the view
    heads(app, chart, grid, head);
    const Rect labels{place.x, view.y, label_width, view.h};
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
        const Shown plate = show_plate(chart.rows[r], chart.metal, app.book().shop.display.units);
        ui.open_group("chart/row/" + std::to_string(r), Role::row, {place.x, grid.cell(r, 0).y, place.w, grid.h},
                      plate.whole());
        ui.pen().push_clip(labels);
        row_label(app, grid, r, plate, labels);
        ui.pen().pop_clip();
        ui.pen().push_clip(view);
        for (std::size_t c = 0; c < chart.columns.size(); ++c) {
            one_cell(app, chart, grid, r, c, plate.whole());
        }
        ui.pen().pop_clip();
        ui.close_group();
    }
    ui.pen().push_clip(view);
    ui.close_region({w * columns - 0.5F, grid.h * rows});
    ui.close_group();
    ui.pen().hline(place.x, std::min(place.right(), grid.at.x + w * columns), view.y - 0.5F, ui.tokens().rule, 1.5F);
}

float figure_choice(App& app, Rect place) {
    std::vector<Choice> items;
    for (int i = 0; i < 4; ++i) {
        items.push_back({"chart/figure/" + std::to_string(i), figure_tabs[i], static_cast<int>(app.chart_figure) == i});
    }
    constexpr int columns = 4;
    const float h = choices_height(app.ui(), items.size(), columns);
    if (const auto touched =
            choices(app.ui(), "chart/figure", {place.x, place.y, place.w, h}, "Figure", items, columns)) {
        app.chart_figure = static_cast<ChartFigure>(*touched);
    }
    return h;
}

void chart_body(App& app, Rect place) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const Chart& chart = app.chart();
    Rect body = place.inset(14, 10);
    body.take_top(figure_choice(app, body) + 10);
    std::string title = std::string(figure_names[static_cast<int>(app.chart_figure)]) + ", " + unit_text(app) + " · " +
                        std::string(stock::name(chart.metal));
    if (!app.book().shop.name.empty()) {
        title += " · " + app.book().shop.name;
    }
    const float title_height = ui.pen().paragraph(Type::label, {body.x, body.y}, t.quiet, title, body.w);
    ui.node("chart/heading", Role::heading, {body.x, body.y, body.w, title_height}, title, {}, "level2 printable");
    body.take_top(title_height + 5);
    const Rect print_row = body.take_bottom(ui.reach());
    if (link_row(ui, "chart/print", print_row, "Print this chart", "One page, to tape to the table", Mark::quote)) {
        app.print_chart();
    }
    const std::string_view note =
        "Square: full where your cuts halved the band · bar: 8 times in 10 within · deeper tint: "
        "faster · dark corner: no clean cut · dash: out of reach. The machine's manual comes first.";
    const float note_height = ui.pen().paragraph(Type::label, {}, t.quiet, note, body.w, false) + 14;
    const Rect note_place = body.take_bottom(note_height);
    ui.pen().paragraph(Type::label, {note_place.x, note_place.y + 6}, t.quiet, note, note_place.w);
    const Rect key_place = body.take_bottom(key(ui.pen(), t, {}, body.w, false) + 6);
    key(ui.pen(), t, {key_place.x, key_place.y + 6}, key_place.w, true);
    ui.node(
        "chart/key", Role::text, key_place,
        "Square, the basis. Empty: physics. Half full: shop practice took away half of what physics left open. Full: "
        "your cuts halved the band. Circle: cut by you. Dot: near a cut of yours.",
        {}, "printable");
    ui.node("chart/note", Role::text, note_place, note, {}, "printable");
    if (!chart.columns.empty() && !chart.rows.empty()) {
        grid_of(app, chart, body);
    }
}

} // namespace

void chart_panel(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("chart", Role::group, place, "Chart for this shop");
    chart_body(app, place);
    ui.close_group();
}

void chart_sheet(App& app, Rect place, bool closable) {
    Ui& ui = app.ui();
    ui.open_group("chart", Role::dialog, place, "Chart for this shop");
    if (sheet_head(ui, "chart", place.take_top(sheet_head_height()), "Chart for this shop", closable)) {
        app.close();
    }
    chart_body(app, place);
    ui.close_group();
}

} // namespace torchside::web
