#include "web/kit/plot.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::web {

float linear_share(double value, double low, double high) {
    return high > low ? static_cast<float>(std::clamp((value - low) / (high - low), 0.0, 1.0)) : 0.0F;
}

float log_share(double value, double low, double high) {
    return linear_share(std::log(std::max(value, low)), std::log(low), std::log(high));
}

} // namespace torchside::web
