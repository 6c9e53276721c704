// Opening a drawing: the rows in the shape's panel, and what becomes of what was read.
#include "web/screens/part/drawing_import.hpp"

#include <memory>
#include <utility>

#include "core/drawing/problems.hpp"
#include "core/drawing/wire.hpp"
#include "core/part/measure.hpp"
#include "generated/words/drawing.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/body.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

using Step = DrawingImport::Step;
using drawing::DrawingUnit;

void refuse(App& app, std::string_view why) {
    const std::string text(why); // it may be the app's refusal, which open() clears
    app.open("shape");           // where it stands
    app.drawing.step = Step::refused;
    app.drawing.fault = text;
}

void take(App& app, int numbers) {
    DrawingImport& file = app.drawing;
    file.drawing = drawing::unpack(platform::take_drawing(numbers));
    if (!file.drawing) {
        return refuse(app, app.word(words::drawing::lost));
    }
    if (!file.drawing->unit_known) {
        file.step = Step::unit;
        app.open("shape");
        return;
    }
    auto outline = std::make_shared<const part::Outline>(file.drawing->outline);
    app.contour.reset();
    app.look_at.reset();
    auto findings = drawing::kept(file.drawing->problems);
    if (app.take(document::set_drawing(app.book(), file.name, std::move(outline), std::move(findings)),
                 app.say(words::drawing::Opened{.name = file.name}))) {
        file.step = Step::none;
    } else {
        refuse(app, app.refusal());
    }
    file.drawing.reset();
}

void reading(Body& body) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Rect place = body.inside(64);
    const Rect cancel{place.right() - 110, place.y + 6, 110, 44};
    const float w = place.w - 122;
    const std::string text =
        app.say(words::drawing::Reading{.name = app.drawing.name, .share = words::percent(app.drawing.share)});
    words(ui, "drawing/reading", Type::text, {place.x, place.y + 8}, w, text, ui.tokens().ink);
    const Rect bar{place.x, place.y + 40, w, 8};
    pen.frame(bar, ui.tokens().ink, 1);
    pen.fill({bar.x, bar.y, bar.w * static_cast<float>(app.drawing.share), bar.h}, ui.tokens().ink);
    if (button(ui, "drawing/cancel", cancel, ui.word(words::drawing::cancel))) {
        platform::cancel_drawing();
        app.drawing.step = Step::none;
    }
}

/// A drawing that does not say its unit: how large it is in each, and which it is.
void unit_question(Body& body) {
    constexpr DrawingUnit units[] = {DrawingUnit::mm, DrawingUnit::inch, DrawingUnit::cm, DrawingUnit::px};
    const DrawingImport& file = body.app.drawing;
    const part::Box box = part::box_of(file.drawing->outline);
    const double per = drawing::unit_mm(file.drawing->unit);
    body.gap(8);
    body.text("drawing/ask", body.app.say(words::drawing::AskUnit{.height = words::number(box.height() / per, 3),
                                                                  .name = file.name,
                                                                  .width = words::number(box.width() / per, 3)}));
    body.gap(8);
    std::vector<Choice> items;
    for (const DrawingUnit unit : units) {
        items.push_back({std::string("drawing/unit/") + drawing::unit_name(unit), drawing::unit_name(unit), false});
    }
    if (const auto chosen = body.choices("drawing/units", words::drawing::unit, items, 4)) {
        platform::read_drawing_as(static_cast<int>(units[*chosen]));
    }
    body.gap(12);
}

/// What stands in the way of the drawn part, each kind once; the Part screen shows where.
void found(Body& body) {
    const auto& warnings = body.app.worksheet().warnings;
    for (std::size_t i = 0; i < warnings.size(); ++i) {
        if (warnings[i].field == "job.part.shape") {
            body.sign("drawing/found/" + std::to_string(i), sign_of(warnings[i].severity),
                      say(warnings[i], body.app.speech()));
        }
    }
}

} // namespace

void drawing_news(App& app, std::string_view kind, std::string_view text, double number) {
    DrawingImport& file = app.drawing;
    if (kind == "begin") {
        if (app.page() != Page::part) { // dropped elsewhere
            app.go(Page::part);
        }
        file = {Step::reading, std::string(text), 0.0, {}, {}};
    } else if (kind == "progress") {
        file.share = number;
    } else if (kind == "fault") {
        refuse(app, text);
    } else if (kind == "ready") {
        take(app, static_cast<int>(number));
    }
}

void drawing_rows(Body& body) {
    App& app = body.app;
    const part::PartSpec& part = app.book().job.part;
    const bool drawn = part.shape == part::Shape::drawing;
    const bool named = drawn && !part.drawing_name.empty();
    if (body.row("drawing/open", words::drawing::open,
                 named ? Label(part.drawing_name) : Label(words::drawing::open_about), Mark::part, drawn)) {
        platform::open_drawing();
    }
    switch (app.drawing.step) {
    case Step::reading:
        reading(body);
        break;
    case Step::refused:
        body.gap(6);
        body.sign("drawing/fault", Sign::stop,
                  app.say(words::drawing::Refused{.name = app.drawing.name, .why = app.drawing.fault}));
        break;
    case Step::unit:
        unit_question(body);
        break;
    case Step::none:
        if (drawn) {
            found(body);
        }
        break;
    }
}

} // namespace torchside::web
