// Where a size of a shape lies on it, so that a picture can show it and a hand can take its end.
//
// What       The line that measures the size, with the end that moves when the size grows, the way it moves, and by how
//            much the size grows for each millimetre of it: 2 where the middle stays.
// Source     own layout, of core/part/shapes.hpp
// Range      shapes that make_outline() makes
// Edges      none for a size that cannot be seen on the part: the number of holes, the edge distance of a single hole in
//            the middle, the bore of a flange without one.
// Example    a plate 120 x 80: "length_mm" is the line from 0,0 to 120,0; its end moves to the right, 1 for 1.
#pragma once

#include <optional>
#include <string_view>

#include "core/part/outline.hpp"
#include "core/part/part_spec.hpp"

namespace torchside::part {

struct Dimension {
    Point from{}, to{}; // the end that moves is `to`
    Point way{};        // of length 1
    double gain = 1;
    bool outer = false; // it measures the whole part, and stands beside it
};

/// `key` as in the workbook, after "job.part.".
[[nodiscard]] std::optional<Dimension> dimension_of(const PartSpec& spec, std::string_view key);

/// The size that the end at another place means: `was` with the end moved by `by`, to the nearest step.
/// Example: 100 mm of a gain of 1, its end 13 mm further along its way, by steps of 5 mm: 115 mm.
[[nodiscard]] double dragged_mm(const Dimension& line, double was_mm, Point by_mm, double step_mm);

/// The step that a size is dragged by: the smallest of the trade's steps that a hand can tell apart at this scale.
/// Millimetres: 0.5, 1, 5, 10, 50, 100; inches: 1/16, 1/8, 1/4, 1/2, 1, 5. At 2 px/mm it is 5 mm, for 1 mm would be 2 px.
[[nodiscard]] double drag_step_mm(double px_mm, bool metric);

} // namespace torchside::part
