// Water that air brings into the compressor: what condenses in the tank and how dry the rest is.
//
// What       Saturated vapour, condensate per cubic metre of free air, pressure dew point and its class.
// Formula    e_s = 6.112 exp(17.62 t / (243.12 + t)) hPa,  a = 216.68 e / (t + 273.15) g/m3        (Magnus)
//            condensate = a_in RH - a_s(t_tank) (p_atm / p) (T_tank / T_in), at least 0, g per m3 of free air
//            dew point under pressure: e = RH e_s p / p_atm, at most saturated at t_tank, solved for t
// Source     Magnus with the coefficients of the WMO (from memory, magnus_wmo): 17.24 g/m3 at 20 C, a page on
//            condensate says 17.3. Condensate: own, against a published example (air_water) 6.4 where this gives 5.95.
//            Classes: ISO 8573-1:2010 by pressure dew point (assets/data/water_classes.json).
// Error      | -20..50 C | Magnus 0.3 % |
//            An older handbook column is 1 to 8 % higher. A tank warmer than the room lets more vapour through.
// Edges      Drier than class 1: 1. Wetter than class 6 (10 C): 0. No humidity: dew point -100 C.
// Example    25 C, 80 %, 7 bar(g), cooled to 30 C: 14.5 g/m3.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::air {

[[nodiscard]] double saturated_g_m3(double temperature_c);

struct TankAir {
    double intake_c = 25;
    double humidity = 0.6;
    Pressure tank{7, bar}; // gauge
    double tank_c = 25;
};
[[nodiscard]] double condensate_g_m3(const TankAir& air);
[[nodiscard]] double dew_point_c(const TankAir& air);
[[nodiscard]] int water_class(double dew_point_c);

} // namespace torchside::air
