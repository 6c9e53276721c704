// What the customer will see, beside the quote as it is made: the same allow-list that the link carries, and nothing else.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/quote.hpp"
#include "core/stock/properties.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"

namespace torchside::web {
namespace {

using document::Quote;

/// The outline to scale; returns the height used.
float outline(App& app, Point at, float w, const Quote& q) {
    constexpr float most_height = 260;
    double length = q.length.in(mm);
    double width = q.width.in(mm);
    for (const document::QuoteContour& c : q.outline.contours) {
        for (const part::Point p : c.points) {
            length = std::max(length, p.x + c.circle_mm / 2);
            width = std::max(width, p.y + c.circle_mm / 2);
        }
    }
    if (q.outline.contours.empty() || !(length > 0) || !(width > 0)) {
        return 0;
    }
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    const double scale = std::min(static_cast<double>(w) / length, static_cast<double>(most_height) / width);
    const auto height = static_cast<float>(width * scale);
    const Rect place{at.x, at.y + 10, w, height};
    const float left = place.x + (w - static_cast<float>(length * scale)) / 2;
    app.ui().node("customer/part", Role::img, place, "Outline of the part");
    std::vector<Point> points;
    for (const document::QuoteContour& c : q.outline.contours) {
        points.clear();
        for (const part::Point p : c.points) {
            points.push_back(
                {left + static_cast<float>(p.x * scale), place.bottom() - static_cast<float>(p.y * scale)});
        }
        if (c.circle_mm > 0) {
            pen.ring(points[0], static_cast<float>(c.circle_mm / 2 * scale), t.ink, 1.5F);
        } else {
            pen.polyline(points.data(), static_cast<int>(points.size()), t.ink, 1.5F, !c.open);
        }
    }
    return height + 20;
}

float prices(App& app, Point at, float w, const Quote& q) {
    float y = at.y;
    const std::vector<document::PriceLine> lines = document::price_lines(q);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        y += line(app, "customer/price/" + std::to_string(i), {at.x, y}, w, lines[i].name,
                  lines[i].amount + ' ' + q.currency);
    }
    return y - at.y;
}

float page(App& app, Rect body, const Quote& q) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = body.y + 12;
    const auto say = [&](const char* key, Type type, const std::string& text, Colour colour) {
        if (!text.empty()) {
            y += words(ui, std::string("customer/") + key, type, {x, y}, w, text, colour) + 4;
        }
    };
    const auto put = [&](const char* key, const char* name, const std::string& value) {
        if (!value.empty()) {
            y += line(app, std::string("customer/") + key, {x, y}, w, name, value);
        }
    };
    say("shop", Type::second, q.shop_name.empty() ? "Quote" : q.shop_name, t.ink);
    say("contact", Type::label, q.contact, t.quiet);
    say("number", Type::text, document::quote_words(q) + ", " + document::print_day(q.issued_day), t.ink);
    say("until", Type::text, "Estimate. Valid until " + document::print_day(q.issued_day + q.valid_days) + '.', t.ink);
    y += 6;
    put("name", "Part", q.part_name);
    put("metal", "Metal", std::string(stock::name(q.material)));
    put("thickness", "Thickness", print(q.thickness, q.units).text());
    put("size", "Over all", print(q.length, q.units).text() + " × " + print(q.width, q.units).text());
    y += outline(app, {x, y}, w, q);
    y += prices(app, {x, y}, w, q) + 12;
    say("note", Type::text, q.note, t.ink);
    return y + 16 - body.y;
}

} // namespace

void customer_panel(App& app, Rect place) {
    const Worksheet& s = app.sheet();
    const auto body = [&](Rect at) {
        const document::NextQuote* next = app.links.next(app.book(), s);
        if (next == nullptr) {
            return 32 + words(app.ui(), "customer/none", Type::text, {at.x + sheet_margin, at.y + 12},
                              at.w - 2 * sheet_margin, "No quote: there is no path to cut.", app.ui().tokens().ink);
        }
        return page(app, at, next->quote);
    };
    SheetFrame frame{"customer", "The customer sees", false};
    frame.has_fields = false;
    framed_sheet(app, place, frame, Drawer::of(body));
}

} // namespace torchside::web
