#include "core/part/loops.hpp"

#include <algorithm>
#include <cstdint>

#include "core/part/box_tree.hpp"
#include "core/part/meet.hpp"
#include "core/quantity/sort_rows.hpp"

namespace torchside::part {
namespace {

constexpr double same_end_mm = 1e-7;

struct Cut {
    std::size_t link = 0;
    double share = 0.0;
    Point at{};
};

bool near(Point a, Point b, double reach) {
    const Point d = a - b;
    return dot(d, d) <= reach * reach;
}

// Adds the cuts of two links; the end that neighbours share is not one.
void cut_pair(const std::vector<Link>& curve, std::size_t i, std::size_t k, std::vector<Cut>& cuts) {
    const Link& a = curve[i];
    const Link& b = curve[k];
    const bool before = a.joined && k == i + 1;
    const bool after = b.joined && i == 0 && k + 1 == curve.size();
    if ((before || after) && a.piece.straight() && b.piece.straight()) {
        return;
    }
    const Crossings m = meet(a.piece, b.piece);
    for (int n = 0; n < m.count; ++n) {
        const Crossing& at = m.found[n];
        if ((before && near(at.at, a.piece.to, same_end_mm)) || (after && near(at.at, a.piece.from, same_end_mm))) {
            continue;
        }
        cuts.push_back({i, at.share_a, at.at});
        cuts.push_back({k, at.share_b, at.at});
    }
}

std::vector<Cut> cuts_of(const std::vector<Link>& curve) {
    std::vector<Box> boxes;
    boxes.reserve(curve.size());
    for (const Link& link : curve) {
        Box box = box_of_piece(link.piece);
        box.low = box.low - Point{same_end_mm, same_end_mm};
        box.high = box.high + Point{same_end_mm, same_end_mm};
        boxes.push_back(box);
    }
    const BoxTree tree(std::move(boxes));
    std::vector<Cut> cuts;
    std::vector<std::uint32_t> hits;
    constexpr std::size_t fan = BoxTree::fan;
    for (std::size_t first = 0; first < curve.size() && tree.levels() > 1; first += fan) {
        tree.find(tree.box(1, first / fan), hits);
        const std::size_t end = std::min(first + fan, curve.size());
        for (const std::uint32_t k : hits) {
            for (std::size_t i = first; i < end && i < k; ++i) {
                if (!apart(tree.box(0, i), tree.box(0, k))) {
                    cut_pair(curve, i, k, cuts);
                }
            }
        }
    }
    sort_rows(cuts, [](const Cut& a, const Cut& b) { return a.link != b.link ? a.link < b.link : a.share < b.share; });
    return cuts;
}

} // namespace

std::vector<Link> cut_where_it_meets(const std::vector<Link>& curve) {
    const std::vector<Cut> cuts = cuts_of(curve);
    std::vector<Link> out;
    out.reserve(curve.size() + cuts.size());
    bool break_first = false;
    std::size_t next = 0;
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const Link& link = curve[i];
        double share = 0.0;
        Point from = link.piece.from;
        bool joined = link.joined;
        for (; next < cuts.size() && cuts[next].link == i; ++next) {
            const Cut& cut = cuts[next];
            if (near(cut.at, link.piece.to, same_end_mm)) {
                joined = false;
            } else if (!near(cut.at, from, same_end_mm)) {
                out.push_back(
                    {{from, cut.at, bulge_of_share(link.piece.bulge, cut.share - share)}, link.source, false});
                from = cut.at;
                share = cut.share;
            } else if (i == 0 && share == 0.0) {
                break_first = true;
            } else if (!out.empty()) {
                out.back().joined = false;
            }
        }
        out.push_back({{from, link.piece.to, bulge_of_share(link.piece.bulge, 1.0 - share)}, link.source, joined});
    }
    if (break_first && !out.empty()) {
        out.back().joined = false;
    }
    return out;
}

std::vector<LinkRun> runs_of(const std::vector<Link>& curve) {
    const std::size_t n = curve.size();
    std::size_t start = 0;
    while (start < n && curve[start].joined) {
        ++start;
    }
    std::vector<LinkRun> runs;
    if (start == n) { // nothing meets anywhere: one run all round
        if (n > 0) {
            runs.push_back({0, n});
        }
        return runs;
    }
    std::size_t begin = start + 1;
    for (std::size_t i = begin; i <= start + n; ++i) {
        if (!curve[i % n].joined) {
            runs.push_back({begin, i + 1});
            begin = i + 1;
        }
    }
    return runs;
}

