// Cells of one size, in rows. Layout only.
#pragma once

#include <cstddef>

#include "web/mirror/geometry.hpp"

namespace torchside::web {

struct Grid {
    Rect place; // where it begins, and its width
    std::size_t columns;
    float high; // a cell
    Point apart{8, 8};

    [[nodiscard]] std::size_t rows(std::size_t count) const { return (count + columns - 1) / columns; }
    [[nodiscard]] Rect cell(std::size_t i) const {
        const float w = (place.w - apart.x * static_cast<float>(columns - 1)) / static_cast<float>(columns);
        return {place.x + (w + apart.x) * static_cast<float>(i % columns),
                place.y + (high + apart.y) * static_cast<float>(i / columns), w, high};
    }
    /// Of so many cells, without a gap below the last row.
    [[nodiscard]] float height(std::size_t count) const {
        return (high + apart.y) * static_cast<float>(rows(count)) - apart.y;
    }
};

} // namespace torchside::web
