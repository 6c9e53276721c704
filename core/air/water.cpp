#include "core/air/water.hpp"

#include <algorithm>
#include <cmath>

#include "core/air/receiver.hpp"

namespace torchside::air {
namespace {

struct WaterClass {
    int number;
    double dew_point;
};
constexpr WaterClass classes[] = {
// driest first
#include "generated/water_classes.inc"
};

constexpr double kelvin = 273.15;
constexpr double magnus_hpa = 6.112, magnus_a = 17.62, magnus_b = 243.12;
constexpr double driest_c = -100;

double saturated_hpa(double t) {
    return magnus_hpa * std::exp(magnus_a * t / (magnus_b + t));
}

double compression(Pressure gauge) {
    return (gauge + atmosphere) / atmosphere;
}

} // namespace

double saturated_g_m3(double t) {
    return 216.68 * saturated_hpa(t) / (t + kelvin);
}

double condensate_g_m3(const TankAir& air) {
    const double in = air.humidity * saturated_g_m3(air.intake_c);
    const double kept =
        saturated_g_m3(air.tank_c) / compression(air.tank) * (air.tank_c + kelvin) / (air.intake_c + kelvin);
    return std::max(0.0, in - kept);
}

double dew_point_c(const TankAir& air) {
    const double vapour = air.humidity * saturated_hpa(air.intake_c) * compression(air.tank);
    const double saturated = saturated_hpa(air.tank_c);
    if (vapour >= saturated) {
        return air.tank_c;
    }
    const double x = std::log(std::max(vapour, 1e-12) / magnus_hpa);
    return std::max(driest_c, magnus_b * x / (magnus_a - x));
}

int water_class(double dew_point) {
    for (const WaterClass& row : classes) {
        if (dew_point <= row.dew_point) {
            return row.number;
        }
    }
    return 0;
}

} // namespace torchside::air
