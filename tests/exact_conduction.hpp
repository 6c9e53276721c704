// The series of core/cut/conduction.hpp summed exactly, to hold the fit against.
//
// Range      | 0 < p <= 4   | relative error 1e-13                                          |
//            | 4 < p <= 8   | 5e-9: the terms alternate and cancel                          |
//            | 8 < p <= 12  | 1e-5; beyond 12 it must not be summed in double precision     |
#pragma once

#include <cmath>
#include <numbers>

namespace torchside::test {

/// Modified Bessel functions of integer order n >= 0, 0 < x <= 12; relative error <= 1e-13.
inline double bessel_i(int n, double x) {
    double term = 1.0;
    for (int k = 1; k <= n; ++k) {
        term *= 0.5 * x / k;
    }
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
inline double bessel_k(int n, double x) {
    constexpr double h = 0.125;
    double sum = 0.5 * std::exp(-x);
    for (int k = 1;; ++k) {
        const double t = k * h;
        const double term = std::exp(-x * std::cosh(t)) * std::cosh(n * t);
        sum += term;
        if (x * std::sinh(t) > n && term < 1e-18 * sum) {
            return h * sum;
        }
    }
}

inline double heat_shape_exact(double p) {
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
        if (n > p && term < 1e-18 * std::abs(sum)) {
            break;
        }
    }
    return 2.0 * std::numbers::pi * p * sum;
}

inline double conduction_shape_exact(double p) {
    return heat_shape_exact(p) - 4.0 * p;
}

} // namespace torchside::test
