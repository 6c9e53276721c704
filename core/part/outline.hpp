// The geometry of a part: contours of straight pieces and true arcs, in millimetres on the plate's plane.
//
// A contour is a row of vertices. The piece from one vertex to the next is straight when the bulge of the first is 0,
// and otherwise an arc: bulge = tan(sweep / 4), positive anticlockwise, as in the DXF reference (group code 42). The
// last piece of a closed contour runs back to the first vertex. Coordinates are plain doubles in mm, finite, within
// +-1e6.
#pragma once

#include <vector>

#include "core/words/message.hpp"

namespace torchside::part {

struct Point {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(const Point&, const Point&) = default;
};

struct Vertex {
    Point at{};
    double bulge = 0.0; // of the piece that starts here
    friend bool operator==(const Vertex&, const Vertex&) = default;
};

/// Outer contours run anticlockwise, inner ones clockwise; an open one has the direction it was drawn in.
enum class Role { outer, inner, open };

struct Contour {
    std::vector<Vertex> points{};
    Role role = Role::outer;
    friend bool operator==(const Contour&, const Contour&) = default;
};

struct Outline {
    std::vector<Contour> contours{};
    friend bool operator==(const Outline&, const Outline&) = default;
};

/// Something that is wrong with a drawing or cannot be cut as drawn, and where it is.
struct Problem {
    const char* code = ""; // a short stable word, e.g. "open_contour"
    Severity severity = Severity::caution;
    Word title{}, detail{}; // as in Message; the title is each kind's own
    Point at{};             // where to look
    double size_mm = 0.0;   // the gap, the length, the width that it is about; 0: none
};

[[nodiscard]] inline Message message_of(const Problem& problem) {
    return {problem.code, Topic::part, problem.severity, problem.title, problem.detail, {}, "job.part.shape"};
}

} // namespace torchside::part
