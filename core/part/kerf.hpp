// What the kerf does to sizes, and what sizes say about the kerf.
//
// Formula    cut on the line, an outside size comes out as drawn less the kerf, an inside size as drawn plus the kerf;
//            so kerf = drawn - measured outside, measured - drawn inside, and offset = kerf / 2.
// Source     geometry
// Range      any sizes
// Example    a 50 mm square measures 48.35 mm: kerf 1.65 mm, offset 0.825 mm. To measure 50 it is drawn 51.65 mm, or
//            cut with that offset.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::part {

/// Kerf from a size cut on the line.
[[nodiscard]] constexpr Length kerf_from(Length drawn, Length measured, bool inside) {
    return inside ? measured - drawn : drawn - measured;
}

/// What a size measures when it is cut on the line.
[[nodiscard]] constexpr Length comes_out(Length drawn, Length kerf, bool inside) {
    return inside ? drawn + kerf : drawn - kerf;
}

/// What to draw so that, cut on the line, it measures what is wanted.
[[nodiscard]] constexpr Length draw_for(Length wanted, Length kerf, bool inside) {
    return comes_out(wanted, kerf, !inside);
}

} // namespace torchside::part
