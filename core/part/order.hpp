// In which order contours are cut.
//
// What       What lies within a contour before the contour, of those that are free to be cut the nearest next: a hole
//            comes out before the part that holds it, a part before the hole it lies in.
// Source     common practice, no source
// Range      up to 2000 contours side by side are searched for the nearest; more are taken in strips, to and fro.
#pragma once

#include <cstddef>
#include <vector>

#include "core/part/outline.hpp"

namespace torchside::part {

/// Where a contour's cut begins and where it ends.
struct Stop {
    Point begin{};
    Point end{};
};

/// `parents` as Near::parents() gives them, for each contour. From `from` on.
[[nodiscard]] std::vector<std::size_t> cutting_order(const std::vector<std::size_t>& parents,
                                                     const std::vector<Stop>& stops, Point from);

} // namespace torchside::part
