// A table's inches as the nearest millimetres, so that 3/16 from a table is the same double as "3/16" typed. Internal
// to core/stock. Holds for up to 6 decimals of an inch, which every table has: then 25.4 times it has at most 7.
#pragma once

#include <cmath>

#include "core/quantity/quantity.hpp"

namespace torchside::stock {

inline Length table_inches(double thickness_in) {
    return {std::round(thickness_in * 254e6) / 1e7, mm};
}

} // namespace torchside::stock
