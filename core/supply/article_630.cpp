#include "core/supply/article_630.hpp"

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
