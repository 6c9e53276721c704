#include "core/drawing/join_points.hpp"

#include <bit>
#include <cmath>

namespace torchside::drawing {

KeyTable::KeyTable(std::size_t most) : slots_(std::bit_ceil(2 * most + 2)) {}

std::size_t KeyTable::slot(std::uint64_t key) const {
    std::uint64_t mixed = (key ^ (key >> 31)) * 0x9e3779b97f4a7c15U;
    mixed = (mixed ^ (mixed >> 29)) * 0xbf58476d1ce4e5b9U;
    std::size_t i = (mixed ^ (mixed >> 32)) & (slots_.size() - 1);
    while (slots_[i].used && slots_[i].key != key) {
        i = (i + 1) & (slots_.size() - 1);
    }
    return i;
}

std::uint32_t& KeyTable::at(std::uint64_t key) {
    Slot& found = slots_[slot(key)];
    found.key = key;
    found.used = true;
    return found.number;
}

const std::uint32_t* KeyTable::find(std::uint64_t key) const {
    const Slot& found = slots_[slot(key)];
    return found.used ? &found.number : nullptr;
}

PointIndex::PointIndex(double tolerance, std::size_t most) : tolerance_(tolerance), cell_(4 * tolerance), cells_(most) {
    points_.reserve(most);
    before_.reserve(most);
}

// Columns and rows within +-2^30: 1e6 mm in cells of 0.004 mm at least.
std::uint64_t PointIndex::key(double column, double row) const {
    const auto part = [](double n) { return static_cast<std::uint32_t>(static_cast<std::int32_t>(n)); };
    return static_cast<std::uint64_t>(part(column)) << 32 | part(row);
}

std::uint32_t PointIndex::number(Point p) {
    const double column = std::floor(p.x / cell_), row = std::floor(p.y / cell_);
    const double in_x = p.x - column * cell_, in_y = p.y - row * cell_;
    std::uint32_t nearest = no_one;
    double nearest2 = tolerance_ * tolerance_ * (1 + 1e-9);
    const auto look = [&](double i, double j) {
        const std::uint32_t* last = cells_.find(key(i, j));
        for (std::uint32_t n = last ? *last : no_one; n != no_one; n = before_[n]) {
            const double dx = points_[n].x - p.x, dy = points_[n].y - p.y, d2 = dx * dx + dy * dy;
            if (d2 <= nearest2) {
                nearest2 = d2;
                nearest = n;
            }
        }
    };
    look(column, row);
    if (nearest != no_one && nearest2 == 0.0) {
        return nearest;
    }
    const int left = in_x < tolerance_ * 1.01 ? -1 : 0, right = in_x > cell_ - tolerance_ * 1.01 ? 1 : 0;
    const int below = in_y < tolerance_ * 1.01 ? -1 : 0, above = in_y > cell_ - tolerance_ * 1.01 ? 1 : 0;
    for (int i = left; i <= right; ++i) {
        for (int j = below; j <= above; ++j) {
            if (i != 0 || j != 0) {
                look(column + i, row + j);
            }
        }
    }
    if (nearest == no_one) {
        nearest = static_cast<std::uint32_t>(points_.size());
        points_.push_back(p);
        std::uint32_t& last = cells_.at(key(column, row));
        before_.push_back(last);
        last = nearest;
    }
    return nearest;
}

} // namespace torchside::drawing
