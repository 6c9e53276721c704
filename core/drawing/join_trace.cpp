#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/drawing/join_work.hpp"
#include "core/part/measure.hpp"

namespace torchside::drawing {

namespace {

constexpr std::size_t most_ends = 16;   // at a point where ends are paired
constexpr double no_area_share = 1e-12; // of the length squared
constexpr std::size_t between_news = 4096;

} // namespace

// The ends at each point, point by point.
void Joiner::list_ends() {
    const auto count = static_cast<End>(2 * chains_.size());
    first_end_.assign(points_.size() + 1, 0);
    for (End e = 0; e < count; ++e) {
        ++first_end_[point_of(e) + 1];
    }
    for (std::size_t i = 1; i < first_end_.size(); ++i) {
        first_end_[i] += first_end_[i - 1];
    }
    std::vector<std::uint32_t> fill = first_end_;
    ends_.assign(count, 0);
    for (End e = 0; e < count; ++e) {
        ends_[fill[point_of(e)]++] = e;
    }
}

// Chains with an end where nothing else is, then those that are so without them, and so on.
void Joiner::set_aside() {
    std::vector<std::uint32_t> left(points_.size(), 0), lonely;
    aside_.assign(chains_.size(), 0);
    for (std::uint32_t p = 0; p < left.size(); ++p) {
        left[p] = first_end_[p + 1] - first_end_[p];
        if (left[p] == 1) {
            lonely.push_back(p);
        }
        if (left[p] > 2) {
            found(Found::branch, points_.at(p));
        }
    }
    while (!lonely.empty()) {
        const std::uint32_t p = lonely.back();
        lonely.pop_back();
        for (std::uint32_t i = first_end_[p]; i < first_end_[p + 1]; ++i) {
            const End e = ends_[i];
            if (aside_[e / 2] != 0) {
                continue;
            }
            aside_[e / 2] = 1;
            const std::uint32_t q = point_of(other(e));
            --left[p];
            if (--left[q] == 1) {
                lonely.push_back(q);
            }
        }
    }
}

void Joiner::pair_ends() {
    mate_.assign(ends_.size(), no_one);
    std::vector<std::vector<End>> branches;
    for (std::uint32_t p = 0; p < points_.size(); ++p) {
        std::vector<End>& here = scratch_;
        for (const bool aside : {false, true}) {
            here.clear();
            for (std::uint32_t i = first_end_[p]; i < first_end_[p + 1]; ++i) {
                if ((aside_[ends_[i] / 2] != 0) == aside) {
                    here.push_back(ends_[i]);
                }
            }
            if (here.size() == 2) {
                mate(here[0], here[1]);
            } else if (here.size() > 2 && here.size() <= most_ends && !aside) {
                branches.push_back(here);
            }
            if (!here.empty()) {
                break; // what leads nowhere is not joined to what goes round
            }
        }
    }
    for (const std::vector<End>& ends : branches) { // first what comes back to its point without another branch
        for (const End e : ends) {
            const End back = far_end(e);
            if (mate_[e] == no_one && back != e && mate_[back] == no_one && point_of(back) == point_of(e)) {
                mate(e, back);
            }
        }
    }
    for (const std::vector<End>& ends : branches) {
        pair_straightest(ends);
    }
}

// The end that one comes to along joined chains; `end` itself when they run round.
Joiner::End Joiner::far_end(End end) const {
    End at = other(end);
    for (std::size_t steps = 0; mate_[at] != no_one && at != end && steps < chains_.size(); ++steps) {
        at = other(mate_[at]);
    }
    return at;
}

void Joiner::pair_straightest(const std::vector<End>& ends) {
    while (true) {
        End best[2] = {no_one, no_one};
        double straightest = 2.0;
        for (std::size_t i = 0; i < ends.size(); ++i) {
            for (std::size_t j = i + 1; j < ends.size(); ++j) {
                if (mate_[ends[i]] != no_one || mate_[ends[j]] != no_one) {
                    continue;
                }
                const double bend = dot(leaving(ends[i]), leaving(ends[j]));
                if (bend < straightest) {
                    straightest = bend;
                    best[0] = ends[i];
                    best[1] = ends[j];
                }
            }
        }
        if (best[0] == no_one) {
            return;
        }
        mate(best[0], best[1]);
    }
}

// One chain, from the given end; its first point and the last one there become one.
void Joiner::append(End from, std::vector<Vertex>& to) {
    const Chain& c = chain(from);
    const bool forward = from % 2 == 0;
    const std::uint32_t n = c.end - c.begin;
    for (std::uint32_t i = 0; i < n; ++i) {
        const std::uint32_t v = forward ? c.begin + i : c.end - 1 - i;
        Vertex next = sketch_.vertices[v];
        next.bulge = i + 1 == n ? 0.0 : forward ? next.bulge : -sketch_.vertices[v - 1].bulge;
        if (i > 0 || to.empty()) {
            to.push_back(next);
            continue;
        }
        to.back().at = met(to.back().at, next.at);
        to.back().bulge = next.bulge;
    }
}

// Where two ends become one.
Point Joiner::met(Point a, Point b) {
    const double gap = norm(b - a);
    if (gap <= exact_gap) {
        return a;
    }
    ++sketch_.counts.gaps_joined;
    sketch_.counts.largest_gap_mm = std::max(sketch_.counts.largest_gap_mm, gap);
    return 0.5 * (a + b);
}

Contour Joiner::follow(End from, bool round) {
    Contour c;
    c.role = round ? Role::outer : Role::open;
    for (End e = from; e != no_one && done_[e / 2] == 0; e = mate_[other(e)]) {
        done_[e / 2] = 1;
        append(e, c.points);
    }
    if (round) {
        const Vertex last = c.points.back();
        c.points.pop_back();
        c.points.front().at = met(c.points.front().at, last.at);
    }
    return c;
}

bool Joiner::trace(Outline& out) {
    std::vector<Contour> open, round;
    done_.assign(chains_.size(), 0);
    for (const bool closed : {false, true}) { // whatever has an unjoined end first: what is left runs round
        for (End e = 0; e < mate_.size(); ++e) {
            if (done_[e / 2] == 0 && (closed || mate_[e] == no_one)) {
                (closed ? round : open).push_back(follow(e, closed));
            }
            if (e % between_news == 0 && !progress_.go_on(share_of_reading + share_of_joining)) {
                return false;
            }
        }
    }
    for (const Chain& c : closed_) {
        const Vertex* const first = sketch_.vertices.data();
        out.contours.push_back({{first + c.begin, first + c.end}, Role::outer});
    }
    std::move(round.begin(), round.end(), std::back_inserter(out.contours));
    return sort_out(out, open);
}

// What has no area is no outline; then what is open, each with its gap.
bool Joiner::sort_out(Outline& out, std::vector<Contour>& open) {
    std::size_t kept = 0;
    for (Contour& c : out.contours) {
        const double length = length_mm(c);
        if (std::abs(area_mm2(c)) > no_area_share * length * length) {
            std::swap(out.contours[kept++], c);
            continue;
        }
        found(Found::no_area, c.points.front().at, length);
        c.points.push_back({c.points.front().at, 0.0});
        c.role = Role::open;
        open.push_back(std::move(c));
    }
    out.contours.resize(kept);
    for (Contour& c : open) {
        if (!(c.points.front().at == c.points.back().at)) {
            found(Found::open_contour, c.points.back().at, norm(c.points.front().at - c.points.back().at));
        }
        out.contours.push_back(std::move(c));
    }
    return true;
}

} // namespace torchside::drawing
