#include "core/drawing/sketch.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/part/piece.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

constexpr double farthest_mm = 1e6;
constexpr int deepest = 20;              // halvings of one curve
constexpr double alike_to = 1e-9;        // relative: axes of a circle
constexpr double together = 1e-9;        // mm: the chain's end is its beginning
constexpr double half_turn = 1.0 + 1e-9; // bulge of half a circle, and a rounding
constexpr double flat = 1e-9;            // bulge
constexpr double steepest = 0.42;        // bulge of a quarter circle, and a little
constexpr double sampling = 0.9;         // between the points looked at, a cubic can stray a little farther
constexpr double whole = 2.0 * std::numbers::pi;

bool circular(Point u, Point v) {
    const double uu = dot(u, u), vv = dot(v, v), most = std::max(uu, vv);
    return std::abs(uu - vv) <= alike_to * most && std::abs(dot(u, v)) <= alike_to * most;
}

struct Conic {
    Point centre, u, v;
};

Point conic_at(const void* context, double t) {
    const Conic& k = *static_cast<const Conic*>(context);
    const double c = std::cos(t), s = std::sin(t);
    return {k.centre.x + k.u.x * c + k.v.x * s, k.centre.y + k.u.y * c + k.v.y * s};
}

} // namespace

Affine Affine::operator*(const Affine& first) const {
    return {a * first.a + c * first.b, b * first.a + d * first.b,     a * first.c + c * first.d,
            b * first.c + d * first.d, a * first.e + c * first.f + e, b * first.e + d * first.f + f};
}

bool Affine::keeps_circles() const {
    return circular({a, b}, {c, d});
}

void Pen::move_to(Point p) {
    finish();
    begin_ = static_cast<std::uint32_t>(sketch_.vertices.size());
    down_ = true;
    if (!(std::abs(p.x) <= farthest_mm && std::abs(p.y) <= farthest_mm)) { // not a number neither
        fault_ = words::drawing_fault::too_far;
        p = {};
    }
    sketch_.vertices.push_back({p, 0.0});
}

void Pen::line_to(Point p) {
    arc_to(p, 0.0);
}

void Pen::arc_to(Point p, double bulge) {
    if (!(std::abs(p.x) <= farthest_mm && std::abs(p.y) <= farthest_mm && std::abs(bulge) <= farthest_mm)) {
        fault_ = words::drawing_fault::too_far;
    }
    if (std::abs(bulge) > half_turn && fault_ == Word{}) { // more than half a circle: in two
        const Piece whole_arc{at(), p, bulge};
        arc_to(point_at(whole_arc, 0.5), part::bulge_of_share(bulge, 0.5));
        arc_to(p, part::bulge_of_share(bulge, 0.5));
        return;
    }
    if (sketch_.counts.pieces >= most_drawing_pieces) {
        fault_ = words::drawing_fault::too_many;
    }
    if (fault_ != Word{}) {
        return;
    }
    ++sketch_.counts.pieces;
    sketch_.vertices.back().bulge = bulge;
    sketch_.vertices.push_back({p, 0.0});
}

void Pen::conic_to(Point centre, Point u, Point v, double t0, double sweep, const Point* end) {
    const Conic shape{centre, u, v};
    if (!circular(u, v)) {
        const Curve curve{conic_at, &shape};
        const double quarters = std::clamp(std::ceil(std::abs(sweep) / (whole / 4) - alike_to), 1.0, 4.0);
        for (double i = 0; i < quarters; ++i) {
            curve_to(curve, t0 + sweep * i / quarters, t0 + sweep * (i + 1) / quarters);
        }
        if (end && fault_ == Word{}) {
            sketch_.vertices.back().at = *end;
        }
        return;
    }
    const double turn = u.x * v.y - u.y * v.x < 0.0 ? -sweep : sweep;
    const int halves = std::abs(sweep) > whole / 2 * (1 + alike_to) ? 2 : 1;
    const double bulge = std::tan(turn / halves / 4);
    if (halves == 2) {
        arc_to(conic_at(&shape, t0 + sweep / 2), bulge);
    }
    arc_to(end ? *end : conic_at(&shape, t0 + sweep), bulge);
}

void Pen::curve_to(const Curve& curve, double t0, double t1) {
    if (down_ && fault_ == Word{}) {
        flatten(curve, t0, at(), t1, curve.at(curve.context, t1), 0);
    }
}

void Pen::flatten(const Curve& curve, double t0, Point p0, double t1, Point p1, int depth) {
    const double step = (t1 - t0) / 4;
    const Point middle = curve.at(curve.context, t0 + 2 * step);
    const Point in = middle - p0, out = p1 - middle;
    const double half_sweep = std::atan2(cross(in, out), dot(in, out));
    const double bulge = std::tan(half_sweep / 2);
    const Piece arc{p0, p1, std::abs(bulge) < flat ? 0.0 : bulge};
    const auto strays = [&](Point p) { return !(norm(p - nearest_on(arc, p)) <= flatten_ * sampling); };
    const bool split = std::abs(bulge) > steepest || strays(curve.at(curve.context, t0 + step)) ||
                       strays(curve.at(curve.context, t0 + 3 * step));
    if (!split || depth == deepest || fault_ != Word{}) {
        arc_to(p1, std::abs(bulge) > steepest ? 0.0 : arc.bulge);
        return;
    }
    flatten(curve, t0, p0, t0 + 2 * step, middle, depth + 1);
    flatten(curve, t0 + 2 * step, middle, t1, p1, depth + 1);
}

void Pen::close() {
    if (!down_) {
        return;
    }
    down_ = false;
    auto end = static_cast<std::uint32_t>(sketch_.vertices.size());
    const Point first = sketch_.vertices[begin_].at, last = sketch_.vertices.back().at;
    if (end - begin_ > 1 && std::hypot(first.x - last.x, first.y - last.y) <= together) {
        sketch_.vertices.pop_back(); // the one before it leads to the first
        --end;
    } else if (end - begin_ > 1) {
        ++sketch_.counts.pieces;
    }
    if (end - begin_ < 2 && sketch_.vertices.back().bulge == 0.0) { // a point
        sketch_.vertices.resize(begin_);
        ++sketch_.counts.short_pieces;
        report(sketch_.problems, Found::short_piece, first);
        return;
    }
    sketch_.chains.push_back({begin_, end, true});
}

void Pen::finish() {
    if (!down_) {
        return;
    }
    const auto end = static_cast<std::uint32_t>(sketch_.vertices.size());
    const Point first = sketch_.vertices[begin_].at, last = sketch_.vertices.back().at;
    if (end - begin_ > 2 && std::hypot(first.x - last.x, first.y - last.y) <= together) {
        close();
        return;
    }
    down_ = false;
    if (end - begin_ < 2) { // a move that drew nothing
        sketch_.vertices.resize(begin_);
        return;
    }
    sketch_.chains.push_back({begin_, end, false});
}

void Pen::conic(Point centre, Point u, Point v, double t0, double sweep) {
    const Conic shape{centre, u, v};
    move_to(conic_at(&shape, t0));
    conic_to(centre, u, v, t0, sweep, nullptr);
    finish();
}

void Pen::circle(Point centre, Point u, Point v) {
    const Point first{centre.x + u.x, centre.y + u.y};
    move_to(first);
    conic_to(centre, u, v, 0.0, whole, &first);
    close();
}

} // namespace torchside::drawing
