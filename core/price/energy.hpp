// Electricity of a cut: the arc's own and what the compressor takes for its air.
//
// Formula    input       P = U I / efficiency
//            air         P = air flow x specific power
//            energy      power x time                                            kWh
// Source     energy balance; specific power of small piston compressors 7 to 9 kW/(m3/min): prior; large industrial
//            ones 6.6 (a compressed-air trade magazine) to 8.8 (a fluid-power trade journal), seen.
// Range      any positive figures.
// Edges      the air flows only while the arc burns and for the post-flow; the machine's idle current is left out (a
//            few hundredths of the arc's).
// Example    45 A at 104 V, efficiency 0.85, 150 l/min at 7 kW/(m3/min): 5.506 + 1.05 kW; a metre at 1150 mm/min
//            takes 0.0950 kWh.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::price {

[[nodiscard]] constexpr Power input_power(Voltage arc, Current current, double efficiency) {
    return Power{arc.in(volt)*current.in(ampere) / efficiency, watt};
}

[[nodiscard]] constexpr Power air_power(Flow air, double kw_m3_min) {
    return Power{air.in(litre_min)*0.001 * kw_m3_min, kilowatt};
}

[[nodiscard]] constexpr double kwh(Power power, Duration time) {
    return power.in(kilowatt)*time.in(hour);
}

} // namespace torchside::price
