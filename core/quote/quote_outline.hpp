// The part's outline as a customer sees it: circles, and polygons that keep within a stated distance of the part.
//
// What       simplified() makes arcs straight and drops points (Ramer 1972, Douglas and Peucker 1973); pack_outline()
//            is the form in a link: whole steps of a grid, differences as variable-length integers; a circle's
//            diameter in whole micrometres, for it is read as a size.
// Range      parts up to 20 m; at most most_points points, a circle counting as two. What does not fit at the wanted
//            tolerance gets twice the tolerance, and so on. Of more than 160 contours the largest are kept, and what a
//            wide tolerance swallows goes too: `partly` says so.
// Edges      an open contour (a scribed line) stays open. Nothing, or an outline without extent: an empty one.
// Example    a 120 mm square plate with four holes is four circles and one polygon of four points, 32 bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::document {

struct QuoteContour {
    bool open = false;
    double circle_mm = 0.0;            // diameter about the one point; 0: a polygon
    std::vector<part::Point> points{}; // mm, the box's lower left corner at 0,0
};

struct QuoteOutline {
    int step_um = 20;    // of the grid the points lie on
    bool partly = false; // small contours were left out
    std::vector<QuoteContour> contours{};
};

inline constexpr std::size_t most_points = 500;

struct Simplified {
    QuoteOutline outline{};
    Length tolerance{}; // the distance that is kept
    Length length{};    // of the box of the part itself, along x and y
    Length width{};
};

/// Wanted tolerance: 0.05 mm, or 1/2000 of the longer side when that is more.
[[nodiscard]] Simplified simplified(const part::Outline& outline);

[[nodiscard]] std::string pack_outline(const QuoteOutline& outline);
/// False when the bytes are not an outline in range.
[[nodiscard]] bool unpack_outline(std::string_view bytes, QuoteOutline& out);

} // namespace torchside::document
