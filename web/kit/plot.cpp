#include "web/kit/plot.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace torchside::web {

float linear_share(double value, double low, double high) {
    return high > low ? static_cast<float>(std::clamp((value - low) / (high - low), 0.0, 1.0)) : 0.0F;
}

float log_share(double value, double low, double high) {
    return linear_share(std::log(std::max(value, low)), std::log(low), std::log(high));
}

Point on_circle(Point centre, float radius, float turn) {
    const float angle = 2 * std::numbers::pi_v<float> * turn;
    return {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)};
}

} // namespace torchside::web
