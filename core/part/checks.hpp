// What of a part is hard to cut well in this plate, and what its sizes will be.
//
// What       small_hole     (caution) an inside contour narrower than the plate is thick
//            outside_9013   (note)    a hole so small that ISO 9013 gives no deviation for it in this plate
//            thin_bridge    (caution) metal between two cuts, or between two sides of a contour, narrower than two
//            kerfs Sizes: box of each outer contour; diameter of a round inner one, box of another; what they come out
//            as when cut on the line, what to draw instead, and the deviation of ISO 9013 class 2.
// Formula    an inside contour's size is its diameter when round, else the lesser of its box's sides and of the
//            diameter of equal area. A bridge is measured by the disc that fits between its two sides, which must lie
//            nearly opposite (150 degrees or more), and then from side to side where it is narrowest
//            The two sides are looked at every two kerfs, and at least once on each piece; of more than 50 000 such
//            places, some 160 m of outline, in steps as much longer.
// Source     small hole, thin bridge: common practice, no source. Deviations: deviation.hpp
// Range      thickness above 0 to 150 mm, kerf 0 to 15 mm
// Edges      a sharp outside corner of less than 30 degrees counts as a bridge near its tip: it burns away. One bridge
//            is named once for two contours, at its narrowest; at most 50 of one contour with itself.
// Example    5 mm hole in 6 mm plate: small_hole. 2 mm hole in 8 mm plate: both. 12 mm in 6 mm: neither. A 100 mm
//            outside with a 1.6 mm kerf comes out 98.4 mm cut on the line, is drawn 101.6, +-0.9 mm in 6 mm plate.
#pragma once

#include <cstddef>
#include <vector>

#include "core/part/deviation.hpp"
#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::part {

/// How wide an inside contour is where it is narrowest.
[[nodiscard]] double inside_size_mm(const Contour& contour);

[[nodiscard]] std::vector<Problem> check_part(const Outline& outline, Length thickness, Length kerf);

struct PartSize {
    enum class What { width, height, diameter };
    std::size_t contour = 0;
    What what = What::width;
    Length drawn{};
    Length on_line{}; // what it measures when cut without compensation
    Length draw{};    // what to draw so that it then measures `drawn`
    Deviation deviation{};
};

/// Of every closed contour.
[[nodiscard]] std::vector<PartSize> sizes_of(const Outline& outline, Length thickness, Length kerf);

} // namespace torchside::part
