// Shape and sizes of the part, by touch.
#include <span>

#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"
#include "core/part/trace.hpp"
#include "generated/words/part_screen.hpp"
#include "generated/words/shape.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/part/drawing_import.hpp"
#include "web/screens/part/size_picture.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

using part::Shape;

constexpr PathLabel length{"job.part.length_mm", words::shape::length};
constexpr PathLabel width{"job.part.width_mm", words::shape::width};
constexpr PathLabel outside{"job.part.outside_mm", words::shape::outside};
constexpr PathLabel inside{"job.part.inside_mm", words::shape::bore};
constexpr PathLabel hole{"job.part.hole_mm", words::shape::hole};
constexpr PathLabel holes{"job.part.holes", words::shape::holes};
constexpr PathLabel corner{"job.part.corner_mm", words::shape::corner};
constexpr PathLabel hole_edge{"job.part.hole_edge_mm", words::shape::hole_edge};

constexpr PathLabel quantity{"job.quantity", words::shape::quantity};

// First what every such part is asked for by, then what is often left as it is.
constexpr PathLabel plate_sizes[] = {length, width, holes, hole, quantity, hole_edge, corner};
constexpr PathLabel disc_sizes[] = {outside, quantity};
constexpr PathLabel ring_sizes[] = {outside, inside, quantity};
constexpr PathLabel flange_sizes[] = {
    outside, inside, holes, hole, {"job.part.hole_circle_mm", words::shape::bolt_circle}, quantity};
constexpr PathLabel gusset_sizes[] = {length, width, quantity, corner};
constexpr PathLabel slotted_sizes[] = {length,
                                       width,
                                       {"job.part.slot_length_mm", words::shape::slot_length},
                                       {"job.part.slot_width_mm", words::shape::slot_width},
                                       quantity,
                                       corner};
constexpr PathLabel bracket_sizes[] = {length,    width,    holes,
                                       hole,      quantity, {"job.part.leg_mm", words::shape::leg},
                                       hole_edge, corner,   {"job.part.inner_corner_mm", words::shape::inner_corner}};
constexpr PathLabel drawing_sizes[] = {quantity};

struct ShapeChoice {
    Shape shape;
    const char* word; // of the workbook
    Word name;
    std::span<const PathLabel> sizes;
};
constexpr ShapeChoice shape_choices[] = {{Shape::plate, "plate", words::shape::plate, plate_sizes},
                                         {Shape::disc, "disc", words::shape::disc, disc_sizes},
                                         {Shape::ring, "ring", words::shape::ring, ring_sizes},
                                         {Shape::flange, "flange", words::shape::flange, flange_sizes},
                                         {Shape::gusset, "gusset", words::shape::gusset, gusset_sizes},
                                         {Shape::slotted_plate, "slotted_plate", words::shape::slotted, slotted_sizes},
                                         {Shape::bracket, "bracket", words::shape::bracket, bracket_sizes}};

std::span<const PathLabel> sizes_of(Shape shape) {
    for (const ShapeChoice& choice : shape_choices) {
        if (choice.shape == shape) {
            return choice.sizes;
        }
    }
    return drawing_sizes;
}

/// The shape as it comes by default, to fit a tile.
void sketch(const Pen& pen, Colour colour, Shape shape, Rect place) {
    const auto outline = part::make_outline({.shape = shape});
    if (!outline.ok()) {
        return;
    }
    const part::Box box = part::box_of(outline.value());
    const double scale =
        std::min(static_cast<double>(place.w) / box.width(), static_cast<double>(place.h) / box.height());
    const Point c = place.centre();
    for (const part::Contour& contour : outline.value().contours) {
        std::vector<Point> points;
        for (const part::Point p : part::trace(contour.points, true, 0.2 / scale)) {
            points.push_back({c.x + static_cast<float>((p.x - (box.low.x + box.high.x) / 2) * scale),
                              c.y - static_cast<float>((p.y - (box.low.y + box.high.y) / 2) * scale)});
        }
        pen.polyline(points.data(), static_cast<int>(points.size()), colour, 2);
    }
}

bool tile(Ui& ui, Rect place, const ShapeChoice& choice, bool chosen) {
    const std::string id = std::string("shape/") + choice.word;
    const bool used = ui.node(id, Role::radio, place, choice.name, {}, chosen ? "checked" : "");
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, chosen ? t.ink : ui.pressed(id) ? t.hairline : t.ground);
    pen.frame(place, t.ink, 1.5F);
    const Colour ink = chosen ? t.ground : t.ink;
    const Point c{place.centre().x, place.y + 34};
    sketch(pen, ink, choice.shape, {c.x - 28, c.y - 26, 56, 44});
    pen.words_in({place.x + 4, place.bottom() - 36, place.w - 8, 35}, Type::label, ink, ui.word(choice.name),
                 Align::centre);
    return used;
}

void shapes(Body& body) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Grid grid = body.grid(std::size(shape_choices), ui.glove() ? 3 : 4, 92);
    ui.open_group("shape/choice", Role::group, grid.place, words::shape::choice);
    for (std::size_t i = 0; i < std::size(shape_choices); ++i) {
        const ShapeChoice& choice = shape_choices[i];
        if (tile(ui, grid.cell(i), choice, app.book().job.part.shape == choice.shape)) {
            app.scratch.forget_contours();
            app.take(document::choose_shape(app.book(), choice.word),
                     app.say(words::shape::Chosen{.name = choice.name}));
        }
    }
    ui.close_group();
}

} // namespace

void shape_panel(App& app, PanelAt at) {
    const auto picture = [&](Body& body) {
        if (const auto& fault = app.worksheet().part->fault) {
            body.sign("shape/fault", Sign::stop, app.say(words::shape::WrongSizes{.why = fault->told()}));
        } else if (app.book().job.part.shape != Shape::drawing) {
            size_picture(body, sizes_of(app.book().job.part.shape));
        }
    };
    const auto rows = [&](Body& body) {
        body.gap(10);
        shapes(body);
        body.gap(12);
        drawing_rows(body);
        body.fields(sizes_of(app.book().job.part.shape));
        body.gap(20);
    };
    framed_panel(app, at, {"shape", words::part_screen::shape, Drawer::of(picture)}, Drawer::of(rows));
}

} // namespace torchside::web
