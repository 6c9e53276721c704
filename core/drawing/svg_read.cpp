#include "core/drawing/svg_read.hpp"

#include "core/drawing/refused.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::drawing {

namespace {

constexpr std::size_t most_elements = 1'000'000; // of what is used again and again
constexpr std::size_t between_news = 256;        // elements
constexpr double px_mm = 25.4 / 96;

using Event = SvgXml::Event;

bool among(std::string_view name, std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

} // namespace

bool SvgReader::refuse(const Text& what) {
    if (fault_.text.empty()) {
        fault_ = refused(at_line(what, xml_.line()));
    }
    return false;
}

bool SvgReader::index() {
    bool any = false;
    while (true) {
        const Event event = xml_.next();
        if (event == Event::fault) {
            return refuse(words::drawing_fault::NotWhole{.why = xml_.fault()});
        }
        if (event == Event::end) {
            break;
        }
        if (event == Event::open) {
            if (xml_.depth() == 1 && (any || xml_.name() != "svg")) {
                return refuse(words::drawing_fault::not_svg);
            }
            any = true;
            if (xml_.name() == "style" && moves_or_hides(xml_.content())) {
                report(sketch_.problems, Found::style_transform, {});
            }
            if (const std::string_view id = xml_.attribute("id"); !id.empty()) {
                ids_.add(id, static_cast<std::uint32_t>(xml_.offset()));
            }
        }
    }
    if (!any) {
        return refuse(words::drawing_fault::no_svg);
    }
    ids_.sort();
    return true;
}

bool SvgReader::read() {
    if (!index()) {
        return false;
    }
    xml_.go_to(0);
    State state;
    if (xml_.next() != Event::open) {
        return refuse(words::drawing_fault::no_svg_here);
    }
    prefix_ = xml_.prefix();
    return root(state) && tree(state, 0, nullptr);
}

// Its size on paper says what a user unit is.
bool SvgReader::root(State& state) {
    SvgLength width, height;
    double box[4] = {0, 0, 0, 0};
    const std::string_view typed[] = {xml_.attribute("width"), xml_.attribute("height")};
    const std::string_view view_box = xml_.attribute("viewBox");
    Word why = typed[0].empty() || alike(typed[0], "auto") ? Word{} : read_length(typed[0], 0.0, width);
    if (why == Word{} && !typed[1].empty() && !alike(typed[1], "auto")) {
        why = read_length(typed[1], 0.0, height);
    }
    if (why == Word{} && !view_box.empty()) {
        why = read_view_box(view_box, box);
    }
    if (why != Word{}) {
        return refuse(why);
    }
    const SvgLength& first = width.px > 0.0 ? width : height;
    const bool on_paper = first.px > 0.0 && first.unit != LengthUnit::none && first.unit != LengthUnit::px;
    const bool own_units = on_paper && !view_box.empty();
    sketch_.unit = !own_units                       ? DrawingUnit::px
                   : first.unit == LengthUnit::mm   ? DrawingUnit::mm
                   : first.unit == LengthUnit::cm   ? DrawingUnit::cm
                   : first.unit == LengthUnit::inch ? DrawingUnit::inch
                                                    : DrawingUnit::px;
    sketch_.unit_known = on_paper || settings_.unit.has_value();
    double scale = px_mm;
    if (settings_.unit) {
        sketch_.unit = *settings_.unit;
        scale = unit_mm(*settings_.unit);
    }
    state.place = {scale, 0, 0, -scale, 0, 0}; // SVG's y runs down
    state.width = view_box.empty() ? width.px : box[2];
    state.height = view_box.empty() ? height.px : box[3];
    if (settings_.unit || view_box.empty() || !(first.px > 0.0)) {
        return true;
    }
    // One of the two may be missing: then it follows from the other.
    const double w = width.px > 0.0 ? width.px : height.px * box[2] / box[3];
    const double h = height.px > 0.0 ? height.px : width.px * box[3] / box[2];
    return view(state, {0, 0, w, h});
}

// viewBox and preserveAspectRatio of the element at hand, in a viewport.
bool SvgReader::view(State& state, const Box& to) {
    const std::string_view view_box = xml_.attribute("viewBox");
    double box[4] = {0, 0, 0, 0};
    state.place = state.place * Affine{1, 0, 0, 1, to.x, to.y};
    state.width = to.width;
    state.height = to.height;
    if (view_box.empty()) {
        return true;
    }
    if (const Word why = read_view_box(view_box, box); why != Word{}) {
        return refuse(why);
    }
    if (!(to.width > 0.0 && to.height > 0.0)) {
        return refuse(words::drawing_fault::no_size);
    }
    const std::string_view fit = xml_.attribute("preserveAspectRatio");
    double sx = to.width / box[2], sy = to.height / box[3];
    Point off{};
    if (fit.find("none") == std::string_view::npos) {
        sx = sy = fit.find("slice") != std::string_view::npos ? std::max(sx, sy) : std::min(sx, sy);
        const auto part = [&](std::string_view low, std::string_view high) {
            return fit.find(low) != std::string_view::npos ? 0.0 : fit.find(high) != std::string_view::npos ? 1.0 : 0.5;
        };
        off = {(to.width - sx * box[2]) * part("xMin", "xMax"), (to.height - sy * box[3]) * part("YMin", "YMax")};
    }
    state.place = state.place * Affine{sx, 0, 0, sy, off.x - sx * box[0], off.y - sy * box[1]};
    state.width = box[2];
    state.height = box[3];
    return true;
}

bool SvgReader::nested_view(State& state, const Box* size) {
    Box box{0, 0, state.width, state.height};
    if (!length("x", state.width, 0.0, box.x) || !length("y", state.height, 0.0, box.y) ||
        !length("width", state.width, state.width, box.width) ||
        !length("height", state.height, state.height, box.height)) {
        return false;
    }
    if (size) { // from the <use> that asks for it
        box.width = size->width > 0.0 ? size->width : box.width;
        box.height = size->height > 0.0 ? size->height : box.height;
    }
    return view(state, box);
}

bool SvgReader::pass_over() {
    const std::size_t depth = xml_.depth();
    while (true) {
        const Event event = xml_.next();
        if (event == Event::close && xml_.depth() == depth) {
            return true;
        }
        if (event != Event::open && event != Event::close) {
            return refuse(words::drawing_fault::ends_early);
        }
    }
}

bool SvgReader::tree(const State& outside, int uses, const Box* size) {
    const std::size_t base = xml_.depth();
    std::vector<State> open{outside};
    while (true) { // the element at hand has just been opened
        State state = open.back();
        bool inside = false;
        if (!element(state, uses, open.size() == 1 ? size : nullptr, inside)) {
            return false;
        }
        if (pen_.fault() != Word{}) {
            return refuse(words::drawing_fault::HasUndrawn{.why = pen_.fault()});
        }
        if (inside) {
            open.push_back(state);
        } else if (!pass_over()) {
            return false;
        }
        if (!inside && xml_.depth() == base) {
            return true;
        }
        Event event = xml_.next();
        while (event == Event::close) {
            open.pop_back();
            if (xml_.depth() == base) {
                return true;
            }
            event = xml_.next();
        }
        if (event != Event::open) {
            return refuse(words::drawing_fault::ends_early);
        }
    }
}

bool SvgReader::common(State& state, bool& shown) {
    const std::string_view style = xml_.attribute("style");
    const auto property = [&](std::string_view name) {
        const std::string_view from_style = style_value(style, name);
        return without_blanks(from_style.empty() ? xml_.attribute(name) : from_style);
    };
    shown = property("display") != "none";
    if (const std::string_view visible = property("visibility"); !visible.empty() && visible != "inherit") {
        state.visible = visible == "visible";
    }
    if (!style_value(style, "transform").empty()) {
        note(Found::style_transform, state);
    }
    if (const std::string_view typed = xml_.attribute("transform"); !typed.empty()) {
        if (!property("transform-origin").empty()) {
            note(Found::style_transform, state);
        }
        Affine own;
        if (const Word why = read_transform(typed, own); why != Word{}) {
            return refuse(why);
        }
        state.place = state.place * own;
    }
    return true;
}

// Draws the element at hand; `inside`: its children are to be looked at.
bool SvgReader::element(State& state, int uses, const Box* size, bool& inside) {
    const std::string_view name = xml_.name();
    if (uses == 0) {
        top_ = xml_.offset();
    }
    if (++elements_ % between_news == 0 &&
        !settings_.progress.go_on(share_of_reading * static_cast<double>(top_) / static_cast<double>(size_))) {
        fault_ = refused(words::drawing_fault::stopped);
        return false;
    }
    if (uses > 0 && ++work_ > most_elements) {
        return refuse(words::drawing_fault::uses_too_much);
    }
    const bool first_used = size != nullptr;
    if (xml_.prefix() != prefix_ || (name == "symbol" && !first_used) ||
        !among(name, {"svg", "g", "a", "switch", "symbol", "use", "path", "rect", "circle", "ellipse", "line",
                      "polyline", "polygon", "text", "image", "foreignObject"})) {
        return true; // what is not drawn by itself: defs, gradients, styles, notes of the drawing program
    }
    bool shown = true;
    if (!common(state, shown)) {
        return false;
    }
    if (!shown) {
        ++sketch_.counts.hidden;
        note(Found::hidden, state);
        return true;
    }
    if (among(name, {"svg", "symbol"})) {
        inside = true;
        return (xml_.depth() == 1 && uses == 0) || nested_view(state, size);
    }
    if (among(name, {"g", "a", "switch"})) {
        inside = true;
        return true;
    }
    if (name == "use") {
        return use(state, uses);
    }
    return shape(name, state);
}

} // namespace torchside::drawing
