#include "core/quantity/print_band.hpp"

#include <cmath>

#include "core/quantity/print.hpp"

namespace torchside {

namespace {

constexpr double tens[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// 10^exponent * mantissa is the step: mantissa 1, 2 or 5.
struct Step {
    int mantissa = 0; // 0: no step
    int exponent = 0;
};

Step step_of(double spread) {
    constexpr int finest = -9, coarsest = 15;
    const double limit = spread / 25.0;
    if (!(limit > 0.0) || !(limit < 1e300)) {
        return {};
    }
    for (int e = coarsest; e >= finest; --e) {
        for (const int m : {5, 2, 1}) {
            const double step = e >= 0 ? m * tens[e] : m / tens[-e];
            if (step <= limit) {
                return {m, e};
            }
        }
    }
    return {};
}

double rounded(double value, Step s) {
    if (s.mantissa == 0 || !std::isfinite(value)) {
        return value;
    }
    const double up = s.exponent < 0 ? tens[-s.exponent] : 1.0, down = s.exponent > 0 ? tens[s.exponent] : 1.0;
    // Divided last: 132.4 comes out as the double nearest to 132.4.
    return std::round(value * up / (down * s.mantissa)) * s.mantissa * down / up;
}

} // namespace

PrintedBand print_band(double value, double low, double high, std::string_view unit, Units units) {
    const Step step = step_of(high - low);
    // No band: the figure is exact, and is shown to six figures at most.
    const auto show = [&](double x) {
        return step.mantissa == 0 ? print_trimmed(x,
                                                  std::abs(x) < 10     ? 4
                                                  : std::abs(x) < 1000 ? 2
                                                                       : 0,
                                                  units)
                                  : print_fixed(rounded(x, step), step.exponent < 0 ? -step.exponent : 0, units);
    };
    return {show(value), show(low), show(high), unit};
}

PrintedBand print(const Estimate<Length>& estimate, Units units) {
    const auto unit = units.metric() ? mm : inch;
    return print_band(estimate.value.in(unit), estimate.low.in(unit), estimate.high.in(unit),
                      units.metric() ? "mm" : "in", units);
}

PrintedBand print(const Estimate<Speed>& estimate, Units units) {
    const auto unit = units.metric() ? mm_min : in_min;
    return print_band(estimate.value.in(unit), estimate.low.in(unit), estimate.high.in(unit),
                      units.metric() ? "mm/min" : "in/min", units);
}

PrintedBand print(const Estimate<Voltage>& estimate, Units units) {
    return print_band(estimate.value.in(volt), estimate.low.in(volt), estimate.high.in(volt), "V", units);
}

PrintedBand print(const Estimate<Duration>& estimate, Units units) {
    return print_band(estimate.value.in(second), estimate.low.in(second), estimate.high.in(second), "s", units);
}

} // namespace torchside
