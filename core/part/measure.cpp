#include "core/part/measure.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/part/piece.hpp"
#include "core/stock/properties.hpp"

namespace torchside::part {
namespace {

using std::numbers::pi;

// x - sin x without loss for small x.
double less_sine(double x) {
    if (std::abs(x) > 0.5) {
        return x - std::sin(x);
    }
    const double s = x * x;
    return x * s / 6.0 * (1.0 - s / 20.0 * (1.0 - s / 42.0 * (1.0 - s / 72.0 * (1.0 - s / 110.0))));
}

// Area between an arc and its chord; positive on the chord's right (bulge > 0).
double segment_area(const Piece& p) {
    if (p.straight()) {
        return 0.0;
    }
    const double chord = norm(p.to - p.from);
    const double b = p.bulge;
    const double r = chord * (1.0 + b * b) / (4.0 * b);
    return 0.5 * r * r * less_sine(4.0 * std::atan(b));
}

// First moment of that segment about the chord's middle, along the chord's right-hand normal.
double segment_moment(const Piece& p, double area) {
    const double chord = norm(p.to - p.from);
    const double b = p.bulge;
    if (std::abs(b) < 1e-3) {
        return area * 0.2 * b * chord; // a flat segment's centroid is at 2/5 of its height b c / 2
    }
    return chord * chord * chord / 12.0 - area * chord * (1.0 - b * b) / (4.0 * b);
}

struct Moments {
    double area = 0.0;
    Point first{}; // about the origin given
};

Moments moments_of(const Contour& c, Point origin) {
    Moments m;
    if (c.role == Role::open) {
        return m;
    }
    for (std::size_t i = 0; i < c.points.size(); ++i) {
        const Piece p = piece_of(c, i);
        const Point a = p.from - origin;
        const Point b = p.to - origin;
        const double triangle = 0.5 * cross(a, b);
        m.area += triangle;
        m.first = m.first + (triangle / 3.0) * (a + b);
        const double chord = norm(b - a);
        if (p.straight() || !(chord > 0.0)) {
            continue;
        }
        const double segment = segment_area(p);
        m.area += segment;
        m.first = m.first + (0.5 * segment) * (a + b) + (-segment_moment(p, segment) / chord) * left_of(b - a);
    }
    return m;
}

// Winding of the ray from p to the right over a straight piece: +1 when it rises over the ray.
int ray_straight(Point a, Point b, Point p) {
    if ((a.y <= p.y) == (b.y <= p.y)) {
        return 0;
    }
    const double side = cross(b - a, p - a);
    if (a.y <= p.y) {
        return side > 0.0 ? 1 : 0;
    }
    return side < 0.0 ? -1 : 0;
}

// The same over an arc, in pieces that only rise or only fall, so that heights alone say what crosses.
int ray_arc(const Piece& piece, Point p) {
    const Arc arc = arc_of(piece);
    const double end = arc.start + arc.sweep;
    const double step = arc.sweep > 0.0 ? 1.0 : -1.0;
    double from = piece.from.y;
    double at = arc.start;
    int winding = 0;
    // The next upright direction pi/2 + k pi in the way of travel.
    double k = step > 0.0 ? std::floor((at - 0.5 * pi) / pi) + 1.0 : std::ceil((at - 0.5 * pi) / pi) - 1.0;
    bool last = false;
    for (int n = 0; n < 4 && !last; ++n, k += step) {
        const double stop = 0.5 * pi + k * pi;
        last = step > 0.0 ? stop >= end : stop <= end;
        const bool top = std::fmod(std::abs(k), 2.0) < 0.5;
        const double to = last ? piece.to.y : arc.centre.y + (top ? arc.radius : -arc.radius);
        if ((from <= p.y) != (to <= p.y)) {
            const double h = p.y - arc.centre.y;
            const double reach = std::sqrt(std::max(0.0, arc.radius * arc.radius - h * h));
            const bool right = std::cos(0.5 * (at + (last ? end : stop))) > 0.0;
            if (arc.centre.x + (right ? reach : -reach) > p.x) {
                winding += from <= p.y ? 1 : -1;
            }
        }
        from = to;
        at = stop;
    }
    return winding;
}

template <class Measure>
double sum_of(const Outline& o, Measure measure) {
    double sum = 0.0;
    for (const Contour& c : o.contours) {
        sum += measure(c);
    }
    return sum;
}

double part_of_area(const Contour& c) {
    return c.role == Role::inner ? -std::abs(area_mm2(c)) : std::abs(area_mm2(c));
}

} // namespace

void Box::add(Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
}

void Box::add(const Box& box) {
    if (box.empty()) {
        return;
    }
    add(box.low);
    add(box.high);
}

double length_mm(const Contour& c) {
    double sum = 0.0;
    for (std::size_t i = 0; i < piece_count(c); ++i) {
        sum += length_of(piece_of(c, i));
    }
    return sum;
}

double area_mm2(const Contour& c) {
    return c.points.empty() ? 0.0 : moments_of(c, c.points.front().at).area;
}

Box box_of(const Contour& c) {
    Box box;
    for (std::size_t i = 0; i < c.points.size(); ++i) {
        box.add(c.points[i].at);
        if (i >= piece_count(c)) {
            continue;
        }
        const Piece p = piece_of(c, i);
        if (p.straight() || p.from == p.to) {
            continue;
        }
        const Arc arc = arc_of(p);
        for (const Point out : {Point{1, 0}, Point{0, 1}, Point{-1, 0}, Point{0, -1}}) {
            const Point extreme = arc.centre + arc.radius * out;
            if ((cross(p.to - p.from, extreme - p.from) < 0.0) == (p.bulge > 0.0)) {
                box.add(extreme);
            }
        }
    }
    return box;
}

Point centroid_of(const Contour& c) {
    if (c.points.empty()) {
        return {};
    }
    const Box box = box_of(c);
    const Point origin = 0.5 * (box.low + box.high);
    const Moments m = moments_of(c, origin);
    return m.area != 0.0 ? origin + (1.0 / m.area) * m.first : origin;
}

int winding_of(const Piece& piece, Point p) {
    return piece.straight() || piece.from == piece.to ? ray_straight(piece.from, piece.to, p) : ray_arc(piece, p);
}

bool holds(const Contour& c, Point p) {
    if (c.role == Role::open) {
        return false;
    }
    int winding = 0;
    for (std::size_t i = 0; i < c.points.size(); ++i) {
        winding += winding_of(piece_of(c, i), p);
    }
    return winding != 0;
}

double equal_diameter_mm(const Contour& c) {
    return std::sqrt(4.0 * std::abs(area_mm2(c)) / pi);
}

double length_mm(const Outline& o) {
    return sum_of(o, [](const Contour& c) { return length_mm(c); });
}

double area_mm2(const Outline& o) {
    return sum_of(o, part_of_area);
}

Box box_of(const Outline& o) {
    Box box;
    for (const Contour& c : o.contours) {
        box.add(box_of(c));
    }
    return box;
}

Point centroid_of(const Outline& o) {
    const Box box = box_of(o);
    double area = 0.0;
    Point first{};
    for (const Contour& c : o.contours) {
        const double a = part_of_area(c);
        area += a;
        first = first + a * centroid_of(c);
    }
    if (area > 0.0) {
        return (1.0 / area) * first;
    }
    return box.empty() ? Point{} : 0.5 * (box.low + box.high);
}

Mass mass_of(Area area, Length thickness, Metal metal) {
    return Mass{area.in(m2)*thickness.in(metre)*stock::properties(metal).density_kg_m3, kg};
}

} // namespace torchside::part
