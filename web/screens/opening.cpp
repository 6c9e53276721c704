// Opening a drawing: the rows in the shape's sheet, and what becomes of what was read.
#include "web/screens/opening.hpp"

#include <memory>
#include <utility>

#include "core/drawing/problems.hpp"
#include "core/drawing/wire.hpp"
#include "core/part/measure.hpp"
#include "core/quantity/print.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/app.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

using Step = Opening::Step;
using drawing::DrawingUnit;

void refuse(App& app, std::string_view why) {
    const std::string text(why); // it may be the app's refusal, which open() clears
    app.open("shape");           // where it stands
    app.opening.step = Step::refused;
    app.opening.fault = text;
}

void take(App& app, int numbers) {
    Opening& opening = app.opening;
    opening.drawing = drawing::unpack(platform::take_drawing(numbers));
    if (!opening.drawing) {
        return refuse(app, "could not be handed over; please open it again");
    }
    if (!opening.drawing->unit_known) {
        opening.step = Step::unit;
        app.open("shape");
        return;
    }
    auto outline = std::make_shared<const part::Outline>(opening.drawing->outline);
    app.contour.reset();
    app.look_at.reset();
    auto findings = drawing::kept(opening.drawing->problems);
    if (app.take(document::set_drawing(app.book(), opening.name, std::move(outline), std::move(findings)),
                 "Opened " + opening.name)) {
        opening.step = Step::none;
    } else {
        refuse(app, app.refusal());
    }
    opening.drawing.reset();
}

float reading(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const std::string percent = std::to_string(static_cast<int>(app.opening.share * 100)) + " %";
    const Rect cancel{place.right() - 110, place.y + 6, 110, 44};
    const float w = place.w - 122;
    words(ui, "drawing/reading", Type::text, {place.x, place.y + 8}, w, "Reading " + app.opening.name + ": " + percent,
          ui.tokens().ink);
    const Rect bar{place.x, place.y + 40, w, 8};
    pen.frame(bar, ui.tokens().ink, 1);
    pen.fill({bar.x, bar.y, bar.w * static_cast<float>(app.opening.share), bar.h}, ui.tokens().ink);
    if (button(ui, "drawing/cancel", cancel, "Cancel")) {
        platform::cancel_drawing();
        app.opening.step = Step::none;
    }
    return 64;
}

/// A drawing that does not say its unit: how large it is in each, and which it is.
float unit_question(App& app, Rect place) {
    constexpr DrawingUnit units[] = {DrawingUnit::mm, DrawingUnit::inch, DrawingUnit::cm, DrawingUnit::px};
    Ui& ui = app.ui();
    const drawing::Drawing& drawing = *app.opening.drawing;
    const part::Box box = part::box_of(drawing.outline);
    const double per = drawing::unit_mm(drawing.unit);
    float y = place.y + 8;
    y += words(ui, "drawing/ask", Type::text, {place.x, y}, place.w,
               app.opening.name + " does not say its unit. It is " + print_trimmed(box.width() / per, 3) + " by " +
                   print_trimmed(box.height() / per, 3) + " units large. One unit is",
               ui.tokens().ink) +
         8;
    std::vector<Choice> items;
    for (const DrawingUnit unit : units) {
        items.push_back({std::string("drawing/unit/") + drawing::unit_name(unit), drawing::unit_name(unit), false});
    }
    const float h = choices_height(ui, items.size(), 4);
    if (const auto chosen = choices(ui, "drawing/units", {place.x, y, place.w, h}, "Unit of the drawing", items, 4)) {
        platform::read_drawing_as(static_cast<int>(units[*chosen]));
    }
    return y + h + 12 - place.y;
}

/// What stands in the way of the drawn part, each kind once; the Part screen shows where.
float found(App& app, Rect place) {
    float y = place.y;
    const auto& warnings = app.sheet().warnings;
    for (std::size_t i = 0; i < warnings.size(); ++i) {
        if (warnings[i].field == "job.part.shape") {
            y += signed_words(app, "drawing/found/" + std::to_string(i), sign_of(warnings[i].severity), {place.x, y},
                              place.w, say(warnings[i], app.speech()), {});
        }
    }
    return y - place.y;
}

} // namespace

void drawing_news(App& app, std::string_view kind, std::string_view text, double number) {
    Opening& opening = app.opening;
    if (kind == "begin") {
        if (app.place() != Place::part) { // dropped elsewhere
            app.go(Place::part);
        }
        opening = {Step::reading, std::string(text), 0.0, {}, {}};
    } else if (kind == "progress") {
        opening.share = number;
    } else if (kind == "fault") {
        refuse(app, text);
    } else if (kind == "ready") {
        take(app, static_cast<int>(number));
    }
}

float drawing_rows(App& app, Rect place) {
    Ui& ui = app.ui();
    const part::PartSpec& part = app.book().job.part;
    const bool drawn = part.shape == part::Shape::drawing;
    float y = place.y;
    if (link_row(ui, "drawing/open", {place.x, y, place.w, ui.reach()}, "Open a drawing",
                 drawn && !part.drawing_name.empty() ? part.drawing_name : "DXF or SVG, from this device", Mark::part,
                 drawn)) {
        platform::open_drawing();
    }
    y += ui.reach();
    const Rect below{place.x + sheet_margin, y, place.w - 2 * sheet_margin, 0};
    switch (app.opening.step) {
    case Step::reading:
        y += reading(app, below);
        break;
    case Step::refused:
        y += signed_words(app, "drawing/fault", Sign::stop, {below.x, y + 6}, below.w,
                          app.opening.name + " " + app.opening.fault, {}) +
             6;
        break;
    case Step::unit:
        y += unit_question(app, below);
        break;
    case Step::none:
        if (drawn) {
            y += found(app, below);
        }
        break;
    }
    return y - place.y;
}

} // namespace torchside::web
