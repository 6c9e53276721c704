// Copper between the panel and the machine: resistance, what it may carry, and the least gauge for a load.
//
// What       One-way resistance of a length, ampacity by gauge or section, in warm air too, least adequate wire.
// Formula    R = r L, r from NEC Chapter 9 Table 8, stranded, 75 C; by section r = 0.0225 ohm mm2/m / A
//              L  one way     A  section
//            in air above 30 C the ampacity times a factor; in cooler air nothing is added
// Source     assets/data/conductors.json, ampacity.json, cords.json, metric_wires.json, metric_cords.json,
//            ambient_factors.json; 0.0225: IEC 60364-5-52, G.52.1, seen in a reproduction. It is 5 % above what
//            Table 8 gives for the same section.
// Range      run 14..2 AWG, cord 18..2 AWG (the even gauges), section 1.5..70 mm2, cord 0.5..16 mm2, air to 55 C.
// Error      | copper at 20 C in place of 75 C | 18 % less resistance | solid in place of stranded | 2.5 % less |
// Edges      A section between two sizes carries what the next smaller size does; below the first size no ampacity is
//            known and 0 A is said. A gauge between two rows is taken as the next thinner row. Above 55 C: the last row.
// Example    50 ft of 10 AWG one way: 0.062 ohm; 28.57 A both ways: 3.543 V, 1.48 % of 240 V.
//            25 A, two conductors: cord 12 AWG (25 A); 14 AWG has 18 A. 4 mm2, two loaded, 30 A; three loaded, 27 A; the
//            same at 40 C: 23.5 A.
#pragma once

#include <optional>
#include <string_view>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

[[nodiscard]] Resistance wire_resistance(int awg, Length one_way);
[[nodiscard]] Resistance wire_resistance_mm2(double section, Length one_way);

/// Insulation or terminal: 60 and 75 C by gauge, PVC of 70 C by section. Flexible cord is of 60 C.
enum class Column { c60, c70, c75 };

/// What air this warm leaves of an ampacity: 1 up to 30 C, then the row of the next 5 C.
[[nodiscard]] double ambient_factor(Column column, double ambient_c);

/// NEC Table 310.16 copper at 30 C, and the largest breaker a gauge allows on a general circuit: 240.4(D) for 14, 12
/// and 10 AWG, else the ampacity of the column.
struct Ampacity {
    Current at60{};
    Current at75{};
    Current device60{};
    Current device75{};
};
[[nodiscard]] Ampacity ampacity(int awg);
[[nodiscard]] Current ampacity_mm2(double section, int phases);

[[nodiscard]] Current cord_ampacity(int awg, int phases);
[[nodiscard]] Current cord_ampacity_mm2(double section, int phases);
[[nodiscard]] bool cord_from_memory(int awg, int phases); // status of that row
[[nodiscard]] bool cord_from_memory_mm2(double section);

/// The thinnest wire that allows this breaker and carries this load; none: thicker than the table's last. `factor`: what
/// the air leaves of an ampacity.
[[nodiscard]] std::optional<int> least_run(Current breaker, Current load, Column column, double factor = 1.0);
[[nodiscard]] std::optional<int> least_run_for(Current load, Column column,
                                               double factor = 1.0); // whatever the breaker
[[nodiscard]] std::optional<double> least_run_mm2(Current load, int phases, double factor = 1.0);
[[nodiscard]] std::optional<int> least_cord(Current load, int phases, double factor = 1.0);
[[nodiscard]] std::optional<double> least_cord_mm2(Current load, int phases, double factor = 1.0);

} // namespace torchside::supply
