// A tree of boxes over a row of boxes: each level holds one box for four of the level below. For boxes
// that come in an order in which neighbours lie close together, as the pieces of a contour do: nothing is sorted.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"

namespace torchside::part {

class BoxTree {
public:
    explicit BoxTree(std::vector<Box> items);

    static constexpr std::size_t fan = 4;
    [[nodiscard]] std::size_t levels() const { return levels_.size(); }
    [[nodiscard]] std::size_t count(std::size_t level) const { return levels_[level].size(); }
    /// The numbers of the items that touch `box`, ascending; `hits` is emptied first.
    void find(const Box& box, std::vector<std::uint32_t>& hits) const;
    [[nodiscard]] const Box& box(std::size_t level, std::size_t i) const { return levels_[level][i]; }

private:
    std::vector<std::vector<Box>> levels_{}; // 0: the items
};

[[nodiscard]] inline bool apart(const Box& a, const Box& b) {
    return a.low.x > b.high.x || b.low.x > a.high.x || a.low.y > b.high.y || b.low.y > a.high.y;
}

[[nodiscard]] inline Box around(Point p, double reach) {
    return {{p.x - reach, p.y - reach}, {p.x + reach, p.y + reach}};
}

/// Where a point of the box comes on a Z-curve through it: points near each other mostly have keys near each other.
[[nodiscard]] std::uint32_t z_key(Point p, const Box& all);

/// The pieces of an outline in one row, contours in the order of a Z-curve.
struct PieceRow {
    explicit PieceRow(const Outline& outline);
    std::vector<Piece> pieces{};
    std::vector<std::uint32_t> contour{}; // of each piece: index in the outline
    std::vector<std::uint32_t> order{};   // contours
    std::vector<std::uint32_t> begin{};   // of each contour in `order`, and the end
};

[[nodiscard]] Box box_of_piece(const Piece& piece); // may be a little larger

} // namespace torchside::part