namespace {

// The runs as a graph: a node is a place where ends of runs come together.
struct Graph {
    std::vector<std::size_t> from, to; // node of a run's start and end
    std::vector<std::size_t> first;    // of a node: the first run that starts there, then `next` of that run
    std::vector<std::size_t> next;
    std::vector<int> in, out; // how many runs not yet used end and start there
};
constexpr std::size_t none = Link::no_source;

Graph graph_of(const std::vector<Link>& curve, const std::vector<LinkRun>& runs, double same_mm) {
    const std::size_t n = curve.size();
    std::vector<Box> places;
    places.reserve(2 * runs.size());
    for (const LinkRun& run : runs) {
        places.push_back(around(curve[run.begin % n].piece.from, 0.0));
        places.push_back(around(curve[(run.end - 1) % n].piece.to, 0.0));
    }
    const BoxTree tree(places);
    Graph g;
    std::vector<std::size_t> node(places.size());
    std::vector<std::uint32_t> hits;
    std::size_t nodes = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        tree.find(around(places[i].low, same_mm), hits);
        node[i] = hits.empty() || hits.front() >= i ? nodes++ : node[hits.front()];
    }
    g.first.assign(nodes, none);
    g.in.assign(nodes, 0);
    g.out.assign(nodes, 0);
    for (std::size_t r = 0; r < runs.size(); ++r) {
        g.from.push_back(node[2 * r]);
        g.to.push_back(node[2 * r + 1]);
        g.next.push_back(g.first[g.from[r]]);
        g.first[g.from[r]] = r;
        ++g.out[g.from[r]];
        ++g.in[g.to[r]];
    }
    return g;
}

void use(Graph& g, std::vector<char>& used, std::size_t r) {
    used[r] = 1;
    --g.out[g.from[r]];
    --g.in[g.to[r]];
}

// Takes away runs that nothing leads to or that lead nowhere; gives back the length of the longest.
double prune(Graph& g, const std::vector<Link>& curve, const std::vector<LinkRun>& runs, std::vector<char>& used) {
    double lost = 0.0;
    for (bool again = true; again;) {
        again = false;
        for (std::size_t r = 0; r < runs.size(); ++r) {
            if (used[r] || (g.in[g.from[r]] > 0 && g.out[g.to[r]] > 0)) {
                continue;
            }
            use(g, used, r);
            again = true;
            double length = 0.0;
            for (std::size_t i = runs[r].begin; i < runs[r].end; ++i) {
                length += length_of(curve[i % curve.size()].piece);
            }
            lost = std::max(lost, length);
        }
    }
    return lost;
}

} // namespace

JoinedRuns join_runs(const std::vector<Link>& curve, const std::vector<LinkRun>& runs, double same_mm) {
    constexpr double worth_mm = 0.02; // where curves cross ever so flatly, both go on for a little
    const std::size_t n = curve.size();
    Graph g = graph_of(curve, runs, same_mm);
    std::vector<char> used(runs.size(), 0);
    JoinedRuns joined;
    joined.whole = prune(g, curve, runs, used) < worth_mm;
    for (std::size_t start = 0; start < runs.size(); ++start) {
        std::vector<std::size_t> loop;
        for (std::size_t r = used[start] ? none : start; r != none;) {
            use(g, used, r);
            loop.push_back(r);
            if (g.to[r] == g.from[start]) {
                break;
            }
            const Point way = direction_at(curve[(runs[r].end - 1) % n].piece, 1.0);
            double straightest = -2.0;
            std::size_t best = none;
            for (std::size_t s = g.first[g.to[r]]; s != none; s = g.next[s]) {
                const double straight = dot(way, direction_at(curve[runs[s].begin % n].piece, 0.0));
                if (!used[s] && straight > straightest) {
                    straightest = straight;
                    best = s;
                }
            }
            r = best;
        }
        if (loop.empty()) {
            continue;
        }
        if (g.to[loop.back()] == g.from[start]) {
            joined.loops.push_back(std::move(loop));
        } else {
            joined.whole = false;
        }
    }
    return joined;
}

} // namespace torchside::part
