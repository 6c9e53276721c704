// How far a size may be off by ISO 9013, tolerance class 2.
//
// What       The limit deviation (plus or minus) of a nominal dimension, by thickness. Class 2 is the usual one for
//            plasma.
// Source     assets/data/part_deviations.json: a reproduction that agrees with the 2017 edition (seen). The
//            2002 edition had tighter figures for thin plate and larger sizes: always say the edition.
// Range      thickness above 0 to 20 mm, sizes from above 0 to below 8000 mm; thicker plate is not at hand
// Edges      the table has no value for some small sizes (below 3 mm in more than 6.3 mm) and large ones (from 4000 mm
//            in at most 1 mm): `outside_table`
// Example    100 mm in 6 mm plate: +-0.9 mm. 2 mm in 12 mm plate: no value.
#pragma once

#include <string_view>

#include "core/quantity/quantity.hpp"

namespace torchside::part {

inline constexpr std::string_view deviation_edition = "ISO 9013:2017, class 2";

struct Deviation {
    enum class State { given, outside_table, not_at_hand };
    State state = State::not_at_hand;
    Length either_way{}; // when given
};

[[nodiscard]] Deviation deviation(Length size, Length thickness);

} // namespace torchside::part
