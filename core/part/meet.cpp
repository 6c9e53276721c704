#include "core/part/meet.hpp"

#include <algorithm>

namespace torchside::part {
namespace {

constexpr double near_mm = 1e-8;

struct Carrier {
    Point start{};
    Point along{}; // unit
    double curve = 0.0;
    double chord = 0.0;
    double sweep = 0.0;
};

Carrier carrier_of(const Piece& p) {
    Carrier c;
    c.start = p.from;
    c.along = direction_at(p, 0.0);
    c.chord = norm(p.to - p.from);
    if (!p.straight() && c.chord > 0.0) {
        c.curve = 4.0 * p.bulge / ((1.0 + p.bulge * p.bulge) * c.chord);
        c.sweep = 4.0 * std::atan(p.bulge);
    }
    return c;
}

// How far along its piece a point of the carrier lies; outside of 0..1 when it is not on the piece.
double share_of(const Carrier& c, const Piece& p, Point at) {
    const Point x = at - p.from;
    const Point y = at - p.to;
    if (dot(x, x) <= near_mm * near_mm)
        return 0.0;
    if (dot(y, y) <= near_mm * near_mm)
        return 1.0;
    if (c.sweep == 0.0)
        return dot(x, c.along) / c.chord;
    // The chord to a point turns half as fast as the arc.
    const double half = 0.5 * std::abs(c.sweep);
    const double ahead = dot(x, c.along);
    const double aside = c.sweep > 0.0 ? cross(c.along, x) : -cross(c.along, x);
    if (half > 0.25)
        return std::atan2(aside, ahead) / half;
    const double sine = norm(x) / c.chord * std::sin(half);
    return ahead > 0.0 && sine < 1.0 ? std::asin(sine) / half : 2.0;
}

void add(Crossings& m, const Piece& a, const Carrier& ca, const Piece& b, const Carrier& cb, Point at) {
    const double sa = share_of(ca, a, at);
    const double sb = share_of(cb, b, at);
    if (m.count == 4 || !(sa >= 0.0 && sa <= 1.0 && sb >= 0.0 && sb <= 1.0))
        return;
    m.found[m.count++] = {at, sa, sb};
}

bool lies_on(const Piece& p, Point at) {
    const Point off = nearest_on(p, at) - at;
    return dot(off, off) <= near_mm * near_mm;
}

// Ends that lie on the other piece: where the formula is weak, and all there is of pieces on one carrier.
void add_ends(Crossings& m, const Piece& a, const Carrier& ca, const Piece& b, const Carrier& cb) {
    for (const Point end : {a.from, a.to})
        if (lies_on(b, end))
            add(m, a, ca, b, cb, end);
    for (const Point end : {b.from, b.to})
        if (lies_on(a, end))
            add(m, a, ca, b, cb, end);
}

} // namespace

Crossings meet(const Piece& a, const Piece& b) {
    Carrier ca = carrier_of(a);
    Carrier cb = carrier_of(b);
    Crossings m;
    if (!(ca.chord > 0.0) || !(cb.chord > 0.0))
        return m;
    const bool swapped = std::abs(ca.curve) < std::abs(cb.curve);
    const Carrier& round = swapped ? cb : ca; // the more curved
    const Carrier& other = swapped ? ca : cb;
    // A line through both meeting points, about the start of `round`.
    const Point d = other.start - round.start;
    const Point n1 = left_of(round.along);
    const Point n2 = left_of(other.along);
    const double ratio = round.curve != 0.0 ? other.curve / round.curve : 0.0;
    const Point w = other.curve * d - ratio * n1 + n2;
    const double square = dot(w, w);
    const double reach = std::max(ca.chord, cb.chord);
    const double alike = std::abs(other.curve) * near_mm + 1e-12; // circles about one centre have no such line
    if (square > alike * alike) {
        const Point base = ((0.5 * other.curve * dot(d, d) + dot(n2, d)) / square) * w;
        const Point u = (1.0 / std::sqrt(square)) * left_of(w);
        const double half_b = round.curve * dot(base, u) - dot(n1, u);
        const double c = round.curve * dot(base, base) - 2.0 * dot(n1, base);
        double inside = half_b * half_b - round.curve * c;
        if (inside < 0.0 && -inside <= 2.0 * std::abs(round.curve) * near_mm)
            inside = 0.0; // touches
        // Parallel lines are left to their ends.
        if (inside >= 0.0 && (round.curve != 0.0 || std::abs(half_b) > 1e-11)) {
            const double q = -(half_b + std::copysign(std::sqrt(inside), half_b));
            const double far = 4.0 * reach + 4.0 * norm(d);
            double roots[2] = {1e300, 1e300};
            if (q != 0.0 && (inside > 0.0 || round.curve == 0.0))
                roots[0] = c / q;
            if (round.curve != 0.0)
                roots[1] = q / round.curve;
            for (const double t : roots)
                if (std::abs(t) <= far)
                    add(m, a, ca, b, cb, round.start + base + t * u);
        }
    }
    if (m.count == 0) {
        add_ends(m, a, ca, b, cb);
        m.overlap = m.count > 1;
    }
    return m;
}

} // namespace torchside::part
