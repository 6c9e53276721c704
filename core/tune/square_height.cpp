#include "core/tune/square_height.hpp"

#include <cmath>
#include <numbers>

#include "core/quantity/estimate.hpp"
#include "core/tune/diagnosis_rules.hpp"
#include "core/tune/gaussian.hpp"
#include "core/tune/squareness.hpp"

namespace torchside::tune {

TaperAt looks_square(Length height) {
    return {height, 0.0, reading_rules().taper_square_deg / std::numbers::sqrt3};
}

TaperAt measured_taper(Length height, Length kerf_top, Length kerf_bottom, Length thickness) {
    const Length off{std::numbers::sqrt2 * reading_rules().kerf_reading_mm, mm};
    return {height, face_angle_deg(kerf_top, kerf_bottom, thickness), face_angle_deg(off, Length{}, thickness)};
}

std::optional<SquareHeight> square_height(std::span<const TaperAt> legs) {
    if (legs.empty()) {
        return std::nullopt;
    }
    double h0 = 0.0;
    for (const TaperAt& leg : legs) {
        h0 += leg.height.in(mm) / static_cast<double>(legs.size());
    }
    const Rules& rules = reading_rules();
    const double sd[] = {rules.taper_open_deg, rules.deg_per_mm_height_sd};
    Gaussian line = Gaussian::independent(sd);
    line.mean[1] = rules.deg_per_mm_height;
    for (const TaperAt& leg : legs) {
        line.observe({1.0, leg.height.in(mm)-h0}, leg.angle_deg, leg.sd_deg * leg.sd_deg);
    }
    // theta^2 = k^2 var(theta), a quadratic in h - h0; it bounds an interval only while b stands clear of nought.
    const double a = line.mean[0];
    const double b = line.mean[1];
    const double k2 = band80_sd * band80_sd;
    const double square = b * b - k2 * line.cov[1][1];
    const double half = a * b - k2 * line.cov[0][1];
    const double rest = a * a - k2 * line.cov[0][0];
    const double root = half * half - square * rest;
    if (!(b > 0.0 && square > 0.0 && root >= 0.0)) {
        return std::nullopt;
    }
    SquareHeight s;
    s.height = Length{h0 - a / b, mm};
    s.low = Length{h0 + (-half - std::sqrt(root)) / square, mm};
    s.high = Length{h0 + (-half + std::sqrt(root)) / square, mm};
    s.deg_per_mm = b;
    return s;
}

} // namespace torchside::tune
