// Where two pieces meet. Internal to nesting.
#pragma once

#include <array>
#include <cstddef>

#include "core/part/piece.hpp"

namespace torchside::part {

constexpr double meeting_mm = 1e-6; // nearer is the same place

struct Meeting {
    std::size_t count = 0; // of points
    std::array<Point, 4> at{};
    bool overlap = false; // they share a length; at[0] is on it
};

[[nodiscard]] Meeting meeting_of(const Piece& a, const Piece& b);

} // namespace torchside::part
