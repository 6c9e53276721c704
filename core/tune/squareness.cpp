#include "core/tune/squareness.hpp"

#include <cmath>
#include <numbers>

namespace torchside::tune {
namespace {

struct RangeRow {
    int range;
    double base_mm;
    double per_mm;
};

constexpr RangeRow ranges[] = {
#include "generated/tune_squareness.inc"
};

struct ZoneRow {
    double up_to_mm;
    double zone_mm;
    double per_mm;
};

constexpr ZoneRow zones[] = {
#include "generated/tune_edge_zone.inc"
};

constexpr double degree = std::numbers::pi / 180.0;

// Measured in tenths and hundredths of a millimetre: a u that is the limit to the last bit but one is within it.
constexpr double hair_mm = 1e-9;

bool covered(Length thickness) {
    return thickness.in(mm) >= 0.5 && thickness.in(mm) <= 150.0;
}

} // namespace

double face_angle_deg(Length kerf_top, Length kerf_bottom, Length thickness) {
    return std::atan((kerf_top - kerf_bottom) / (2.0 * thickness)) / degree;
}

double lag_angle_deg(Length lag, Length thickness) {
    return std::atan(lag / thickness) / degree;
}

Length edge_zone(Length thickness) {
    for (const ZoneRow& row : zones) {
        if (thickness.in(mm) <= row.up_to_mm) {
            return Length{row.zone_mm + row.per_mm * thickness.in(mm), mm};
        }
    }
    return Length{std::end(zones)[-1].zone_mm, mm};
}

Length out_of_square(double angle_deg, Length thickness) {
    return std::tan(std::abs(angle_deg) * degree) * (thickness - 2.0 * edge_zone(thickness));
}

std::optional<Length> squareness_limit(int range, Length thickness) {
    if (!covered(thickness)) {
        return std::nullopt;
    }
    for (const RangeRow& row : ranges) {
        if (row.range == range) {
            return Length{row.base_mm + row.per_mm * thickness.in(mm), mm};
        }
    }
    return std::nullopt;
}

std::optional<int> squareness_range(Length u, Length thickness) {
    for (const RangeRow& row : ranges) {
        const std::optional<Length> limit = squareness_limit(row.range, thickness);
        if (limit && u.in(mm) <= limit->in(mm) + hair_mm) {
            return row.range;
        }
    }
    return std::nullopt;
}

Faces faces(double left_deg, double right_deg) {
    return {0.5 * (left_deg + right_deg), 0.5 * (left_deg - right_deg)};
}

} // namespace torchside::tune
