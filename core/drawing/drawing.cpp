#include "core/drawing/drawing.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "core/drawing/dxf_read.hpp"
#include "core/drawing/join.hpp"
#include "core/drawing/nest.hpp"
#include "core/drawing/refused.hpp"
#include "core/drawing/svg_read.hpp"

namespace torchside::drawing {

namespace {

constexpr struct {
    const char* name;
    double in_mm;
} units[] = {{"mm", 1.0},   {"cm", 10.0},  {"dm", 100.0},   {"m", 1000.0}, {"inch", 25.4},
             {"ft", 304.8}, {"yd", 914.4}, {"mil", 0.0254}, {"um", 0.001}, {"px", 25.4 / 96}};

/// Of what is no drawing at all.
Fault no_drawing(Text why) {
    why += words::drawing_fault::use_kinds;
    return refused(why);
}

// What the text begins with, past a byte order mark and blanks.
std::string_view from_first_sign(std::string_view text) {
    if (text.starts_with("\xef\xbb\xbf")) {
        text.remove_prefix(3);
    }
    return text.substr(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
}

std::optional<Fault> check(std::string_view text, const ReadSettings& s) {
    if (!(s.join_mm >= 0.001 && s.join_mm <= 5.0)) {
        return refused(words::drawing_fault::join_range, "join_mm");
    }
    if (!(s.flatten_mm >= 0.001 && s.flatten_mm <= 1.0)) {
        return refused(words::drawing_fault::flatten_range, "flatten_mm");
    }
    if (text.size() > most_drawing_bytes) {
        return refused(words::drawing_fault::too_large);
    }
    if (from_first_sign(text).empty()) {
        return no_drawing(words::drawing_fault::empty);
    }
    if (text.find('\0') != std::string_view::npos || text.starts_with("\x1f\x8b") || text.starts_with("PK")) {
        return no_drawing(words::drawing_fault::packed);
    }
    return {};
}

} // namespace

const char* unit_name(DrawingUnit unit) {
    return units[static_cast<std::size_t>(unit)].name;
}

double unit_mm(DrawingUnit unit) {
    return units[static_cast<std::size_t>(unit)].in_mm;
}

Outcome<Drawing> read_drawing(std::string_view text, const ReadSettings& settings) {
    if (const auto fault = check(text, settings)) {
        return *fault;
    }
    const std::string_view body = from_first_sign(text);
    Sketch sketch;
    if (body.front() == '<') {
        SvgReader reader(text, settings, sketch);
        if (!reader.read()) {
            return reader.fault();
        }
    } else if (body.front() >= '0' && body.front() <= '9') {
        DxfReader reader(text.substr(text.starts_with("\xef\xbb\xbf") ? 3 : 0), settings, sketch);
        if (!reader.read()) {
            return reader.fault();
        }
    } else {
        return no_drawing(words::drawing_fault::unknown);
    }
    Drawing out;
    if (const Word why = join(sketch, settings.join_mm, settings.progress, out.outline); why != Word{}) {
        return refused(why);
    }
    if (out.outline.contours.empty()) {
        return refused(words::drawing_fault::no_lines);
    }
    if (const Word why = nest(out.outline); why != Word{}) {
        return refused(why);
    }
    out.unit_known = sketch.unit_known;
    out.unit = sketch.unit;
    if (!sketch.unit_known) {
        report(sketch.problems, Found::unit_unknown, {});
    }
    if (!find_crossings(out.outline, settings.join_mm, settings.progress, sketch.problems) ||
        !settings.progress.go_on(1.0)) {
        return refused(words::drawing_fault::stopped);
    }
    out.problems = std::move(sketch.problems);
    out.counts = sketch.counts;
    return out;
}

} // namespace torchside::drawing
