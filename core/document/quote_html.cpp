#include "core/document/quote_html.hpp"

#include <algorithm>

#include "core/document/date.hpp"
#include "core/price/money.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"

namespace torchside::document {

namespace {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

/// <tag class="name">text</tag>, or nothing for no text.
void element(std::string& out, std::string_view tag, std::string_view name, std::string_view text) {
    if (text.empty()) {
        return;
    }
    out.append("<").append(tag);
    if (!name.empty()) {
        out.append(" class=\"").append(name).append("\"");
    }
    out.append(">").append(escaped(text)).append("</").append(tag).append(">");
}

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

// ---- the drawing ----
constexpr double wide = 100.0; // what the part may take of the view
constexpr double high = 70.0;

class Drawing {
public:
    Drawing(const Quote& quote, double length_mm, double width_mm)
        : quote_(quote), scale_(std::min(wide / std::max(length_mm, 1e-9), high / std::max(width_mm, 1e-9))),
          length_(length_mm * scale_), width_(width_mm * scale_) {}

    void write(std::string& out) const {
        out += "<svg width=\"" + figure((length_ + 21.0) * 1.3) + "mm\" viewBox=\"-17 -3 " + figure(length_ + 21.0) +
               ' ' + figure(width_ + 16.0) + "\" role=\"img\"><title>" + escaped(title()) + "</title>";
        std::string solid;
        std::string lines;
        for (const QuoteContour& c : quote_.outline.contours) {
            path(c, c.open ? lines : solid);
        }
        out += "<path class=\"part\" fill-rule=\"evenodd\" d=\"" + solid + "\"/>";
        if (!lines.empty()) {
            out += "<path class=\"line\" d=\"" + lines + "\"/>";
        }
        dimensions(out);
        out += "</svg>";
    }

private:
    static std::string figure(double v) { return print_trimmed(std::max(v, 0.0), 3); }
    std::string title() const {
        return "Outline of the part, " + print(quote_.length, quote_.units).text() + " by " +
               print(quote_.width, quote_.units).text();
    }
    std::string at(double x, double y) const { return figure(x * scale_) + ' ' + figure(width_ - y * scale_); }

    void path(const QuoteContour& c, std::string& d) const {
        if (c.circle_mm > 0.0) {
            const double r = c.circle_mm / 2.0;
            const std::string radii = figure(r * scale_) + ' ' + figure(r * scale_) + " 0 1 0 ";
            d += 'M' + at(c.points[0].x - r, c.points[0].y) + 'A' + radii + at(c.points[0].x + r, c.points[0].y) + 'A' +
                 radii + at(c.points[0].x - r, c.points[0].y) + 'Z';
            return;
        }
        for (std::size_t i = 0; i < c.points.size(); ++i) {
            d += (i == 0 ? 'M' : 'L') + at(c.points[i].x, c.points[i].y);
        }
        d += c.open ? "" : "Z";
    }

    void dimensions(std::string& out) const {
        const std::string right = figure(length_);
        const std::string below = figure(width_);
        const std::string line = figure(width_ + 6.0);
        out += "<path class=\"size\" d=\"M0 " + figure(width_ + 1.5) + 'V' + figure(width_ + 7.5) + 'M' + right + ' ' +
               figure(width_ + 1.5) + 'V' + figure(width_ + 7.5) + "M0 " + line + 'H' + right + "M-1.5 0H-7.5M-1.5 " +
               below + "H-7.5M-6 0V" + below + "\"/>";
        out += "<text x=\"" + figure(length_ / 2.0) + "\" y=\"" + figure(width_ + 11.5) + "\">" +
               escaped(print(quote_.length, quote_.units).text()) + "</text><text transform=\"translate(-8.5 " +
               figure(width_ / 2.0) + ")rotate(-90)\">" + escaped(print(quote_.width, quote_.units).text()) + "</text>";
    }

