// What must hold of every drawing that is read, whatever the bytes. Shared by the readers' fuzz targets.
#pragma once

#include <cmath>
#include <cstdlib>
#include <string_view>

#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "tests/core/said.hpp"

namespace torchside::fuzz {

inline void must(bool good) {
    if (!good) {
        std::abort();
    }
}

inline void read(std::string_view text) {
    const auto read = drawing::read_drawing(text, {});
    if (!read) {
        const std::string said = test::said(read.fault().text);
        must(read.fault().field == "drawing" &&
             (said.find(" Use ") != std::string::npos || said.find(" Read ") != std::string::npos));
        must(said.find('\n') == std::string::npos);
        return;
    }
    const drawing::Drawing& drawing = read.value();
    must(!drawing.outline.contours.empty() && drawing.counts.pieces <= drawing::most_drawing_pieces);
    for (const part::Contour& c : drawing.outline.contours) {
        must(c.points.size() >= 2);
        const double area = part::area_mm2(c);
        must(c.role == part::Role::open || (area > 0.0) == (c.role == part::Role::outer));
        for (const part::Vertex& v : c.points) {
            must(std::abs(v.at.x) <= 1.1e6 && std::abs(v.at.y) <= 1.1e6 && std::abs(v.bulge) <= 1.0001);
        }
    }
    for (const part::Problem& p : drawing.problems) {
        must(*p.code != '\0' && p.title != Word{} && std::isfinite(p.size_mm));
    }
}

} // namespace torchside::fuzz
