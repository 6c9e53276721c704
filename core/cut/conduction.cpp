#include "core/cut/conduction.hpp"

#include <cmath>
#include <numbers>

namespace torchside::cut {
namespace {

constexpr double fit[] = {1.41169109, 0.31112078, 0.00906904, -0.00144780, -0.00012903};
constexpr double fit_low = 0.003;
constexpr double fit_high = 12.0;
constexpr double high_exponent = 0.33;

double fitted(double p) {
    const double l = std::log(p);
    return std::exp(fit[0] + l * (fit[1] + l * (fit[2] + l * (fit[3] + l * fit[4]))));
}

double fitted_slope(double p) {
    const double l = std::log(p);
    return fit[1] + l * (2.0 * fit[2] + l * (3.0 * fit[3] + l * 4.0 * fit[4]));
}

double slow_form(double p) {
    return 2.0 * std::numbers::pi / (std::log(2.0 / p) - std::numbers::egamma) - 4.0 * p;
}

} // namespace

double conduction_shape(double p) {
    if (p < fit_low) {
        return slow_form(p) * (fitted(fit_low) / slow_form(fit_low));
    }
    if (p > fit_high) {
        return fitted(fit_high) * std::pow(p / fit_high, high_exponent);
    }
    return fitted(p);
}

double conduction_slope(double p) {
    if (p > fit_high) {
        return high_exponent;
    }
    if (p >= fit_low) {
        return fitted_slope(p);
    }
    const double d = std::log(2.0 / p) - std::numbers::egamma;
    return (2.0 * std::numbers::pi / (d * d) - 4.0 * p) / slow_form(p);
}

} // namespace torchside::cut
