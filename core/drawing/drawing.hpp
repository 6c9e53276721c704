// Reading a drawing: the text of a DXF or SVG file -> an outline in millimetres, and all that is wrong with it.
//
// What       The kind is found from the content. Pieces are read, their ends joined (join.hpp), pieces that lie twice
//            or are too short taken out, contours sorted into outer and inner and looked at for crossings (nest.hpp).
//            Nothing is dropped without a Problem. Arcs of circles stay true arcs wherever the drawing's transforms
//            leave them circles; ellipses, splines and other curves become arcs that follow them.
// Formula    arc: bulge = tan(sweep / 4). Another curve: arcs through begin, middle and end of its parts, halved until
//            the curve at 1/4 and 3/4 of each is within settings.flatten_mm of its arc. Spline: de Boor's recurrence
//            on its own knots and weights; one with fit points alone is the natural cubic (clamped where tangents are
//            given) over chord length.
// Source     DXF Reference, group codes of R12 to 2018 (from memory); SVG 1.1 (W3C, 2011) chapters 7 to 9, its
//            appendix F.6 for elliptical arcs; CSS: 96 px = 1 in.
// Range      20 MB, 200 000 pieces after flattening, coordinates within +-1e6 mm, ASCII or UTF-8. DXF: LINE, ARC,
//            CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE, SPLINE, INSERT (nested, scaled, turned, in rows and columns) in
//            the plane of the drawing; what is switched off, frozen or on paper is left out. SVG: path, rect, circle,
//            ellipse, line, polyline, polygon, g, svg, use, transform attributes, viewBox, units. Style sheets are not
//            read, nothing outside the file is ever opened, no entity is expanded.
// Edges      A file that is broken gives a Fault: field "drawing", the line, what is wrong and what is accepted. One
//            that can be read but not cut as it is gives Problems. Own small readers rather than libraries: the page
//            has neither exceptions nor room for a general XML or CAD library, and whoever opens a stranger's file
//            wants few lines to trust.
// Example    A CIRCLE of radius 0.5 with $INSUNITS 1 is one outer contour of two half arcs, diameter 25.4 mm.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/drawing/part_words.hpp"
#include "core/words/outcome.hpp"

namespace torchside::drawing {

constexpr std::size_t most_drawing_bytes = 20'000'000;
constexpr std::size_t most_drawing_pieces = 200'000;

/// What one unit of the drawing is; px is SVG's, 1/96 in.
enum class DrawingUnit : std::uint8_t { mm, cm, dm, metre, inch, foot, yard, mil, micron, px };

[[nodiscard]] const char* unit_name(DrawingUnit unit); // "mm", "inch", ...
[[nodiscard]] double unit_mm(DrawingUnit unit);

/// Told how much is done, 0 to 1, every few thousand pieces; false stops the reading.
struct Progress {
    bool (*tell)(void* context, double share) = nullptr;
    void* context = nullptr;
    [[nodiscard]] bool go_on(double share) const { return tell == nullptr || tell(context, share); }
};

struct ReadSettings {
    std::optional<DrawingUnit> unit{}; // instead of what the drawing says
    double join_mm = 0.05;             // ends this near are one point; 0.001 to 5
    double flatten_mm = 0.01;          // curves are followed this closely; 0.001 to 1
    Progress progress{};
};

struct DrawingCounts {
    std::size_t pieces = 0;      // straight pieces and arcs as read
    std::size_t gaps_joined = 0; // ends that were not quite on each other
    double largest_gap_mm = 0.0; // of those joined
    std::size_t duplicates = 0;  // pieces that lay on another, taken out
    std::size_t short_pieces = 0;
    std::size_t not_read = 0; // texts, dimensions, hatches ...: nothing to cut
    std::size_t hidden = 0;   // switched off, frozen, on paper
};

/// Codes of the problems that reading finds; at most 100 of each are listed, `counts` has them all.
/// unit_unknown not_read hidden not_flat open_contour branch duplicate short_piece crossing overlap no_area unchecked
/// style_transform fit_points cut_short
struct Drawing {
    Outline outline{}; // outer anticlockwise, inner clockwise, then the open ones
    DrawingUnit unit = DrawingUnit::mm;
    bool unit_known = false; // false: `unit` is only the likeliest; ask
    std::vector<Problem> problems{};
    DrawingCounts counts{};
};

[[nodiscard]] Outcome<Drawing> read_drawing(std::string_view text, const ReadSettings& settings);

} // namespace torchside::drawing
