// One piece of a contour, straight or arc, and what is asked of it.
//
// Formula    with the chord c from `from` to `to` and the bulge b = tan(sweep / 4): radius c (1 + b^2) / (4 |b|);
//            centre at c (1 - b^2) / (4 b) from the chord's middle, to the left of it for b > 0; length radius |sweep|
// Source     geometry
// Range      any finite coordinates; |b| up to 1e6. Below |b| = 1e-9 a piece counts as straight: the sagitta b c / 2 of
//            a 10 m chord is then less than 5 nm.
// Edges      from = to: a piece of length 0 whatever its bulge; a full circle takes two pieces.
// Example    from (0,0) to (2,0), bulge 1: half a circle about (1,0), radius 1, through (1,-1); length pi.
#pragma once

#include <cmath>
#include <cstddef>

#include "core/part/outline.hpp"

namespace torchside::part {

struct Piece {
    Point from{};
    Point to{};
    double bulge = 0.0;
    [[nodiscard]] bool straight() const { return std::abs(bulge) < 1e-9; }
};

struct Arc {
    Point centre{};
    double radius = 0.0;
    double start = 0.0; // angle of `from` seen from the centre, radians
    double sweep = 0.0; // radians, positive anticlockwise
};

[[nodiscard]] inline Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
[[nodiscard]] inline Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
[[nodiscard]] inline Point operator*(double k, Point a) {
    return {k * a.x, k * a.y};
}
[[nodiscard]] inline double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}
[[nodiscard]] inline double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}
[[nodiscard]] inline double norm(Point a) {
    return std::sqrt(dot(a, a));
}
/// A quarter turn anticlockwise.
[[nodiscard]] inline Point left_of(Point a) {
    return {-a.y, a.x};
}

/// How many pieces a contour has: as many as vertices, one less when open.
[[nodiscard]] inline std::size_t piece_count(const Contour& c) {
    return c.role == Role::open && !c.points.empty() ? c.points.size() - 1 : c.points.size();
}
[[nodiscard]] inline Piece piece_of(const Contour& c, std::size_t i) {
    const std::size_t next = i + 1 < c.points.size() ? i + 1 : 0;
    return {c.points[i].at, c.points[next].at, c.points[i].bulge};
}

/// Only of a piece that is not straight and has a length.
[[nodiscard]] Arc arc_of(const Piece& p);
[[nodiscard]] double length_of(const Piece& p);
/// Where one is after `share` (0..1) of the piece, and which way one goes there (length 1; 0,0 for a piece without
/// length).
[[nodiscard]] Point point_at(const Piece& p, double share);
[[nodiscard]] Point direction_at(const Piece& p, double share);
/// Bulge of the part of a piece that is `share` of its sweep.
[[nodiscard]] double bulge_of_share(double bulge, double share);
/// The point of the piece that is nearest to `to`.
[[nodiscard]] Point nearest_on(const Piece& p, Point to);
/// The same contour run the other way.
[[nodiscard]] Contour reversed(const Contour& c);

} // namespace torchside::part
