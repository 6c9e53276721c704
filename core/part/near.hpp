// What lies near a point of an outline, how wide it is there, and which contour lies within which.
//
// Formula    width     the largest disc that touches the outline at a point of a piece and holds no part of it: radius
//                      |q - p|^2 / (2 n (q - p)) for the nearest other point q, repeated until none is nearer
//            parent    the contour of least area that a ray from a contour's first piece winds about
// Source     geometry; shrinking discs: Ma, Bae, Choi 2012 (from memory)
// Range      200 000 pieces: a search looks at some tens of boxes
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/part/box_tree.hpp"

namespace torchside::part {

class Near {
public:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    explicit Near(const Outline& outline);

    struct Found {
        double mm = 0.0;
        Point at{};
        std::size_t contour = none; // none: nothing within reach
        std::size_t piece = 0;      // of `row`
    };
    /// The nearest point of the outline no farther than `reach_mm`, the contour `but` left out.
    [[nodiscard]] Found nearest(Point p, double reach_mm, std::size_t but = none) const;
    /// However far away; an outline without pieces has none.
    [[nodiscard]] Found nearest(Point p) const;

    struct Width {
        double mm = 0.0; // at most the one asked for
        Point middle{};
        Found other{}; // what is opposite
    };
    /// How wide it is from p, a point of the outline, towards the unit vector `into`.
    [[nodiscard]] Width width(Point p, Point into, double most_mm) const;

    /// Of each contour the one it lies in, or none.
    [[nodiscard]] std::vector<std::size_t> parents();

    [[nodiscard]] const PieceRow& row() const { return row_; }
    [[nodiscard]] const BoxTree& tree() const { return tree_; }

private:
    void take_parts(const std::vector<Box>& boxes, const std::vector<std::uint32_t>& pieces);
    const Outline& outline_;
    PieceRow row_;
    BoxTree tree_;
    // Of long slanting pieces, whose boxes say little, several parts each; without such pieces empty.
    std::vector<std::uint32_t> piece_of_part_{};
    BoxTree parts_{{}};
    std::vector<std::uint32_t> hits_{}; // of the search under way
};

} // namespace torchside::part
