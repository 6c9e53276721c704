#include "core/part/offset.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/part/box_tree.hpp"
#include "core/part/loops.hpp"
#include "core/part/meet.hpp"

namespace torchside::part {
namespace {

constexpr double least_piece_mm = 1e-7; // shorter ones of a drawing are passed over
constexpr double same_place_mm = 1e-6;  // ends that are one place
constexpr double miter_mm = 1e-3;       // how far a corner may stand out before it gets an arc
constexpr double least_arc_mm = 0.02;   // shorter joints of corners are not worth a piece: they are 0.0003 mm high
constexpr double dust_mm = 2e-4;        // shorter pieces of the result are merged away
constexpr double not_nearer_mm = 2e-6;  // what rounding and joints may take from the distance

// A piece of the drawing and where its ends move to.
struct Moved {
    Piece drawn{};
    Point in{};  // direction at its start
    Point out{}; // and its end
    Point from{};
    Point to{};
    double length = 0.0;
    double start = 0.0; // shares of the moved piece between which the corners leave it
    double end = 1.0;
    std::size_t source = 0;
    bool gone = false;     // an arc turned inside out
    bool joined = false;   // ends where the next one begins
    bool with_arc = false; // an arc leads to the next one
    double arc_bulge = 0.0;
};

Point to_right(Point along, double d) {
    return {d * along.y, -d * along.x};
}

std::vector<Moved> moved_pieces(const Contour& c, double d) {
    std::vector<Moved> all;
    all.reserve(c.points.size());
    for (std::size_t i = 0; i < c.points.size(); ++i) {
        Moved m;
        m.drawn = piece_of(c, i);
        m.source = i;
        if (!all.empty()) {
            m.drawn.from = all.back().drawn.to; // over a piece that was passed over
        }
        if (norm(m.drawn.to - m.drawn.from) < least_piece_mm) {
            continue;
        }
        all.push_back(m);
    }
    if (all.size() > 1) {
        all.back().drawn.to = all.front().drawn.from;
    }
    for (Moved& m : all) {
        m.in = direction_at(m.drawn, 0.0);
        m.out = m.drawn.straight() ? m.in : direction_at(m.drawn, 1.0);
        m.from = m.drawn.from + to_right(m.in, d);
        m.to = m.drawn.to + to_right(m.out, d);
        const Point chord = m.drawn.to - m.drawn.from;
        m.length = length_of({m.from, m.to, m.drawn.bulge});
        m.gone = dot(m.to - m.from, chord) <= least_piece_mm * norm(chord);
    }
    return all;
}

bool extends(const Moved& m, double more) {
    return m.drawn.straight() || (more < 1e-3 && more < 0.05 * m.length);
}

void join_corner(Moved& a, Moved& b, double d) {
    const double turn = std::atan2(cross(a.out, b.in), dot(a.out, b.in));
    const Point gap = b.from - a.to;
    const bool there = !a.gone && !b.gone;
    if (there && dot(gap, gap) <= same_place_mm * same_place_mm) {
        a.to = b.from = a.to + 0.5 * gap;
        a.joined = true;
        return;
    }
    if (turn > 0.0) {
        a.joined = true;
        // Lines extend straight, arcs along their own circle; over this distance the difference is negligible.
        const double half_cos = std::cos(0.5 * turn);
        const double more = d * std::tan(0.5 * turn);
        if (there && d * (1.0 - half_cos) <= miter_mm * half_cos && extends(a, more) && extends(b, more)) {
            a.end += more / a.length;
            b.start -= more / b.length;
            a.to = b.from = a.drawn.to + (0.5 / (half_cos * half_cos)) * to_right(a.out + b.in, d);
        } else {
            a.with_arc = true;
            a.arc_bulge = std::tan(0.25 * turn);
        }
        return;
    }
    if (!there) {
        return;
    }
    // The crossing next to the corner, when it leaves more than half of both: no other corner then cuts past it.
    const Piece moved_a{a.drawn.from + to_right(a.in, d), a.drawn.to + to_right(a.out, d), a.drawn.bulge};
    const Piece moved_b{b.drawn.from + to_right(b.in, d), b.drawn.to + to_right(b.out, d), b.drawn.bulge};
    const Crossings m = meet(moved_a, moved_b);
    double last = 0.51;
    for (int k = 0; k < m.count; ++k) {
        const Crossing& at = m.found[k];
        if (at.share_a < last || at.share_b > 0.49) {
            continue;
        }
        last = at.share_a;
        a.to = b.from = at.at;
        a.end = at.share_a;
        b.start = at.share_b;
        a.joined = true;
    }
}

// The moved curve in order, cut wherever it meets itself.
std::vector<Link> moved_curve(std::vector<Moved>& moved, double d) {
    const std::size_t n = moved.size();
    std::vector<Link> curve;
    curve.reserve(n + n / 2);
    for (std::size_t i = 0; i < n; ++i) {
        join_corner(moved[i], moved[(i + 1) % n], d);
    }
    for (std::size_t i = 0; i < n; ++i) {
        const Moved& m = moved[i];
        const Moved& next = moved[(i + 1) % n];
        if (!m.gone) {
            curve.push_back({{m.from, m.to, bulge_of_share(m.drawn.bulge, m.end - m.start)}, i, m.joined});
        }
        if (m.with_arc) {
            curve.push_back({{m.to, next.from, m.arc_bulge}, Link::no_source, !next.gone});
        }
    }
    return curve;
}

// Whether a point of the moved curve keeps its distance from the contour. One that is just as far from two opposite
// sides does not: a slot as wide as the kerf is no slot that could be cut, whatever way its figures are rounded.
class Nearness {
public:
    Nearness(const std::vector<Moved>& moved, double d) : moved_(moved), tree_(boxes(moved)), d_(d) {}

