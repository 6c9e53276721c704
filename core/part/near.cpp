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

Near::Found Near::nearest(Point p, double reach_mm, std::size_t but) {
    Found best;
    double least = reach_mm * reach_mm;
    tree_.find(around(p, reach_mm), hits_);
    for (const std::uint32_t i : hits_) {
        if (row_.contour[i] == but)
            continue;
        const Point at = nearest_on(row_.pieces[i], p);
        const double square = dot(at - p, at - p);
        if (square <= least) {
            least = square;
            best = {0.0, at, row_.contour[i], i};
        }
    }
    best.mm = std::sqrt(least);
    return best;
}

Near::Found Near::nearest(Point p) {
    if (row_.pieces.empty())
        return {};
    // Any piece says how far to look at most.
    double reach = norm(row_.pieces[0].from - p);
    Found found = nearest(p, std::min(1.0, reach) + 1e-9);
    for (double r = 4.0; found.contour == none; r *= 4.0)
        found = nearest(p, std::min(r, reach) + 1e-9);
    return found;
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
