#include "core/quote/quote_html.hpp"

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/html.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/customer.hpp"

namespace torchside::document {

namespace {

/// "120 × 80 mm"
std::string both(Length length, Length width, Units units) {
    const Printed one = print(length, units);
    const Printed two = print(width, units);
    return (one.unit == two.unit ? one.number : one.text()) + " × " + two.text();
}

/// The page of one quote, said in one language.
class Page {
public:
    Page(const Quote& quote, const Language& language) : q_(quote), speech_(language, quote.units) {}

    std::string html(std::optional<int> today) const {
        std::string out;
        const bool over = today && *today > q_.issued_day + q_.valid_days;
        head(over, out);
        size(out);
        drawing(out);
        price_table(out);
        element(out, "p", "note", q_.note);
        Text terms = words::customer::estimate;
        terms += over ? Text(words::customer::WasValid{.day = until()}) : words::customer::OrderBefore{.day = until()};
        element(out, "p", "terms", said(terms));
        return out;
    }

    [[nodiscard]] std::string title() const {
        if (q_.shop_name.empty()) {
            return said(quote_words(q_));
        }
        if (q_.number.empty()) {
            return said(words::customer::QuoteFrom{.shop = q_.shop_name});
        }
        return said(
            words::customer::QuoteFromNumber{.number = number_words(q_.number, q_.revision), .shop = q_.shop_name});
    }

private:
    [[nodiscard]] std::string said(const Text& text) const { return say(text, speech_); }
    [[nodiscard]] Text until() const { return day_words(q_.issued_day + q_.valid_days); }

    void head(bool over, std::string& out) const {
        out += "<div class=\"head\"><div>";
        element(out, "h1", "", q_.shop_name.empty() ? said(words::customer::quote) : q_.shop_name);
        element(out, "p", "contact", q_.contact);
        out += "</div><div class=\"which\">";
        element(out, "p", "", said(quote_words(q_)));
        element(out, "p", "", said(day_words(q_.issued_day)));
        if (q_.revision > 0) {
            element(out, "p", "", said(words::customer::replaces));
        }
        out += "</div></div>";
        element(out, "p", over ? "holds over" : "holds",
                said(over ? Text(words::customer::RanOut{.day = until()}) : words::customer::Valid{.day = until()}));
    }

    void row(std::string& out, Word label, std::string_view value, std::string_view more = {}) const {
        if (value.empty()) {
            return;
        }
        out += "<div>";
        element(out, "dt", "", said(label));
        out += "<dd>" + escaped(value);
        if (!more.empty()) {
            element(out, "span", "also", more);
        }
        out += "</dd></div>";
    }

    void size(std::string& out) const {
        const Units units = speech_.units;
        out += "<dl>";
        row(out, words::customer::part, q_.part_name);
        row(out, words::customer::metal, said(stock::name(q_.material)));
        row(out, words::customer::thickness, print(q_.thickness, units).text(),
            print(q_.thickness, units.other()).text());
        if (q_.length.in(mm) > 0.0) {
            row(out, words::customer::size, both(q_.length, q_.width, units), both(q_.length, q_.width, units.other()));
        }
        row(out, words::customer::quantity, std::to_string(q_.quantity));
        out += "</dl>";
    }

    void drawing(std::string& out) const {
        const std::string svg = outline_svg(q_.outline, q_.length, q_.width, speech_);
        if (svg.empty()) {
            return;
        }
        out += "<figure>" + svg;
        element(out, "figcaption", "",
                said(q_.outline.partly ? Text(words::customer::ShownWithinPartly{.tolerance = q_.tolerance})
                                       : words::customer::ShownWithin{.tolerance = q_.tolerance}));
        out += "</figure>";
    }

    void price_table(std::string& out) const {
        out += "<table>";
        element(out, "caption", "", said(words::customer::PriceIn{.currency = q_.currency}));
        out += "<tbody>";
        const std::vector<PriceLine> lines = price_lines(q_, speech_);
        for (const PriceLine& line : lines) {
            out.append("<tr").append(&line == &lines.back() ? " class=\"sum\"" : "").append("><th scope=\"row\">");
            out += escaped(said(line.name)) + "</th><td>" + line.amount + "</td></tr>";
        }
        out += "</tbody></table>";
    }

    const Quote& q_;
    Speech speech_;
};

} // namespace

std::string quote_html(const Quote& q, const Language& language, std::optional<int> today) {
    return Page(q, language).html(today);
}

std::string quote_file(const Quote& q, const Language& language, std::string_view style) {
    const Page page(q, language);
    std::string out = "<!doctype html>\n<html lang=\"" + std::string(language.code) +
                      "\" class=\"quote\">\n<head>\n<meta charset=\"utf-8\">\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                      "'unsafe-inline'\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>";
    out += escaped(page.title());
    out.append("</title>\n<style>").append(style).append("</style>\n</head>\n<body><main><article class=\"sheet\">");
    return out + page.html({}) + "</article></main></body>\n</html>\n";
}

std::string refused_html(const Fault& fault, const Language& language) {
    const Speech speech(language, UnitSystem::metric);
    std::string out;
    element(out, "h1", "", say(words::customer::refused, speech));
    const bool own = fault.field == "link"; // else it is of the schema, which a customer does not know
    element(out, "p", "refused", say(own ? fault.told() : Text(words::customer::refused_odd), speech));
    element(out, "p", "", say(words::customer::send_again, speech));
    return out;
}

} // namespace torchside::document
