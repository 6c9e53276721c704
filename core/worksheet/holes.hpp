// The holes of a part by size, and whether they come out: the good ones too.
//
// What       Inner contours of one size are one finding. A hole is poor when it is narrower than the plate is thick,
//            small when it is narrower than the least that comes out round with this kerf, else good.
// Formula    size      the narrowest of width, height and the circle of equal area, to 0.01 mm
//            least     the settings' smallest hole, up to 0.1 mm: it is an estimate, and what is shown must decide
// Source     the rules of core/part/checks.hpp and core/cut/rules.hpp.
// Edges      without settings (the plate is refused) nothing is said of any hole: the list is empty.
// Example    120 x 120 mm plate of 6 mm with four 13 mm holes, least 9.5 mm: one entry, 4 good holes of 13 mm.
#pragma once

#include <vector>

#include "core/worksheet/worksheet.hpp"

namespace torchside {

enum class HoleState { poor, small, good };

struct Holes {
    Length size{};
    int count = 0;
    HoleState state = HoleState::good;
};

/// The smallest hole as it is judged by, and as it is shown in this system: to 0.1 mm or 0.001 in, up, so that a hole of
/// the size that is shown is good.
[[nodiscard]] Length least_hole(const cut::Settings& settings, UnitSystem shown = UnitSystem::metric);

/// Smallest first.
[[nodiscard]] std::vector<Holes> holes_of(const Worksheet& worksheet, Length thickness);

} // namespace torchside
