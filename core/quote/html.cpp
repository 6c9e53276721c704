#include "core/quote/html.hpp"

#include <algorithm>
#include <utility>

#include "core/quantity/print.hpp"
#include "generated/words/customer.hpp"

namespace torchside::document {

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

namespace {

constexpr double wide = 100.0; // what the part may take of the view
constexpr double high = 70.0;

class Drawing {
public:
    struct Said { // of the part's size
        std::string title, length, width;
    };
    Drawing(const QuoteOutline& outline, Said said, double length_mm, double width_mm)
        : outline_(outline), said_(std::move(said)),
          scale_(std::min(wide / std::max(length_mm, 1e-9), high / std::max(width_mm, 1e-9))),
          length_(length_mm * scale_), width_(width_mm * scale_) {}

    void write(std::string& out) const {
        out += "<svg width=\"" + figure((length_ + 21.0) * 1.3) + "mm\" viewBox=\"-17 -3 " + figure(length_ + 21.0) +
               ' ' + figure(width_ + 16.0) + "\" role=\"img\"><title>" + escaped(said_.title) + "</title>";
        std::string solid;
        std::string lines;
        for (const QuoteContour& c : outline_.contours) {
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
               escaped(said_.length) + "</text><text transform=\"translate(-8.5 " + figure(width_ / 2.0) +
               ")rotate(-90)\">" + escaped(said_.width) + "</text>";
    }

    const QuoteOutline& outline_;
    Said said_;
    double scale_;
    double length_; // of the drawing, in units of the view
    double width_;
};

} // namespace

std::string outline_svg(const QuoteOutline& outline, Length length, Length width, const Speech& speech) {
    double x = length.in(mm);
    double y = width.in(mm);
    for (const QuoteContour& c : outline.contours) {
        for (const part::Point p : c.points) {
            x = std::max(x, p.x + c.circle_mm / 2.0);
            y = std::max(y, p.y + c.circle_mm / 2.0);
        }
    }
    if (outline.contours.empty() || !(x > 0.0)) {
        return {};
    }
    std::string out;
    const Text title = words::customer::Outline{.length = length, .width = width};
    Drawing(outline, {say(title, speech), print(length, speech.units).text(), print(width, speech.units).text()}, x, y)
        .write(out);
    return out;
}

} // namespace torchside::document
