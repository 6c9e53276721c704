#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/svg_read.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

constexpr int deepest_use = 32;
constexpr double quarter = std::numbers::pi / 2;

} // namespace

bool SvgReader::length(std::string_view name, double whole, double otherwise, double& out) {
    const std::string_view typed = xml_.attribute(name);
    SvgLength read;
    out = otherwise;
    if (without_blanks(typed).empty() || alike(without_blanks(typed), "auto")) {
        return true;
    }
    if (const Word why = read_length(typed, whole, read); why != Word{}) {
        return refuse(why);
    }
    out = read.px;
    return true;
}

bool SvgReader::use(const State& outside, int uses) {
    std::string_view link = without_blanks(xml_.attribute("href"));
    link = link.empty() ? without_blanks(xml_.attribute("xlink:href")) : link;
    if (!link.starts_with("#")) {
        ++sketch_.counts.not_read;
        note(Found::elsewhere, outside);
        return true;
    }
    const std::uint32_t* found = ids_.find(link.substr(1));
    if (!found) {
        return refuse(words::drawing_fault::NoId{.link = quotable(link)});
    }
    if (uses >= deepest_use || std::find(using_.begin(), using_.end(), *found) != using_.end()) {
        return refuse(words::drawing_fault::UseLoop{.link = quotable(link)});
    }
    State state = outside;
    Box box;
    if (!length("x", state.width, 0.0, box.x) || !length("y", state.height, 0.0, box.y) ||
        !length("width", state.width, 0.0, box.width) || !length("height", state.height, 0.0, box.height)) {
        return false;
    }
    state.place = state.place * Affine{1, 0, 0, 1, box.x, box.y};
    SvgXml here = xml_; // and the names of what is open here
    using_.push_back(*found);
    xml_.go_to(*found);
    const bool good =
        xml_.next() == SvgXml::Event::open ? tree(state, uses + 1, &box) : refuse(words::drawing_fault::no_element);
    using_.pop_back();
    if (good) {
        xml_ = std::move(here);
    }
    return good;
}

bool SvgReader::shape(std::string_view name, const State& state) {
    if (!state.visible) {
        ++sketch_.counts.hidden;
        note(Found::hidden, state);
        return true;
    }
    if (name == "path") {
        const std::size_t before = sketch_.counts.pieces;
        const Word why = draw_path(xml_.attribute("d"), state.place, pen_);
        pen_.finish();
        if (why != Word{} && sketch_.counts.pieces == before) {
            return refuse(why);
        }
        if (why != Word{}) { // as SVG 1.1 asks (appendix F.2): what comes before the error is drawn
            note(Found::cut_short, state);
        }
        return true;
    }
    if (name == "rect") {
        return rect(state);
    }
    if (name == "circle" || name == "ellipse") {
        return round(name, state);
    }
    if (name == "line") {
        return straight(state);
    }
    if (name == "polyline" || name == "polygon") {
        return points(state, name == "polygon");
    }
    ++sketch_.counts.not_read;
    note(Found::not_read, state);
    return true;
}

bool SvgReader::nothing(const State& state) {
    ++sketch_.counts.short_pieces;
    note(Found::short_piece, state);
    return true;
}

bool SvgReader::straight(const State& state) {
    Point from, to;
    if (!length("x1", state.width, 0.0, from.x) || !length("y1", state.height, 0.0, from.y) ||
        !length("x2", state.width, 0.0, to.x) || !length("y2", state.height, 0.0, to.y)) {
        return false;
    }
    pen_.move_to(state.place(from));
    pen_.line_to(state.place(to));
    pen_.finish();
    return true;
}

bool SvgReader::points(const State& state, bool closed) {
    std::vector<Point> list;
    if (const Word why = read_points(xml_.attribute("points"), list); why != Word{}) {
        if (list.size() < 2) {
            return refuse(why);
        }
        note(Found::cut_short, state);
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
        i == 0 ? pen_.move_to(state.place(list[i])) : pen_.line_to(state.place(list[i]));
    }
    if (closed && list.size() > 1) {
        pen_.close();
    } else {
        pen_.finish();
    }
    return true;
}

bool SvgReader::round(std::string_view name, const State& state) {
    const double diagonal = std::hypot(state.width, state.height) / std::numbers::sqrt2;
    Point centre;
    double rx = 0.0, ry = 0.0;
    if (!length("cx", state.width, 0.0, centre.x) || !length("cy", state.height, 0.0, centre.y)) {
        return false;
    }
    if (name == "circle") {
        if (!length("r", diagonal, 0.0, rx)) {
            return false;
        }
        ry = rx;
    } else if (!length("rx", state.width, -1.0, rx) || !length("ry", state.height, rx, ry)) {
        return false;
    } else if (rx == -1.0) { // not given: as the other
        rx = ry;
    }
    if (rx < 0.0 || ry < 0.0) {
        return refuse(words::drawing_fault::radius);
    }
    if (!(rx > 0.0 && ry > 0.0)) {
        return nothing(state);
    }
    pen_.circle(state.place(centre), state.place.direction({rx, 0}), state.place.direction({0, ry}));
    return true;
}

bool SvgReader::rect(const State& state) {
    Box b;
    double rx = 0.0, ry = 0.0;
    if (!length("x", state.width, 0.0, b.x) || !length("y", state.height, 0.0, b.y) ||
        !length("width", state.width, 0.0, b.width) || !length("height", state.height, 0.0, b.height) ||
        !length("rx", state.width, -1.0, rx) || !length("ry", state.height, rx, ry)) {
        return false;
    }
    if (b.width < 0.0 || b.height < 0.0) {
        return refuse(words::drawing_fault::rect);
    }
    if (!(b.width > 0.0 && b.height > 0.0)) {
        return nothing(state);
    }
    rx = std::min(rx < 0.0 ? std::max(ry, 0.0) : rx, b.width / 2);
    ry = std::min(std::max(ry, 0.0), b.height / 2);
    const bool rounded = rx > 0.0 && ry > 0.0;
    rx = rounded ? rx : 0.0;
    ry = rounded ? ry : 0.0;
    const double right = b.x + b.width, low = b.y + b.height;
    const Point u = state.place.direction({rx, 0}), v = state.place.direction({0, ry});
    // Once round, from behind the first corner: a side, then the corner at its end.
    const struct {
        Point side_end, corner, corner_end;
    } sides[] = {{{right - rx, b.y}, {right - rx, b.y + ry}, {right, b.y + ry}},
                 {{right, low - ry}, {right - rx, low - ry}, {right - rx, low}},
                 {{b.x + rx, low}, {b.x + rx, low - ry}, {b.x, low - ry}},
                 {{b.x, b.y + ry}, {b.x + rx, b.y + ry}, {b.x + rx, b.y}}};
    Point at{b.x + rx, b.y};
    double angle = -quarter;
    pen_.move_to(state.place(at));
    for (const auto& side : sides) {
        if (!(side.side_end == at)) {
            pen_.line_to(state.place(side.side_end));
        }
        if (rounded) {
            const Point end = state.place(side.corner_end);
            pen_.conic_to(state.place(side.corner), u, v, angle, quarter, &end);
        }
        at = side.corner_end;
        angle += quarter;
    }
    pen_.close();
    return true;
}

} // namespace torchside::drawing
