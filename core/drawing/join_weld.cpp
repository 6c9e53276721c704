// The first pass of joining, for drawings with pieces that the tolerance would swallow.
#include "core/drawing/join_work.hpp"

namespace torchside::drawing {

// Chains whose ends meet without a third become one; the sketch is written anew with what that leaves.
void Joiner::weld() {
    number_points();
    std::size_t kept = 0;
    for (const Chain& c : sketch_.chains) {
        if (point_like(c)) {
            drop(c, length_up_to_tolerance(c));
        } else {
            sketch_.chains[kept++] = c;
        }
    }
    sketch_.chains.resize(kept);
    drop_duplicates();
    list_ends();
    mate_.assign(ends_.size(), no_one);
    for (std::uint32_t p = 0; p < points_.size(); ++p) {
        if (first_end_[p + 1] - first_end_[p] == 2) {
            mate(ends_[first_end_[p]], ends_[first_end_[p] + 1]);
        }
    }
    std::vector<Vertex> vertices;
    std::vector<Chain> chains;
    vertices.reserve(sketch_.vertices.size());
    const auto keep = [&](const Vertex* first, const Vertex* last, bool closed) {
        const auto begin = static_cast<std::uint32_t>(vertices.size());
        vertices.insert(vertices.end(), first, last);
        chains.push_back({begin, static_cast<std::uint32_t>(vertices.size()), closed});
    };
    for (const Chain& c : closed_) {
        keep(sketch_.vertices.data() + c.begin, sketch_.vertices.data() + c.end, true);
    }
    done_.assign(chains_.size(), 0);
    for (const bool round : {false, true}) { // what has a free end first
        for (End e = 0; e < mate_.size(); ++e) {
            if (done_[e / 2] == 0 && (round || mate_[e] == no_one)) {
                const std::vector<Vertex> points = follow(e, round).points;
                keep(points.data(), points.data() + points.size(), round);
            }
        }
    }
    sketch_.vertices = std::move(vertices);
    sketch_.chains = std::move(chains);
}

} // namespace torchside::drawing
