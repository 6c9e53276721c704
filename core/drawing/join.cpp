#include "core/drawing/join.hpp"

#include <algorithm>

#include "core/drawing/join_work.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

// Ends this near are each other's without doubt.
constexpr double weld_share = 0.1; // of the tolerance
constexpr double weld_mm = 0.005;

// Whether there are pieces on their own that the tolerance would swallow.
bool has_short_pieces(const Sketch& sketch, double tolerance) {
    return std::any_of(sketch.chains.begin(), sketch.chains.end(), [&](const Chain& c) {
        const Vertex* const v = sketch.vertices.data() + c.begin;
        return !c.closed && c.end - c.begin == 2 && norm(v[1].at - v[0].at) <= tolerance;
    });
}

} // namespace

Piece Joiner::piece(std::uint32_t vertex, const Chain& c) const {
    const std::uint32_t next = vertex + 1 < c.end ? vertex + 1 : c.begin;
    return {sketch_.vertices[vertex].at, sketch_.vertices[next].at, sketch_.vertices[vertex].bulge};
}

Point Joiner::leaving(End end) const {
    const Chain& c = chain(end);
    if (end % 2 == 0) {
        return direction_at(piece(c.begin, c), 0.0);
    }
    return -1.0 * direction_at(piece(c.end - 2, c), 1.0);
}

// Ends first, so that they are the ones others are measured from.
void Joiner::number_points() {
    number_.assign(sketch_.vertices.size(), no_one);
    for (const Chain& c : sketch_.chains) {
        if (!c.closed) {
            number_[c.begin] = points_.number(sketch_.vertices[c.begin].at);
            number_[c.end - 1] = points_.number(sketch_.vertices[c.end - 1].at);
        }
    }
    for (std::uint32_t i = 0; i < number_.size(); ++i) {
        if (number_[i] == no_one) {
            number_[i] = points_.number(sketch_.vertices[i].at);
        }
    }
}

double Joiner::length_up_to_tolerance(const Chain& c) const {
    double length = 0.0;
    const std::uint32_t end = c.closed ? c.end : c.end - 1;
    for (std::uint32_t i = c.begin; i < end && length <= tolerance_; ++i) {
        length += length_of(piece(i, c));
    }
    return length;
}

bool Joiner::point_like(const Chain& c) const {
    return c.end - c.begin == 2 && number_[c.begin] == number_[c.end - 1] && !c.closed;
}

void Joiner::drop(const Chain& c, double length) {
    ++sketch_.counts.short_pieces;
    found(Found::short_piece, sketch_.vertices[c.begin].at, length);
}

void Joiner::drop_short() {
    std::size_t kept = 0;
    for (const Chain& c : sketch_.chains) {
        const double length = length_up_to_tolerance(c);
        if (length <= tolerance_ || point_like(c)) {
            drop(c, length);
        } else {
            sketch_.chains[kept++] = c;
        }
    }
    sketch_.chains.resize(kept);
}

// Chains whose own ends meet.
void Joiner::close_near() {
    for (Chain& c : sketch_.chains) {
        if (!c.closed && number_[c.begin] == number_[c.end - 1]) {
            Vertex& first = sketch_.vertices[c.begin];
            const Vertex& last = sketch_.vertices[c.end - 1];
            const double gap = norm(last.at - first.at);
            if (gap > exact_gap) {
                ++sketch_.counts.gaps_joined;
                sketch_.counts.largest_gap_mm = std::max(sketch_.counts.largest_gap_mm, gap);
                first.at = 0.5 * (first.at + last.at);
            }
            c.closed = true;
            --c.end;
        }
    }
}

// Whether the same piece was met before; if not, it is kept in mind.
bool Joiner::known(std::uint32_t vertex, const Chain& c, KeyTable& table) {
    const std::uint32_t a = number_[vertex], b = number_[vertex + 1 < c.end ? vertex + 1 : c.begin];
    if (a == b) {
        return false;
    }
    const Point middle = point_at(piece(vertex, c), 0.5);
    std::uint32_t& last = table.at(static_cast<std::uint64_t>(std::min(a, b)) << 32 | std::max(a, b));
    for (std::uint32_t i = last; i != no_one; i = twin_[i]) {
        if (norm(middle_[i] - middle) <= tolerance_) {
            return true;
        }
    }
    middle_[vertex] = middle;
    twin_[vertex] = last;
    last = vertex;
    return false;
}

// Longer chains are kept before shorter ones, closed ones before open ones.
void Joiner::drop_duplicates() {
    KeyTable table(sketch_.counts.pieces + sketch_.chains.size());
    twin_.assign(number_.size(), no_one);
    middle_.assign(number_.size(), {});
    twice_.assign(number_.size(), 0);
    std::vector<char> keep(sketch_.chains.size(), 1);
    for (int rank = 0; rank < 3; ++rank) {
        for (std::size_t i = 0; i < sketch_.chains.size(); ++i) {
            const Chain& c = sketch_.chains[i];
            if ((c.closed ? 0 : c.end - c.begin > 2 ? 1 : 2) != rank) {
                continue;
            }
            const std::uint32_t end = c.closed ? c.end : c.end - 1;
            std::size_t again = 0;
            for (std::uint32_t v = c.begin; v < end; ++v) {
                twice_[v] = known(v, c, table) ? 1 : 0;
                again += twice_[v] != 0 ? 1 : 0;
            }
            if (again > 0 && (!c.closed || again == end - c.begin)) {
                sketch_.counts.duplicates += again;
                keep[i] = 0;
                for (std::uint32_t v = c.begin; v < end; ++v) {
                    if (twice_[v] != 0) {
                        found(Found::duplicate, point_at(piece(v, c), 0.5), length_of(piece(v, c)));
                    }
                }
            }
        }
    }
    for (std::size_t i = 0; i < sketch_.chains.size(); ++i) {
        const Chain& c = sketch_.chains[i];
        if (keep[i] == 0) {
            split(c);
        } else {
            (c.closed ? closed_ : chains_).push_back(c);
        }
    }
}

// What is left of a chain when pieces are taken out.
void Joiner::split(const Chain& c) {
    for (std::uint32_t v = c.begin; !c.closed && v + 1 < c.end; ++v) {
        if (twice_[v] != 0) {
            continue;
        }
        const std::uint32_t begin = v;
        while (v + 1 < c.end && twice_[v] == 0) {
            ++v;
        }
        chains_.push_back({begin, v + 1, false});
    }
}

Word Joiner::run(Outline& out) {
    const auto stopped = [&](double share) { return !progress_.go_on(share_of_reading + share_of_joining * share); };
    number_points();
    if (stopped(0.4)) {
        return words::drawing_fault::stopped;
    }
    drop_short();
    close_near();
    drop_duplicates();
    if (stopped(0.7)) {
        return words::drawing_fault::stopped;
    }
    list_ends();
    set_aside();
    pair_ends();
    return stopped(0.9) || !trace(out) ? words::drawing_fault::stopped : Word{};
}

Word join(Sketch& sketch, double tolerance_mm, const Progress& progress, Outline& out) {
    if (has_short_pieces(sketch, tolerance_mm)) {
        Joiner(sketch, std::min(weld_share * tolerance_mm, weld_mm), progress).weld();
    }
    return Joiner(sketch, tolerance_mm, progress).run(out);
}

} // namespace torchside::drawing
