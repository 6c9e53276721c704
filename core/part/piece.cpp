#include "core/part/piece.hpp"

#include <algorithm>

namespace torchside::part {

Arc arc_of(const Piece& p) {
    const Point chord = p.to - p.from;
    const double b = p.bulge;
    Arc arc;
    arc.centre = 0.5 * (p.from + p.to) + ((1.0 - b * b) / (4.0 * b)) * left_of(chord);
    arc.radius = norm(chord) * (1.0 + b * b) / (4.0 * std::abs(b));
    arc.start = std::atan2(p.from.y - arc.centre.y, p.from.x - arc.centre.x);
    arc.sweep = 4.0 * std::atan(b);
    return arc;
}

double length_of(const Piece& p) {
    const double chord = norm(p.to - p.from);
    if (p.straight()) {
        return chord;
    }
    const double b = std::abs(p.bulge);
    return chord * (1.0 + b * b) * std::atan(b) / b;
}

// The chord turned by half of what is left of the sweep: no centre far away comes into it, so flat arcs stay exact.
Point point_at(const Piece& p, double share) {
    const Point chord = p.to - p.from;
    if (p.straight()) {
        return p.from + share * chord;
    }
    const double half = 2.0 * std::atan(p.bulge); // half the sweep
    const double turn = half * (share - 1.0);
    const double stretch = std::sin(half * share) / std::sin(half);
    const double c = std::cos(turn) * stretch;
    const double s = std::sin(turn) * stretch;
    if (std::abs(p.bulge) < 1e4) {
        return p.from + Point{c * chord.x - s * chord.y, s * chord.x + c * chord.y};
    }
    // Nearly a full circle: sin(half) is all rounding.
    const Arc arc = arc_of(p);
    const double angle = arc.start + share * arc.sweep;
    return arc.centre + arc.radius * Point{std::cos(angle), std::sin(angle)};
}

Point direction_at(const Piece& p, double share) {
    const Point chord = p.to - p.from;
    const double length = norm(chord);
    if (!(length > 0.0)) {
        return {};
    }
    if (p.straight()) {
        return (1.0 / length) * chord;
    }
    const double turn = 2.0 * std::atan(p.bulge) * (2.0 * share - 1.0);
    const double c = std::cos(turn) / length;
    const double s = std::sin(turn) / length;
    return {c * chord.x - s * chord.y, s * chord.x + c * chord.y};
}

double bulge_of_share(double bulge, double share) {
    return share == 1.0 ? bulge : std::tan(share * std::atan(bulge));
}

Point nearest_on(const Piece& p, Point to) {
    const Point chord = p.to - p.from;
    if (p.straight() || chord == Point{}) {
        const double square = dot(chord, chord);
        if (!(square > 0.0)) {
            return p.from;
        }
        return p.from + std::clamp(dot(to - p.from, chord) / square, 0.0, 1.0) * chord;
    }
    const double b = p.bulge;
    const double to_centre = 0.25 * (1.0 / b - b); // from the chord's middle, in chords
    const Point centre = 0.5 * (p.from + p.to) + to_centre * left_of(chord);
    const Point out = to - centre;
    const double away = norm(out);
    if (!(away > 0.0)) {
        return p.from;
    }
    // Radially: is the foot on the arc? It is when it lies on the arc's side of the chord.
    const double radius = norm(chord) * 0.25 * (1.0 / std::abs(b) + std::abs(b));
    const Point foot = centre + (radius / away) * out;
    if ((cross(chord, foot - p.from) <= 0.0) == (b > 0.0)) {
        return foot;
    }
    const Point to_from = to - p.from;
    const Point to_to = to - p.to;
    return dot(to_from, to_from) <= dot(to_to, to_to) ? p.from : p.to;
}

Contour reversed(const Contour& c) {
    Contour back;
    back.role = c.role;
    const std::size_t n = c.points.size();
    back.points.reserve(n);
    for (std::size_t i = n; i-- > 0;) { // the piece into vertex i, run back, starts at vertex i
        back.points.push_back({c.points[i].at, i > 0                  ? -c.points[i - 1].bulge
                                               : c.role == Role::open ? 0.0
                                                                      : -c.points[n - 1].bulge});
    }
    return back;
}

} // namespace torchside::part
