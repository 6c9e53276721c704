#include "core/part/nest_meet.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::part {

namespace {

constexpr double parallel_to = 1e-9; // sine of the angle
constexpr double flat_bulge = 1e-6;  // half a micrometre high on a metre: as good as straight, and no huge radius

bool straight(const Piece& p) {
    return std::abs(p.bulge) < flat_bulge;
}

// Centre and radius alone: arc_of() asks for angles too, which takes most of the time here.
struct Circle {
    Point centre{};
    double radius = 0.0;
};

Circle circle_of(const Piece& p) {
    const Point chord = p.to - p.from;
    const double b = p.bulge;
    return {0.5 * (p.from + p.to) + ((1.0 - b * b) / (4.0 * b)) * left_of(chord),
            norm(chord) * (1.0 + b * b) / (4.0 * std::abs(b))};
}

bool near(Point a, Point b) {
    return norm(a - b) <= meeting_mm;
}

void add(Meeting& m, Point p) {
    for (std::size_t i = 0; i < m.count; ++i) {
        if (near(m.at[i], p)) {
            return;
        }
    }
    if (m.count < m.at.size()) {
        m.at[m.count++] = p;
    }
}

// Whether a point of the piece's line or circle is on the piece itself.
bool within(const Piece& p, Point q) {
    if (near(p.from, q) || near(p.to, q)) {
        return true;
    }
    const Point chord = p.to - p.from;
    if (straight(p)) {
        const double along = dot(q - p.from, chord);
        return along >= 0.0 && along <= dot(chord, chord);
    }
    return (cross(chord, q - p.from) < 0.0) == (p.bulge > 0.0);
}

void add_if_on_both(Meeting& m, const Piece& a, const Piece& b, Point q) {
    if (within(a, q) && within(b, q)) {
        add(m, q);
    }
}

// Pieces of one line or one circle: what they share begins and ends at an end of one of them.
void along(Meeting& m, const Piece& a, const Piece& b) {
    const auto inside = [](const Piece& p, Point q) { return within(p, q) && !near(p.from, q) && !near(p.to, q); };
    for (const Point q : {a.from, a.to}) {
        m.overlap = m.overlap || inside(b, q);
        add_if_on_both(m, a, b, q);
    }
    for (const Point q : {b.from, b.to}) {
        m.overlap = m.overlap || inside(a, q);
        add_if_on_both(m, a, b, q);
    }
    const Point middle = point_at(a, 0.5);
    if (inside(b, middle)) { // the same piece
        m.overlap = true;
    }
    if (m.overlap) {
        m.at[0] = inside(b, middle) ? middle : m.at[0];
        m.count = 1;
    }
}

void line_line(Meeting& m, const Piece& a, const Piece& b) {
    const Point u = a.to - a.from, v = b.to - b.from, off = b.from - a.from;
    const double turn = cross(u, v), lengths = norm(u) * norm(v);
    if (std::abs(turn) > parallel_to * lengths) {
        add_if_on_both(m, a, b, a.from + (cross(off, v) / turn) * u);
    } else if (lengths > 0.0 && std::abs(cross(u, off)) <= meeting_mm * norm(u)) {
        along(m, a, b);
    }
}

void line_arc(Meeting& m, const Piece& line, const Piece& round) {
    const Circle arc = circle_of(round);
    const Point u = line.to - line.from;
    const double length = norm(u);
    if (!(length > 0.0)) {
        return;
    }
    const Point foot = line.from + (dot(arc.centre - line.from, u) / (length * length)) * u;
    const double height = norm(foot - arc.centre);
    if (height > arc.radius + meeting_mm) {
        return;
    }
    const double half = std::sqrt(std::max(0.0, arc.radius * arc.radius - height * height));
    for (const double side : {-1.0, 1.0}) {
        add_if_on_both(m, line, round, foot + (side * half / length) * u);
    }
}

void arc_arc(Meeting& m, const Piece& a, const Piece& b) {
    const Circle first = circle_of(a), second = circle_of(b);
    const Point between = second.centre - first.centre;
    const double d = norm(between);
    if (d <= meeting_mm && std::abs(first.radius - second.radius) <= meeting_mm) {
        along(m, a, b);
        return;
    }
    if (d > first.radius + second.radius + meeting_mm || d < std::abs(first.radius - second.radius) - meeting_mm ||
        !(d > 0.0)) {
        return;
    }
    const double x = (d * d + first.radius * first.radius - second.radius * second.radius) / (2 * d);
    const double y = std::sqrt(std::max(0.0, first.radius * first.radius - x * x));
    const Point on = first.centre + (x / d) * between;
    for (const double side : {-1.0, 1.0}) {
        add_if_on_both(m, a, b, on + (side * y / d) * left_of(between));
    }
}

} // namespace

Meeting meeting_of(const Piece& a, const Piece& b) {
    Meeting m;
    if (straight(a) && straight(b)) {
        line_line(m, a, b);
    } else if (straight(a) != straight(b)) {
        straight(a) ? line_arc(m, a, b) : line_arc(m, b, a);
    } else {
        arc_arc(m, a, b);
    }
    return m;
}

} // namespace torchside::part
