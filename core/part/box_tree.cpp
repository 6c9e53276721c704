#include "core/part/box_tree.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace torchside::part {

namespace {

// The bits of two 16-bit numbers by turns.
std::uint32_t by_turns(std::uint32_t x, std::uint32_t y) {
    const auto spread = [](std::uint32_t n) {
        n = (n | n << 8) & 0x00ff00ffU;
        n = (n | n << 4) & 0x0f0f0f0fU;
        n = (n | n << 2) & 0x33333333U;
        return (n | n << 1) & 0x55555555U;
    };
    return spread(x) | spread(y) << 1;
}

std::uint32_t share(double value, double low, double size) {
    return size > 0.0 ? static_cast<std::uint32_t>(std::clamp((value - low) / size, 0.0, 1.0) * 65535.0) : 0U;
}

} // namespace

std::uint32_t z_key(Point p, const Box& all) {
    return by_turns(share(p.x, all.low.x, all.width()), share(p.y, all.low.y, all.height()));
}

BoxTree::BoxTree(std::vector<Box> items) {
    levels_.push_back(std::move(items));
    while (levels_.back().size() > 1) {
        const std::vector<Box>& below = levels_.back();
        std::vector<Box> level((below.size() + fan - 1) / fan);
        for (std::size_t i = 0; i < below.size(); ++i) {
            Box& box = level[i / fan];
            box.low = {std::min(box.low.x, below[i].low.x), std::min(box.low.y, below[i].low.y)};
            box.high = {std::max(box.high.x, below[i].high.x), std::max(box.high.y, below[i].high.y)};
        }
        levels_.push_back(std::move(level));
    }
}

void BoxTree::find(const Box& box, std::vector<std::uint32_t>& hits) const {
    hits.clear();
    if (levels_.front().empty()) {
        return;
    }
    struct Branch {
        std::size_t level, index;
    };
    Branch stack[fan * 32]; // at most four wait on each level, and 32 levels hold more than there can be
    std::size_t depth = 0;
    stack[depth++] = {levels_.size() - 1, 0};
    while (depth > 0) {
        const Branch at = stack[--depth];
        if (apart(levels_[at.level][at.index], box)) {
            continue;
        }
        if (at.level == 0) {
            hits.push_back(static_cast<std::uint32_t>(at.index));
            continue;
        }
        const std::size_t first = at.index * fan;
        for (std::size_t i = std::min(first + fan, levels_[at.level - 1].size()); i-- > first;) {
            stack[depth++] = {at.level - 1, i};
        }
    }
}

PieceRow::PieceRow(const Outline& outline) {
    const std::size_t n = outline.contours.size();
    std::vector<Point> first(n);
    Box all;
    for (std::size_t i = 0; i < n; ++i) {
        first[i] = outline.contours[i].points.empty() ? Point{} : outline.contours[i].points.front().at;
        all.add(first[i]);
        order.push_back(static_cast<std::uint32_t>(i));
    }
    std::vector<std::uint64_t> keys(n);
    for (std::size_t i = 0; i < n; ++i) {
        keys[i] = static_cast<std::uint64_t>(z_key(first[i], all)) << 32 | i;
    }
    std::sort(keys.begin(), keys.end());
    for (std::size_t i = 0; i < n; ++i) {
        order[i] = static_cast<std::uint32_t>(keys[i]);
        const Contour& c = outline.contours[order[i]];
        begin.push_back(static_cast<std::uint32_t>(pieces.size()));
        for (std::size_t k = 0; k < piece_count(c); ++k) {
            pieces.push_back(piece_of(c, k));
            contour.push_back(order[i]);
        }
    }
    begin.push_back(static_cast<std::uint32_t>(pieces.size()));
}

Box box_of_piece(const Piece& p) {
    Box box;
    box.add(p.from);
    box.add(p.to);
    if (p.straight() || p.from == p.to) {
        return box;
    }
    if (std::abs(p.bulge) <= 1.0) { // up to half a circle: within the rectangle on its chord
        const Point out = -0.5 * p.bulge * left_of(p.to - p.from);
        box.add(p.from + out);
        box.add(p.to + out);
        return box;
    }
    const Arc arc = arc_of(p);
    box.add(arc.centre - Point{arc.radius, arc.radius});
    box.add(arc.centre + Point{arc.radius, arc.radius});
    return box;
}

} // namespace torchside::part
