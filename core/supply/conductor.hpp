// Copper between the panel and the machine: resistance, what it may carry, and the least gauge for a load.
//
// What       One-way resistance of a length, ampacity by gauge or section, least adequate gauge.
// Formula    R = r L, r from NEC Chapter 9 Table 8, stranded, 75 C; by section r = 0.0214 ohm mm2/m / A
//              L  one way     A  section
// Source     assets/data/conductors.json, ampacity.json, cords.json, metric_wires.json; 0.0214 is the mean of the seen
//            rows of the table, times their section (own computation, within 0.5 %).
// Range      run 14..2 AWG, cord 18..2 AWG (the even gauges), section 1..70 mm2.
// Error      | copper at 20 C in place of 75 C | 18 % less resistance | solid in place of stranded | 2.5 % less |
// Edges      A section between two sizes carries what the next smaller size does; below 1.5 mm2 no ampacity is known
//            and 0 A is said. A gauge between two rows is taken as the next thinner row.
// Example    50 ft of 10 AWG one way: 0.062 ohm; 28.57 A both ways: 3.543 V, 1.48 % of 240 V.
//            25 A, two conductors: cord 12 AWG (25 A); 14 AWG has 18 A.
#pragma once

#include <optional>
#include <string_view>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

[[nodiscard]] Resistance wire_resistance(int awg, Length one_way);
[[nodiscard]] Resistance wire_resistance_mm2(double section, Length one_way);

/// NEC Table 310.16 copper, and the largest breaker a gauge allows on a general circuit: 240.4(D) for 14, 12, 10 AWG,
/// else the ampacity of the column.
struct Ampacity {
    Current at60{};
    Current at75{};
    Current device60{};
    Current device75{};
};
[[nodiscard]] Ampacity ampacity(int awg);
[[nodiscard]] Current ampacity_mm2(double section);

[[nodiscard]] Current cord_ampacity(int awg, int phases);
[[nodiscard]] bool cord_from_memory(int awg, int phases); // status of that row

/// The thinnest gauge that allows this breaker and carries this load; none: thicker than the table's 2 AWG.
enum class Column { c60, c75 };
[[nodiscard]] std::optional<int> least_run(Current breaker, Current load, Column column);
[[nodiscard]] std::optional<int> least_run_for(Current load, Column column); // whatever the breaker
[[nodiscard]] std::optional<double> least_run_mm2(Current load);
[[nodiscard]] std::optional<int> least_cord(Current load, int phases);

} // namespace torchside::supply
