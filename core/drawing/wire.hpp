// A drawing as a row of numbers, to hand it from the module that reads to the app: unit, whether it is known, counts;
// then how many problems, each by its number in problems.hpp with place and size; then how many contours, each
// with its role, how many points, and x, y, bulge of each.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/drawing/drawing.hpp"

namespace torchside::drawing {

[[nodiscard]] std::vector<double> pack(const Drawing& drawing);

/// None when the row is not one that pack() made.
[[nodiscard]] std::optional<Drawing> unpack(std::span<const double> row);

} // namespace torchside::drawing
