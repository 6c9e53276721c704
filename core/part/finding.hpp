// What reading a drawing found where, as the job keeps it. The sentence and weight of each kind: core/drawing/problems.
#pragma once

#include <cstdint>

#include "core/quantity/quantity.hpp"

namespace torchside::part {

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
    inside_out, // new kinds come last: a link keeps a kind by its number
    face,
    cut_short,
    last = cut_short
};

struct Finding {
    Found code = Found::not_read;
    Length x{}; // on the plate's plane, as the outline's points
    Length y{};
    Length size{}; // the gap, the length it is about; 0: none

    friend bool operator==(const Finding&, const Finding&) = default;
};

} // namespace torchside::part
