#include "core/tune/quantile.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/tune/window.hpp"

namespace torchside::tune {

double normal_quantile(double p) {
    p = std::clamp(p, 1e-300, 1.0 - 1e-16);
    const bool upper = p > 0.5;
    const double tail = upper ? 1.0 - p : p;
    const double t = std::sqrt(-2.0 * std::log(tail));
    double x =
        -(t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
    for (int i = 0; i < 3; ++i) {
        const double density = std::exp(-0.5 * x * x) / std::sqrt(2.0 * std::numbers::pi);
        const double step = (normal_cdf(x) - tail) / density;
        x -= step / (1.0 + 0.5 * x * step);
    }
    return upper ? -x : x;
}

} // namespace torchside::tune