    [[nodiscard]] bool too_near(Point p) {
        const double least = d_ - not_nearer_mm;
        const double most = d_ + not_nearer_mm;
        tree_.find(around(p, most), hits_);
        Point side{};
        for (const std::uint32_t i : hits_) {
            const Point off = nearest_on(moved_[i].drawn, p) - p;
            const double square = dot(off, off);
            if (square < least * least) {
                return true;
            }
            if (square > most * most) {
                continue;
            }
            if (dot(off, side) < -0.999 * d_ * d_) {
                return true;
            }
            side = off;
        }
        return false;
    }

private:
    static std::vector<Box> boxes(const std::vector<Moved>& moved) {
        std::vector<Box> all;
        all.reserve(moved.size());
        for (const Moved& m : moved) {
            all.push_back(box_of_piece(m.drawn));
        }
        return all;
    }
    const std::vector<Moved>& moved_;
    BoxTree tree_;
    double d_;
    std::vector<std::uint32_t> hits_{};
};

// Middles of up to five pieces of a run, the first too near one is enough.
bool far_enough(const std::vector<Link>& curve, const LinkRun& run, Nearness& nearness) {
    const std::size_t count = run.end - run.begin;
    const std::size_t step = std::max<std::size_t>(1, count / 5);
    for (std::size_t i = run.begin + std::min(step / 2, count - 1); i < run.end; i += step) {
        if (nearness.too_near(point_at(curve[i % curve.size()].piece, 0.5))) {
            return false;
        }
    }
    return true;
}

// A corner's arc too short to be worth a piece of its own: the one before it is stretched over it.
bool stretch_over(Contour& loop, const Piece& arc) {
    const double more = norm(arc.to - arc.from);
    if (loop.points.empty() || more > least_arc_mm) {
        return false;
    }
    Vertex& last = loop.points.back();
    const double length = length_of({last.at, arc.from, last.bulge});
    if (length < 10.0 * more) {
        return false;
    }
    last.bulge = bulge_of_share(last.bulge, 1.0 + more / length);
    return true;
}

// Drops vertices that come within a hair of the one before; false when no loop is left.
bool sweep_up(Contour& loop) {
    std::vector<Vertex>& v = loop.points;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < v.size(); ++i) {
        const bool dust = kept > 0 && std::abs(v[kept - 1].bulge) < 1.0 && norm(v[i].at - v[kept - 1].at) < dust_mm;
        if (dust) {
            v[kept - 1].bulge = v[i].bulge;
        } else {
            v[kept++] = v[i];
        }
    }
    while (kept > 1 && std::abs(v[kept - 1].bulge) < 1.0 && norm(v[0].at - v[kept - 1].at) < dust_mm) {
        --kept;
    }
    v.resize(kept);
    return kept > 1;
}

Offset offset_once(const Contour& c, double d) {
    Offset result;
    result.kept.assign(c.points.size(), 0);
    std::vector<Moved> moved = moved_pieces(c, d);
    if (moved.size() < 2) {
        return result;
    }
    std::vector<Link> curve = cut_where_it_meets(moved_curve(moved, d));
    if (curve.empty()) {
        return result;
    }
    Nearness nearness(moved, d);
    std::vector<LinkRun> kept;
    for (const LinkRun& run : runs_of(curve)) {
        if (far_enough(curve, run, nearness)) {
            kept.push_back(run);
        }
    }
    const JoinedRuns joined = join_runs(curve, kept, same_place_mm);
    result.whole = joined.whole;
    for (const std::vector<std::size_t>& order : joined.loops) {
        Contour loop;
        loop.role = c.role;
        for (const std::size_t r : order) {
            for (std::size_t i = kept[r].begin; i < kept[r].end; ++i) {
                const Link& link = curve[i % curve.size()];
                if (link.source != Link::no_source) {
                    result.kept[moved[link.source].source] = 1;
                } else if (stretch_over(loop, link.piece)) {
                    continue;
                }
                loop.points.push_back({link.piece.from, link.piece.bulge});
            }
        }
        if (sweep_up(loop)) {
            result.loops.push_back(std::move(loop));
        }
    }
    return result;
}

} // namespace

Offset offset(const Contour& contour, double right_mm) {
    if (right_mm == 0.0) {
        return {{contour}, std::vector<char>(contour.points.size(), 1), true};
    }
    if (right_mm < 0.0) {
        Offset back = offset(reversed(contour), -right_mm);
        for (Contour& loop : back.loops) {
            loop = reversed(loop);
        }
        // The piece from vertex i is, run back, the one from vertex n - 2 - i.
        const std::size_t n = contour.points.size();
        std::vector<char> kept(n);
        for (std::size_t i = 0; i < n; ++i) {
            kept[i] = back.kept[(2 * n - 2 - i) % n];
        }
        back.kept = std::move(kept);
        return back;
    }
    Offset best = offset_once(contour, right_mm);
    for (const double change : {1.00001, 0.99999, 1.00003}) {
        if (best.whole) {
            break;
        }
        Offset next = offset_once(contour, right_mm * change);
        if (next.whole) {
            best = std::move(next);
        }
    }
    return best;
}

} // namespace torchside::part
