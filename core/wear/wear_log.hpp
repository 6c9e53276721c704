// What the user knows about their consumables. Ranges: core/schema/schema*.cpp.
#pragma once

#include <vector>

#include "core/quantity/quantity.hpp"

namespace torchside::wear {

enum class Ended { worn, pulled }; // pulled: changed before it failed, a censored observation

struct ConsumableSet {
    int starts = 0;
    Duration arc{0, minute};
    Ended ended = Ended::worn;
};

struct InUse {
    int starts = 0;
    Duration arc{0, minute};
};

struct WearLog {
    std::vector<ConsumableSet> sets{};
    double set_price = 18.0; // in the currency of the rates
    InUse now{};
};

} // namespace torchside::wear
