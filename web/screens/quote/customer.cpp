// What the customer will see, beside the quote as it is made: the same allow-list that the link carries, and nothing else.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/quote.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/quote_screen.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

using document::Quote;

/// The outline to scale, where there is one.
void outline(Body& body, const Quote& q) {
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
        return;
    }
    const Pen& pen = body.ui().pen();
    const Tokens& t = body.ui().tokens();
    const double scale = std::min(static_cast<double>(body.room()) / length, static_cast<double>(most_height) / width);
    body.gap(10);
    const Rect place = body.inside(static_cast<float>(width * scale));
    const float left = place.x + (place.w - static_cast<float>(length * scale)) / 2;
    body.ui().node("customer/part", Role::img, place, words::quote_screen::outline);
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
    body.gap(10);
}

void page(Body& body, const Quote& q) {
    const Tokens& t = body.ui().tokens();
    const Speech speech = body.app.speech_for(q); // the customer's, whatever this screen speaks
    const auto in_page = [&](const Text& text) { return torchside::say(text, speech); };
    const auto say = [&](const char* key, Type type, const std::string& text, Colour colour) {
        if (!text.empty()) {
            body.words(std::string("customer/") + key, type, text, colour);
            body.gap(4);
        }
    };
    body.gap(12);
    say("shop", Type::second, q.shop_name.empty() ? in_page(words::customer::quote) : q.shop_name, t.ink);
    say("contact", Type::label, q.contact, t.quiet);
    say("number", Type::text, in_page(document::quote_words(q)) + ", " + in_page(document::day_words(q.issued_day)),
        t.ink);
    say("until", Type::text, in_page(words::customer::Valid{.day = document::day_words(q.issued_day + q.valid_days)}),
        t.ink);
    body.gap(6);
    if (!q.part_name.empty()) {
        body.line("customer/name", in_page(words::customer::part), q.part_name);
    }
    body.line("customer/metal", in_page(words::customer::metal), in_page(stock::name(q.material)));
    body.line("customer/thickness", in_page(words::customer::thickness), print(q.thickness, speech.units).text());
    body.line("customer/size", in_page(words::customer::size),
              print(q.length, speech.units).text() + " × " + print(q.width, speech.units).text());
    outline(body, q);
    const std::vector<document::PriceLine> lines = document::price_lines(q, speech);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        body.line("customer/price/" + std::to_string(i), in_page(lines[i].name), lines[i].amount + ' ' + q.currency);
    }
    body.gap(12);
    say("note", Type::text, q.note, t.ink);
    body.gap(16);
}

} // namespace

void customer_column(App& app, Rect place) {
    const auto body_of = [&](Body& body) {
        if (const document::NextQuote* next = app.links.next(app.book(), app.worksheet())) {
            return page(body, next->quote);
        }
        body.gap(12);
        body.text("customer/none", words::quote_screen::no_path);
        body.gap(20);
    };
    PanelFrame frame{"customer", words::quote_screen::customer};
    frame.has_fields = false;
    framed_panel(app, {place, false}, frame, Drawer::of(body_of));
}

} // namespace torchside::web
