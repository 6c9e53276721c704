// What reading a drawing can find, each with its code, its weight and its sentence: one table, so that the module that
// reads and the app that shows need to hand over no more than a number.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/drawing/part_words.hpp"

namespace torchside::drawing {

enum class Found : std::uint8_t {
    unit_unknown,
    not_read,
    elsewhere,
    hidden,
    flattened,
    tilted,
    open_contour,
    branch,
    duplicate,
    short_piece,
    crossing,
    overlap,
    no_area,
    unchecked,
    style_transform,
    fit_points,
    last = fit_points
};

constexpr std::size_t most_of_a_problem = 100; // of each kind are listed

[[nodiscard]] Problem problem(Found found, Point at, double size_mm = 0.0);
/// Adds it unless there are many of its kind.
void report(std::vector<Problem>& problems, Found found, Point at, double size_mm = 0.0);
/// Which it was: of a problem that problem() made.
[[nodiscard]] Found found_of(const Problem& problem);

} // namespace torchside::drawing
