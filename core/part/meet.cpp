#include "core/part/meet.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::part {
namespace {

constexpr double parallel = 1e-9; // sine of the angle

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

bool same(Point a, Point b, double near_mm) {
    const Point d = a - b;
    return dot(d, d) <= near_mm * near_mm;
}

// How far along its piece a point of the carrier lies; outside of 0..1 when it is not on the piece.
double share_of(const Carrier& c, const Piece& p, Point at, double near_mm) {
    if (same(at, p.from, near_mm)) {
        return 0.0;
    }
    if (same(at, p.to, near_mm)) {
        return 1.0;
    }
    const Point x = at - p.from;
    const double ahead = dot(x, c.along);
    if (c.sweep == 0.0) {
        return ahead / c.chord;
    }
    // The chord to a point turns half as fast as the arc.
    const double half = 0.5 * std::abs(c.sweep);
    const double aside = c.sweep > 0.0 ? cross(c.along, x) : -cross(c.along, x);
    if (half > 0.25) {
        return std::atan2(aside, ahead) / half;
    }
    const double sine = norm(x) / c.chord * std::sin(half);
    return ahead > 0.0 && sine < 1.0 ? std::asin(sine) / half : 2.0;
}

// Whether a straight piece lies wholly on one side of another: spares most pairs of long ones whose boxes meet.
bool beside(const Piece& a, const Piece& b, double near_mm) {
    const Point along = a.to - a.from;
    const double from = cross(along, b.from - a.from);
    const double to = cross(along, b.to - a.from);
    const double nearer = std::min(std::abs(from), std::abs(to));
    return from * to > 0.0 && nearer * nearer > 4.0 * near_mm * near_mm * dot(along, along);
}

class Meet {
public:
    Meet(const Piece& a, const Piece& b, double near_mm)
        : a_(a), b_(b), ca_(carrier_of(a)), cb_(carrier_of(b)), near_(near_mm) {}

    Crossings run() {
        if (!(ca_.chord > 0.0) || !(cb_.chord > 0.0)) {
            return m_;
        }
        const bool swapped = std::abs(ca_.curve) < std::abs(cb_.curve);
        const bool alike = !cross_at(swapped ? cb_ : ca_, swapped ? ca_ : cb_);
        if (m_.count == 0) { // where the formula is weak, and all there is of pieces on one carrier
            ends(alike);
        }
        return m_;
    }

private:
    // By the line through both crossings, about the start of `round`, the more curved. False: there is no such line.
    bool cross_at(const Carrier& round, const Carrier& other) {
        const Point d = other.start - round.start;
        const Point n1 = left_of(round.along);
        const Point n2 = left_of(other.along);
        const double ratio = round.curve != 0.0 ? other.curve / round.curve : 0.0;
        const Point w = other.curve * d - ratio * n1 + n2;
        const double square = dot(w, w);
        const double alike = std::abs(other.curve) * near_ + 1e-12; // circles about one centre
        if (square <= alike * alike) {
            return false;
        }
        const Point base = ((0.5 * other.curve * dot(d, d) + dot(n2, d)) / square) * w;
        const Point u = (1.0 / std::sqrt(square)) * left_of(w);
        const double half_b = round.curve * dot(base, u) - dot(n1, u);
        const double c = round.curve * dot(base, base) - 2.0 * dot(n1, base);
        if (round.curve == 0.0 && std::abs(half_b) <= parallel) {
            return false;
        }
        double inside = half_b * half_b - round.curve * c;
        if (inside < 0.0 && -inside <= 2.0 * std::abs(round.curve) * near_) {
            inside = 0.0; // touches
        }
        if (inside < 0.0) {
            return true;
        }
        const double q = -(half_b + std::copysign(std::sqrt(inside), half_b));
        const double far = 4.0 * std::max(ca_.chord, cb_.chord) + 4.0 * norm(d);
        const auto root = [&](double t) {
            if (std::abs(t) <= far) {
                add(round.start + base + t * u);
            }
        };
        if (q != 0.0 && (inside > 0.0 || round.curve == 0.0)) {
            root(c / q);
        }
        if (round.curve != 0.0) {
            root(q / round.curve);
        }
        return true;
    }

    void add(Point at) {
        for (int i = 0; i < m_.count; ++i) {
            if (same(m_.found[i].at, at, near_)) {
                return;
            }
        }
        const double sa = share_of(ca_, a_, at, near_);
        const double sb = share_of(cb_, b_, at, near_);
        if (m_.count < 4 && sa >= 0.0 && sa <= 1.0 && sb >= 0.0 && sb <= 1.0) {
            m_.found[m_.count++] = {at, sa, sb};
        }
    }

    // A point of one piece that may lie on the other. Inside it, with carriers alike, they share a length.
    void on(const Piece& other, Point at, bool alike, bool is_end) {
        if (!same(nearest_on(other, at), at, near_)) {
            return;
        }
        const bool inside = alike && !same(at, other.from, near_) && !same(at, other.to, near_);
        m_.overlap = m_.overlap || inside;
        if (inside || is_end) {
            add(at);
        }
    }

    void ends(bool alike) {
        on(b_, point_at(a_, 0.5), alike, false);
        on(b_, a_.from, alike, true);
        on(b_, a_.to, alike, true);
        on(a_, b_.from, alike, true);
        on(a_, b_.to, alike, true);
    }

    const Piece& a_;
    const Piece& b_;
    Carrier ca_, cb_;
    double near_;
    Crossings m_{};
};

} // namespace

Crossings meet(const Piece& a, const Piece& b, double near_mm) {
    if (a.straight() && b.straight() && (beside(a, b, near_mm) || beside(b, a, near_mm))) {
        return {};
    }
    return Meet(a, b, near_mm).run();
}

} // namespace torchside::part
