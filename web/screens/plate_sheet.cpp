// From the plate: how many parts a sheet gives, drawn to scale, and what is left of it.
#include <algorithm>
#include <cstdlib>
#include <span>

#include "core/part/sheet.hpp"
#include "core/part/trace.hpp"
#include "core/quantity/print.hpp"
#include "core/worksheet/hindrance.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t most_drawn = 400; // parts; of a sheet with more the first rows are drawn

float picture(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const part::StockSheet& sheet = app.book().job.sheet;
    const PartStage& stage = *app.sheet().part;
    const double px = std::min(static_cast<double>(w) / sheet.width.in(mm), 260.0 / sheet.height.in(mm));
    const Rect plate{at.x, at.y, static_cast<float>(sheet.width.in(mm)*px), static_cast<float>(sheet.height.in(mm)*px)};
    pen.fill(plate, t.fill);
    pen.frame(plate, t.ink, 1.5F);
    ui.node("plate/picture", Role::img, plate, "The sheet with " + std::to_string(stage.sheet.count) + " parts on it");
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
    return plate.h + 10;
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

float sheet_chips(App& app, Point at, float w) {
    const part::StockSheet& sheet = app.book().job.sheet;
    const std::span<const StockSize> sizes =
        app.metric() ? std::span<const StockSize>(metric_sizes) : std::span<const StockSize>(inch_sizes);
    std::vector<Choice> items;
    for (const StockSize& s : sizes) {
        items.push_back(
            {std::string("plate/size/") + s.label, s.label,
             std::abs(sheet.width.in(mm)-s.length_mm) < 0.5 && std::abs(sheet.height.in(mm)-s.width_mm) < 0.5});
    }
    const int columns = app.metric() ? 2 : 3;
    const float h = choices_height(app.ui(), items.size(), columns);
    if (const auto touched = choices(app.ui(), "plate/sizes", {at.x, at.y, w, h}, "Usual sheets", items, columns)) {
        app.ui().stop_edit();
        app.take(document::apply(app.book(), {{"job.sheet.width_mm", sizes[*touched].length_mm},
                                              {"job.sheet.height_mm", sizes[*touched].width_mm}}),
                 "Sheet: " + items[*touched].label);
    }
    return h;
}

} // namespace

void plate_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "plate", "From the plate", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const UnitSystem units = app.book().shop.display.units;
        const part::SheetFit& fit = app.sheet().part->sheet;
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 12;
        y += picture(app, {x, y}, w);
        const auto in_the_way = hindrance(app.book(), app.sheet());
        if (in_the_way) {
            y += signed_words(app, "plate/hindrance", Sign::stop, {x, y}, w, app.say(in_the_way->reason) + '.',
                              app.say(in_the_way->detail));
        }
        if (fit.count == 0 && in_the_way && app.sheet().settings) {
            y += 8; // the part itself is not to be made: there is nothing to lay on a sheet
        } else if (fit.count == 0) {
            y += signed_words(app, "plate/none", Sign::stop, {x, y}, w, "This part does not fit this sheet.", {});
        } else {
            const int wanted = app.book().job.quantity;
            const int sheets = (wanted + fit.count - 1) / fit.count;
            const std::string lie = fit.alternate ? "every second turned" : fit.turned ? "on their side" : "as drawn";
            y += line(app, "plate/count", {x, y}, w, "Parts from a sheet", std::to_string(fit.count) + ", " + lie);
            y += line(app, "plate/sheets", {x, y}, w, "Sheets for " + std::to_string(wanted), std::to_string(sheets));
            y += line(app, "plate/use", {x, y}, w, "Becomes parts", print_percent(fit.use).text());
            y += line(app, "plate/mass", {x, y}, w, "Sheet weighs", print(fit.sheet, units).text());
            y += line(app, "plate/drop", {x, y}, w, "Left over weighs", print(fit.drop, units).text());
        }
        y += 8;
        const auto field = [&](const char* path, const char* label) {
            y += entry(app, {body.x, y, body.w, 0}, path, label);
        };
        y += sheet_chips(app, {x, y}, w) + 8;
        field("job.sheet.width_mm", "Sheet length");
        field("job.sheet.height_mm", "Sheet width");
        field("job.sheet.margin_mm", "Edge margin");
        field("job.sheet.spacing_mm", "Between parts");
        field("job.run_offs", "Cuts that run off the plate");
        y += 8;
        y += words(ui, "plate/how", Type::label, {x, y}, w,
                   "Straight rows, both ways round. Expanded metal, grating and perforated plate are chosen in the "
                   "stock's sheet; weights are then those of the metal alone.",
                   ui.tokens().quiet);
        return y + 20 - body.y;
    });
}

} // namespace torchside::web
