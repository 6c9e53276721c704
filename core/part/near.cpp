#include "core/part/near.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::part {
namespace {

constexpr double least_fat_mm = 5.0;
constexpr double more_parts = 100000.0; // than there are pieces, at most

double fatness(const Box& box) {
    return std::min(box.width(), box.height());
}

std::vector<Box> boxes_of(const PieceRow& row) {
    std::vector<Box> boxes;
    boxes.reserve(row.pieces.size());
    for (const Piece& p : row.pieces) {
        boxes.push_back(box_of_piece(p));
    }
    return boxes;
}

} // namespace

Near::Near(const Outline& outline) : outline_(outline), row_(outline), tree_(boxes_of(row_)) {
    const std::size_t n = row_.pieces.size();
    double together = 0.0; // of the boxes' lesser sides
    for (std::size_t i = 0; i < n; ++i) {
        together += fatness(tree_.box(0, i));
    }
    const double most = std::max(least_fat_mm, together / more_parts);
    std::vector<Box> boxes;
    std::vector<std::uint32_t> pieces;
    for (std::uint32_t i = 0; i < n; ++i) {
        const Piece& piece = row_.pieces[i];
        const double parts = std::max(1.0, std::ceil(fatness(tree_.box(0, i)) / most));
        const double bulge = parts > 1.0 ? bulge_of_share(piece.bulge, 1.0 / parts) : piece.bulge;
        for (double k = 0.0; k < parts; ++k) {
            const Point to = k + 1.0 < parts ? point_at(piece, (k + 1.0) / parts) : piece.to;
            boxes.push_back(box_of_piece({k > 0.0 ? point_at(piece, k / parts) : piece.from, to, bulge}));
            pieces.push_back(i);
        }
    }
    if (boxes.size() > n) {
        take_parts(boxes, pieces);
    }
}

// Along a Z-curve, for long pieces side by side would share none of the tree's smaller boxes.
void Near::take_parts(const std::vector<Box>& boxes, const std::vector<std::uint32_t>& pieces) {
    Box all;
    for (const Box& box : boxes) {
        all.add(box);
    }
    std::vector<std::uint64_t> keys;
    keys.reserve(boxes.size());
    for (const Box& box : boxes) {
        keys.push_back(static_cast<std::uint64_t>(z_key(0.5 * (box.low + box.high), all)) << 32 | keys.size());
    }
    std::sort(keys.begin(), keys.end());
    std::vector<Box> sorted;
    sorted.reserve(boxes.size());
    for (const std::uint64_t key : keys) {
        const auto i = static_cast<std::uint32_t>(key);
        sorted.push_back(boxes[i]);
        piece_of_part_.push_back(pieces[i]);
    }
    parts_ = BoxTree(std::move(sorted));
}

namespace {

// Square of the distance from a point to a box.
double square_to(const Box& box, Point p) {
    const double x = std::max({0.0, box.low.x - p.x, p.x - box.high.x});
    const double y = std::max({0.0, box.low.y - p.y, p.y - box.high.y});
    return x * x + y * y;
}

} // namespace

// Boxes farther away than the nearest piece so far are not opened, and of four the nearest is opened first.
Near::Found Near::nearest(Point p, double reach_mm, std::size_t but) const {
    struct Branch {
        double square;
        std::size_t level, index;
    };
    constexpr std::size_t fan = BoxTree::fan;
    const bool in_parts = !piece_of_part_.empty();
    const BoxTree& tree = in_parts ? parts_ : tree_;
    Found best;
    double least = reach_mm * reach_mm;
    Branch stack[fan * 32]; // as in BoxTree::find
    std::size_t depth = 0;
    if (!row_.pieces.empty()) {
        stack[depth++] = {0.0, tree.levels() - 1, 0};
    }
    while (depth > 0) {
        const Branch at = stack[--depth];
        if (at.square > least) {
            continue;
        }
        if (at.level == 0) {
            const std::size_t piece = in_parts ? piece_of_part_[at.index] : at.index;
            if (row_.contour[piece] == but) {
                continue;
            }
            const Point on = nearest_on(row_.pieces[piece], p);
            const double square = dot(on - p, on - p);
            // Of pieces just as near, which share a vertex, the last.
            if (square < least || (square == least && (best.contour == none || piece > best.piece))) {
                least = square;
                best = {0.0, on, row_.contour[piece], piece};
            }
            continue;
        }
        const std::size_t first = at.index * fan, end = std::min(first + fan, tree.count(at.level - 1));
        const std::size_t bottom = depth;
        for (std::size_t i = first; i < end; ++i) {
            const Branch next{square_to(tree.box(at.level - 1, i), p), at.level - 1, i};
            std::size_t k = depth++;
            for (; k > bottom && stack[k - 1].square < next.square; --k) {
                stack[k] = stack[k - 1];
            }
            stack[k] = next;
        }
    }
    best.mm = std::sqrt(least);
    return best;
}

Near::Found Near::nearest(Point p) const {
    return row_.pieces.empty() ? Found{} : nearest(p, norm(row_.pieces[0].from - p) + 1e-9);
}

Near::Width Near::width(Point p, Point into, double most_mm) const {
    double radius = 0.5 * most_mm;
    Width w;
    for (int i = 0; i < 30; ++i) {
        const Found found = nearest(p + radius * into, radius * (1.0 - 1e-7));
        if (found.contour == none) {
            break;
        }
        const Point across = found.at - p;
        const double depth = dot(across, into);
        const double smaller = depth > 0.0 ? dot(across, across) / (2.0 * depth) : radius;
        if (!(smaller < radius * (1.0 - 1e-9))) {
            break;
        }
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
    for (std::size_t i = 0; i < n; ++i) {
        area[i] = std::abs(area_mm2(outline_.contours[i]));
    }
    std::vector<std::size_t> parent(n, none);
    std::vector<int> winding(n, 0);
    for (std::size_t i = 0; i < n; ++i) {
        if (outline_.contours[i].points.size() < 2) {
            continue;
        }
        const Point p = point_at(piece_of(outline_.contours[i], 0), 0.5);
        tree_.find({p, {1e300, p.y}}, hits_);
        for (const std::uint32_t h : hits_) {
            winding[row_.contour[h]] += winding_of(row_.pieces[h], p);
        }
        for (const std::uint32_t h : hits_) {
            const std::size_t c = row_.contour[h];
            // Contours of one area hold each other only when they lie on each other: then the first holds the second.
            const bool larger = area[c] > area[i] || (area[c] == area[i] && c < i);
            if (winding[c] != 0 && c != i && larger && outline_.contours[c].role != Role::open &&
                (parent[i] == none || area[c] < area[parent[i]])) {
                parent[i] = c;
            }
            winding[c] = 0;
        }
    }
    return parent;
}

} // namespace torchside::part