    const Quote& quote_;
    double scale_;
    double length_; // of the drawing, in units of the view
    double width_;
};

void drawing(const Quote& q, std::string& out) {
    double length = q.length.in(mm);
    double width = q.width.in(mm);
    for (const QuoteContour& c : q.outline.contours) {
        for (const part::Point p : c.points) {
            length = std::max(length, p.x + c.circle_mm / 2.0);
            width = std::max(width, p.y + c.circle_mm / 2.0);
        }
    }
    if (q.outline.contours.empty() || !(length > 0.0)) {
        return;
    }
    out += "<figure>";
    Drawing(q, length, width).write(out);
    element(out, "figcaption", "",
            "Shown to within " + print(q.tolerance, q.units).text() + " of the part" +
                (q.outline.partly ? "; small holes are left out of the picture." : "."));
    out += "</figure>";
}

// ---- the price ----
void price_table(const Quote& q, std::string& out) {
    const int places = price::decimals(q.currency);
    const auto shown = [&](double amount) { return price::print(price::money(amount, places), places); };
    const auto line = [&](std::string_view name, const std::string& label, double amount) {
        out.append("<tr").append(name.empty() ? "" : " class=\"sum\"").append("><th scope=\"row\">");
        out += escaped(label) + "</th><td>" + shown(amount) + "</td></tr>";
    };
    out += "<table><caption>Price in " + escaped(q.currency) + "</caption><tbody>";
    const bool even = price::money(q.quantity * q.price_each, places) == price::money(q.price_total, places);
    line("", even ? "Each, before tax" : "Each, rounded (the total counts), before tax", q.price_each);
    const std::string pieces = std::to_string(q.quantity) + (q.quantity == 1 ? " piece" : " pieces");
    if (q.tax) {
        line("", pieces + ", before tax", q.price_total);
        line("", "Tax, " + print_percent(*q.tax, 2).text(), *q.tax_amount);
        line("sum", "Total", q.to_pay);
    } else {
        line("sum", pieces + ", before tax", q.price_total);
    }
    out += "</tbody></table>";
}

} // namespace

std::string quote_html(const Quote& q) {
    std::string out = "<div class=\"head\"><div>";
    element(out, "h1", "", q.shop_name.empty() ? "Quote" : q.shop_name);
    element(out, "p", "contact", q.contact);
    out += "</div><div class=\"which\">";
    element(out, "p", "", q.number.empty() ? "Quote" : "Quote " + q.number);
    element(out, "p", "", print_day(q.issued_day));
    out += "</div></div>";
    const std::string until = print_day(q.issued_day + q.valid_days);
    element(out, "p", "holds", "Estimate. Holds until " + until + ".");
    out += "<dl>";
    row(out, "Part", q.part_name);
    row(out, "Metal", stock::name(q.material));
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
            "This is an estimate for the part as shown, cut from plate by plasma arc. It is no invoice. Ask the shop "
            "before " +
                until + " to turn it into an order.");
    return out;
}

std::string quote_file(const Quote& q, std::string_view style) {
    std::string out = "<!doctype html>\n<html lang=\"en\" class=\"quote\">\n<head>\n<meta charset=\"utf-8\">\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                      "'unsafe-inline'\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>";
    out += escaped(q.shop_name.empty() ? "Quote" : q.shop_name + ": quote");
    out += q.number.empty() ? "" : ' ' + escaped(q.number);
    out.append("</title>\n<style>").append(style).append("</style>\n</head>\n<body><main><article class=\"sheet\">");
    return out + quote_html(q) + "</article></main></body>\n</html>\n";
}

std::string refused_html(const Fault& fault) {
    std::string out = "<h1>This quote cannot be shown</h1>";
    const std::size_t comma = fault.text.find(", accepted is ");
    element(out, "p", "refused",
            fault.field == "link" ? "The link is " + fault.text.substr(0, comma) + '.'
                                  : "Its field " + fault.field + " is not right: " + fault.text + '.');
    element(out, "p", "", "Ask the shop to send it again, and open the whole link.");
    return out;
}

} // namespace torchside::document
