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

double bessel_i(int n, double x) {
    double term = 1.0;
    for (int k = 1; k <= n; ++k)
        term *= 0.5 * x / k;
    double sum = term;
    const double q = 0.25 * x * x;
    for (int k = 1; term > 1e-18 * sum; ++k) {
        term *= q / (static_cast<double>(k) * (n + k));
        sum += term;
    }
    return sum;
}

// K_n(x) = integral over t >= 0 of exp(-x cosh t) cosh(n t). The trapezium rule converges exponentially here, because
// the integrand and all its derivatives are even at 0 and vanish at infinity.
double bessel_k(int n, double x) {
    constexpr double h = 0.125;
    double sum = 0.5 * std::exp(-x);
    for (int k = 1;; ++k) {
        const double t = k * h;
        const double term = std::exp(-x * std::cosh(t)) * std::cosh(n * t);
        sum += term;
        if (x * std::sinh(t) > n && term < 1e-18 * sum)
            return h * sum;
    }
}

double heat_shape_exact(double p) {
    const double k0 = bessel_k(0, p);
    double ratio = bessel_k(1, p) / k0; // K_{n+1} / K_n
    const double i0 = bessel_i(0, p);
    double sum = i0 * i0 * ratio;
    for (int n = 1; n < 200; ++n) {
        const double before = 1.0 / ratio; // K_{n-1} / K_n
        ratio = before + 2.0 * n / p;
        const double in = bessel_i(n, p);
        const double term = in * in * (before + ratio); // eps_n = 2 and the half of K_n' cancel
        sum += n % 2 == 0 ? term : -term;
        if (n > p && term < 1e-18 * std::abs(sum))
            break;
    }
    return 2.0 * std::numbers::pi * p * sum;
}

double conduction_shape_exact(double p) {
    return heat_shape_exact(p) - 4.0 * p;
}

double conduction_shape(double p) {
    if (p < fit_low)
        return slow_form(p) * (fitted(fit_low) / slow_form(fit_low));
    if (p > fit_high)
        return fitted(fit_high) * std::pow(p / fit_high, high_exponent);
    return fitted(p);
}

double conduction_slope(double p) {
    if (p > fit_high)
        return high_exponent;
    if (p >= fit_low)
        return fitted_slope(p);
    const double d = std::log(2.0 / p) - std::numbers::egamma;
    return (2.0 * std::numbers::pi / (d * d) - 4.0 * p) / slow_form(p);
}

} // namespace torchside::cut
