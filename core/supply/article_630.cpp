#include "core/supply/article_630.hpp"

#include <algorithm>
#include <functional>
#include <vector>

namespace torchside::supply {
namespace {

struct Multiplier {
    int duty; // percent
    double plain, motor_generator;
};
struct Standard {
    double rating;
};

constexpr Multiplier multipliers[] = {
// falling duty
#include "generated/welder_multipliers.inc"
};
constexpr Standard standards[] = {
// rising
#include "generated/standard_breakers.inc"
};

constexpr double duty_slack = 1e-9; // percent; 0.6 x 100 is not 60 in binary

} // namespace

double welder_multiplier(double duty, bool motor_generator) {
    const Multiplier* found = multipliers;
    for (const Multiplier& row : multipliers) {
        if (row.duty >= duty * 100 - duty_slack) {
            found = &row;
        }
    }
    return motor_generator ? found->motor_generator : found->plain;
}

Current welder_group(std::span<const Current> adjusted) {
    std::vector<Current> falling(adjusted.begin(), adjusted.end());
    std::sort(falling.begin(), falling.end(), std::greater<>{});
    Current sum{};
    for (std::size_t i = 0; i < falling.size(); ++i) {
        sum = sum + (i < 2 ? 1.0 : i == 2 ? 0.85 : i == 3 ? 0.70 : 0.60) * falling[i];
    }
    return sum;
}

DeviceLimit welder_device(Current i1max_or_ampacity) {
    DeviceLimit found{2.0 * i1max_or_ampacity, {}, {}};
    for (const Standard& row : standards) {
        const Current rating{row.rating, ampere};
        if (rating <= found.limit) {
            found.standard = found.permitted = rating;
        } else if (!found.standard || *found.standard < found.limit) {
            found.permitted = rating;
            break;
        }
    }
    return found;
}

} // namespace torchside::supply
