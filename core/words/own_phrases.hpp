// Two phrases that no table has, for they have no words of their own. Internal to core/words.
#pragma once

#include "core/words/text.hpp"

namespace torchside::words {

inline constexpr Word as_it_is{0xFFFF}; // its one slot
inline constexpr Word by_units{0xFFFE}; // the first of two slots to a metric reader, else the second

} // namespace torchside::words
