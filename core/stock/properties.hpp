// What the calculation needs to know of each metal, and what it is called.
//
// Values are means over heating from 293 K to the melt, for common grades: low-carbon steel, 304/316, 5052/6061. Each
// is a row of assets/data/metals.json with its own source and status; most are from memory, those of aluminium's
// melting are seen. Galvanised sheet is mild steel here: boiling 20 um of zinc a side off 1.5 mm sheet takes 4 % of the
// heat of melting the steel; what the zinc asks for is a caution (core/safety), not another feed.
//
//   heat to melt    h = cp (Tm - 293 K) + Lf            J/kg
//   diffusivity     alpha = k / (rho cp)                m2/s
//
// Worked example (also a test): mild steel h = 690 * 1502 + 247 000 = 1 283 380 J/kg; alpha = 6.462e-6 m2/s.
#pragma once

#include <string_view>

#include "core/stock/metal.hpp"

namespace torchside::stock {

struct Properties {
    double density_kg_m3 = 0.0;
    double heat_j_kg_k = 0.0;
    double conductivity_w_m_k = 0.0;
    double melting_k = 0.0;
    double fusion_j_kg = 0.0;
    double vaporisation_j_kg = 0.0;
};

inline constexpr double room_k = 293.0;

[[nodiscard]] const Properties& properties(Metal metal);
[[nodiscard]] double melt_heat_j_kg(const Properties& p);
[[nodiscard]] double diffusivity_m2_s(const Properties& p);

/// Whose properties and settings it takes: galvanised cuts as mild steel.
[[nodiscard]] Metal cuts_as(Metal metal);

[[nodiscard]] Word name(Metal metal);            // "Mild steel", for the screen
[[nodiscard]] std::string_view key(Metal metal); // "mild_steel", for the workbook

} // namespace torchside::stock
