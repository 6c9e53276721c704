#include "core/quote/quote_html.hpp"

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/html.hpp"
#include "core/stock/properties.hpp"
#include "core/words/say.hpp"

namespace torchside::document {

namespace {

UnitSystem other(UnitSystem units) {
    return units == UnitSystem::metric ? UnitSystem::inch : UnitSystem::metric;
}

void row(std::string& out, std::string_view label, std::string_view value, std::string_view more = {}) {
    if (value.empty()) {
        return;
    }
    out += "<div>";
    element(out, "dt", "", label);
    out += "<dd>" + escaped(value);
    if (!more.empty()) {
        element(out, "span", "also", more);
    }
    out += "</dd></div>";
}

void length_row(std::string& out, std::string_view label, Length length, UnitSystem units) {
    row(out, label, print(length, units).text(), print(length, other(units)).text());
}

/// "120 × 80 mm"
std::string both(Length length, Length width, UnitSystem units) {
    const Printed one = print(length, units);
    const Printed two = print(width, units);
    return (one.unit == two.unit ? one.number : one.text()) + " × " + two.text();
}

void drawing(const Quote& q, std::string& out) {
    const std::string svg = outline_svg(q.outline, q.length, q.width, q.units);
    if (svg.empty()) {
        return;
    }
    out += "<figure>" + svg;
    element(out, "figcaption", "",
            "Shown to within " + print(q.tolerance, q.units).text() + " of the part" +
                (q.outline.partly ? "; small holes are left out of the picture." : "."));
    out += "</figure>";
}

void price_table(const Quote& q, std::string& out) {
    out += "<table><caption>Price in " + escaped(q.currency) + "</caption><tbody>";
    const std::vector<PriceLine> lines = price_lines(q);
    for (const PriceLine& line : lines) {
        out.append("<tr").append(&line == &lines.back() ? " class=\"sum\"" : "").append("><th scope=\"row\">");
        out += escaped(line.name) + "</th><td>" + line.amount + "</td></tr>";
    }
    out += "</tbody></table>";
}

} // namespace

std::string quote_html(const Quote& q, std::optional<int> today) {
    std::string out = "<div class=\"head\"><div>";
    element(out, "h1", "", q.shop_name.empty() ? "Quote" : q.shop_name);
    element(out, "p", "contact", q.contact);
    out += "</div><div class=\"which\">";
    element(out, "p", "", quote_words(q));
    element(out, "p", "", print_day(q.issued_day));
    if (q.revision > 0) {
        element(out, "p", "", "Replaces what was sent under this number before.");
    }
    out += "</div></div>";
    const std::string until = print_day(q.issued_day + q.valid_days);
    const bool over = today && *today > q.issued_day + q.valid_days;
    element(out, "p", over ? "holds over" : "holds",
            over ? "Ran out on " + until + ". Ask the shop for today's price."
                 : "Estimate. Valid until " + until + ".");
    out += "<dl>";
    row(out, "Part", q.part_name);
    row(out, "Metal", say(stock::name(q.material), q.units));
    length_row(out, "Thickness", q.thickness, q.units);
    if (q.length.in(mm) > 0.0) {
        row(out, "Over all", both(q.length, q.width, q.units), both(q.length, q.width, other(q.units)));
    }
    row(out, "Quantity", std::to_string(q.quantity));
    out += "</dl>";
    drawing(q, out);
    price_table(q, out);
    element(out, "p", "note", q.note);
    element(out, "p", "terms",
            "This is an estimate for the part as shown, cut from plate by plasma arc. It is no invoice. " +
                (over ? "The price was valid until " + until + '.'
                      : "Ask the shop before " + until + " to turn it into an order."));
    return out;
}

std::string quote_file(const Quote& q, std::string_view style) {
    std::string out = "<!doctype html>\n<html lang=\"en\" class=\"quote\">\n<head>\n<meta charset=\"utf-8\">\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                      "'unsafe-inline'\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>";
    out += escaped(q.shop_name.empty() ? "Quote" : q.shop_name + ": quote");
    out += q.number.empty() ? "" : ' ' + escaped(number_words(q.number, q.revision));
    out.append("</title>\n<style>").append(style).append("</style>\n</head>\n<body><main><article class=\"sheet\">");
    return out + quote_html(q) + "</article></main></body>\n</html>\n";
}

std::string refused_html(const Fault& fault) {
    std::string out = "<h1>This quote cannot be shown</h1>";
    const std::string said = say(fault.text, UnitSystem::metric);
    const std::size_t comma = said.find(", accepted is ");
    element(out, "p", "refused",
            fault.field == "link" ? "The link is " + said.substr(0, comma) + '.'
                                  : "Its field " + fault.field + " is not right: " + said + '.');
    element(out, "p", "", "Ask the shop to send it again, and open the whole link.");
    return out;
}

} // namespace torchside::document
