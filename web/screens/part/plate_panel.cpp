// From the plate: how many parts a sheet gives, drawn to scale, and what is left of it.
#include <algorithm>
#include <cstdlib>
#include <span>

#include "core/part/sheet.hpp"
#include "core/part/trace.hpp"
#include "core/quantity/print.hpp"
#include "core/worksheet/hindrance.hpp"
#include "generated/words/layout.hpp"
#include "generated/words/part_screen.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t most_drawn = 400; // parts; of a sheet with more the first rows are drawn

void picture(Body& body) {
    const App& app = body.app;
    Ui& ui = body.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const part::StockSheet& sheet = app.book().job.stock_sheet;
    const PartStage& stage = *app.worksheet().part;
    const double px = std::min(static_cast<double>(body.room()) / sheet.width.in(mm), 260.0 / sheet.height.in(mm));
    Rect plate = body.inside(static_cast<float>(sheet.height.in(mm)*px));
    plate.w = static_cast<float>(sheet.width.in(mm)*px);
    pen.fill(plate, t.fill);
    pen.frame(plate, t.ink, 1.5F);
    ui.node("plate/picture", Role::img, plate, app.say(words::layout::Picture{.count = stage.sheet.count}));
    std::vector<Point> points;
    for (std::size_t i = 0; i < std::min(most_drawn, stage.sheet.places.size()); ++i) {
        for (const part::Contour& contour : part::placed(stage.outline, stage.sheet.places[i]).contours) {
            points.clear();
            for (const part::Point p : part::trace(contour.points, contour.role != part::Role::open, 0.4 / px)) {
                points.push_back(
                    {plate.x + static_cast<float>(p.x * px), plate.bottom() - static_cast<float>(p.y * px)});
            }
            pen.polyline(points.data(), static_cast<int>(points.size()), t.ink, 1);
        }
    }
    body.gap(10);
}

struct StockSize {
    const char* label;
    double length_mm, width_mm;
};
// Sheets as they are sold: common practice, no source.
constexpr StockSize metric_sizes[] = {{"1000 × 2000", 2000, 1000},
                                      {"1250 × 2500", 2500, 1250},
                                      {"1500 × 3000", 3000, 1500},
                                      {"4 × 8 ft", 2438.4, 1219.2}};
constexpr StockSize inch_sizes[] = {
    {"4 × 8 ft", 2438.4, 1219.2}, {"4 × 10 ft", 3048, 1219.2}, {"5 × 10 ft", 3048, 1524}};

void sheet_chips(Body& body) {
    App& app = body.app;
    const part::StockSheet& sheet = app.book().job.stock_sheet;
    const std::span<const StockSize> sizes =
        app.metric() ? std::span<const StockSize>(metric_sizes) : std::span<const StockSize>(inch_sizes);
    std::vector<Choice> items;
    for (const StockSize& s : sizes) {
        items.push_back(
            {std::string("plate/size/") + s.label, s.label,
             std::abs(sheet.width.in(mm)-s.length_mm) < 0.5 && std::abs(sheet.height.in(mm)-s.width_mm) < 0.5});
    }
    if (const auto touched = body.choices("plate/sizes", words::layout::sizes, items, app.metric() ? 2 : 3)) {
        app.ui().stop_edit();
        app.take(document::apply(app.book(), {{"job.sheet.width_mm", sizes[*touched].length_mm},
                                              {"job.sheet.height_mm", sizes[*touched].width_mm}}),
                 app.say(words::layout::Chosen{.size = items[*touched].label}));
    }
}

/// What the sheet gives, or why it gives nothing.
void yield(Body& body) {
    const App& app = body.app;
    const Units units = app.units();
    const part::SheetFit& fit = app.worksheet().part->sheet;
    const auto in_the_way = hindrance(app.book(), app.worksheet());
    if (in_the_way) {
        body.sign("plate/hindrance", Sign::stop, app.say(in_the_way->reason) + '.', app.say(in_the_way->detail));
    }
    if (fit.count == 0 && in_the_way && app.worksheet().settings) {
        body.gap(8); // the part itself is not to be made: there is nothing to lay on a sheet
    } else if (fit.count == 0) {
        body.sign("plate/none", Sign::stop, words::layout::does_not_fit);
    } else {
        const int wanted = app.book().job.quantity;
        const int sheets = (wanted + fit.count - 1) / fit.count;
        const Text lie = fit.alternate ? Text(words::layout::Alternate{.count = fit.count})
                         : fit.turned  ? Text(words::layout::Turned{.count = fit.count})
                                       : words::layout::AsDrawn{.count = fit.count};
        body.line("plate/count", words::layout::count, app.say(lie));
        body.line("plate/sheets", app.say(words::layout::Sheets{.count = wanted}), std::to_string(sheets));
        body.line("plate/use", words::layout::use, print_percent(fit.use).text());
        body.line("plate/mass", words::layout::mass, print(fit.sheet, units).text());
        body.line("plate/drop", words::layout::drop, print(fit.drop, units).text());
    }
}

} // namespace

void plate_panel(App& app, PanelAt at) {
    constexpr PathLabel fields[] = {{"job.sheet.width_mm", words::layout::length},
                                    {"job.sheet.height_mm", words::layout::width},
                                    {"job.sheet.margin_mm", words::layout::margin},
                                    {"job.sheet.spacing_mm", words::layout::spacing},
                                    {"job.run_offs", words::layout::run_offs}};
    panel(app, at, "plate", words::part_screen::layout, [&](Body& body) {
        body.gap(12);
        picture(body);
        yield(body);
        body.gap(8);
        sheet_chips(body);
        body.gap(8);
        body.fields(fields);
        body.gap(8);
        body.note("plate/how", words::layout::how);
        body.gap(20);
    });
}

} // namespace torchside::web
