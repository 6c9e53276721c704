#include "core/part/near.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::part {
namespace {

std::vector<Box> boxes_of(const PieceRow& row) {
    std::vector<Box> boxes;
    boxes.reserve(row.pieces.size());
    for (const Piece& p : row.pieces)
        boxes.push_back(box_of_piece(p));
    return boxes;
}

} // namespace

Near::Near(const Outline& outline) : outline_(outline), row_(outline), tree_(boxes_of(row_)) {}

namespace {

// Square of the distance from a point to a box.
double square_to(const Box& box, Point p) {
    const double x = std::max({0.0, box.low.x - p.x, p.x - box.high.x});
    const double y = std::max({0.0, box.low.y - p.y, p.y - box.high.y});
    return x * x + y * y;
}

} // namespace

// Boxes farther away than the nearest piece so far are not opened, and of four the nearest is opened first.
Near::Found Near::nearest(Point p, double reach_mm, std::size_t but) {
    struct Place {
        double square;
        std::size_t level, index;
    };
    constexpr std::size_t fan = BoxTree::fan;
    Found best;
    double least = reach_mm * reach_mm;
    Place stack[fan * 32]; // as in BoxTree::find
    std::size_t depth = 0;
    if (!row_.pieces.empty())
        stack[depth++] = {0.0, tree_.levels() - 1, 0};
    while (depth > 0) {
        const Place at = stack[--depth];
        if (at.square > least)
            continue;
        if (at.level == 0) {
            if (row_.contour[at.index] == but)
                continue;
            const Point on = nearest_on(row_.pieces[at.index], p);
            const double square = dot(on - p, on - p);
            // Of pieces just as near, which share a vertex, the last.
            if (square < least || (square == least && (best.contour == none || at.index > best.piece))) {
                least = square;
                best = {0.0, on, row_.contour[at.index], at.index};
            }
            continue;
        }
        const std::size_t first = at.index * fan, end = std::min(first + fan, tree_.count(at.level - 1));
        const std::size_t bottom = depth;
        for (std::size_t i = first; i < end; ++i) {
            const Place next{square_to(tree_.box(at.level - 1, i), p), at.level - 1, i};
            std::size_t k = depth++;
            for (; k > bottom && stack[k - 1].square < next.square; --k)
                stack[k] = stack[k - 1];
            stack[k] = next;
        }
    }
    best.mm = std::sqrt(least);
    return best;
}

Near::Found Near::nearest(Point p) {
    return row_.pieces.empty() ? Found{} : nearest(p, norm(row_.pieces[0].from - p) + 1e-9);
}

Near::Width Near::width(Point p, Point into, double most_mm) {
    double radius = 0.5 * most_mm;
    Width w;
    for (int i = 0; i < 30; ++i) {
        const Found found = nearest(p + radius * into, radius * (1.0 - 1e-7));
        if (found.contour == none)
            break;
        const Point across = found.at - p;
        const double depth = dot(across, into);
        const double smaller = depth > 0.0 ? dot(across, across) / (2.0 * depth) : radius;
        if (!(smaller < radius * (1.0 - 1e-9)))
            break;
        radius = smaller;
        w.other = found;
    }
    w.mm = 2.0 * radius;
    w.middle = p + radius * into;
    return w;
}

std::vector<std::size_t> Near::parents() {
    const std::size_t n = outline_.contours.size();
    std::vector<double> area(n);
    for (std::size_t i = 0; i < n; ++i)
        area[i] = std::abs(area_mm2(outline_.contours[i]));
    std::vector<std::size_t> parent(n, none);
    std::vector<int> winding(n, 0);
    for (std::size_t i = 0; i < n; ++i) {
        if (outline_.contours[i].points.size() < 2)
            continue;
        const Point p = point_at(piece_of(outline_.contours[i], 0), 0.5);
        tree_.find({p, {1e300, p.y}}, hits_);
        for (const std::uint32_t h : hits_)
            winding[row_.contour[h]] += winding_of(row_.pieces[h], p);
        for (const std::uint32_t h : hits_) {
            const std::size_t c = row_.contour[h];
            // Contours of one area hold each other only when they lie on each other: then the first holds the second.
            const bool larger = area[c] > area[i] || (area[c] == area[i] && c < i);
            if (winding[c] != 0 && c != i && larger && outline_.contours[c].role != Role::open &&
                (parent[i] == none || area[c] < area[parent[i]]))
                parent[i] = c;
            winding[c] = 0;
        }
    }
    return parent;
}

} // namespace torchside::part
