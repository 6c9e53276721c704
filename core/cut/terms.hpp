// The named numbers that the cut model rests on. None is a constant in code: each is a row of
// assets/data/cut_terms.json with its spread, its source and its status, and a test or a script may pass its own.
#pragma once

#include <string_view>

#include "core/stock/metal.hpp"

namespace torchside::cut {

/// One input of the model. `sd` is the standard deviation of the prior, of ln(value) for a factor and of the value
/// itself for a voltage term; 0 where the spread is counted in another term. `source` is a key of sources.json.
struct Term {
    double value = 0.0;
    double sd = 0.0;
    std::string_view source{};
};

struct Terms {
    Term efficiency{};   // eta: share of arc power that heats the kerf
    Term melt_width{};   // kappa: melted width / bore, in the balance only; not separable from eta, never shown
    Term superheat{};    // s: melt enthalpy multiplier, superheat and some vapour
    Term wall{};         // f_c: 1 round isothermal hole, 0.70..0.75 a slot with adiabatic walls; more where melt clings
    Term burnt_share{};  // phi: share of the kerf's iron that burns
    Term burning_heat{}; // J per kg of iron burnt
    Term density{};      // A/mm2 through the bore, when the bore is not known
    Term density_large{};      // the same above `large_current`
    Term large_current{};      // A
    Term arc_offset{};         // V
    Term arc_per_a{};          // V/A
    Term arc_per_mm{};         // V per mm of plate
    Term arc_per_height{};     // V per mm of torch height away from reference_height
    Term reference_height{};   // mm
    Term kerf_width{};         // shown kerf / bore
    Term pierce_width{};       // pierced hole / melted width
    Term pierce_margin{};      // pierce delay / melting time of thin plate
    Term pierce_growth{};      // how much more that is at the thickest plate to pierce, as a share
    Term pierce_height{};      // mm, for the arc power while piercing
    Term pierce_feed{};        // mm/min: a plate whose production feed is below this is not pierced standing still
    Term recommended_feed{};   // mm/min: the slowest feed of good production
    Term recommended_feed_a{}; // mm/min times A: at low current good production is this over the current
    Term clean_feed{};         // mm/min: the trade's clean-cut rating
    Term sever_feed{};         // mm/min: the trade's severance rating
    Term sever_ratio{};        // severed thickness is at most this many times the clean one
    Term capacity_cap{};       // mm: clean capacity claimed at most, where the model is known to be optimistic
};

/// Terms of a small air torch, 20..105 A: the default prior. Range, fit and errors: see balance.hpp.
[[nodiscard]] const Terms& small_air_torch(Metal metal);

/// Terms of the fit to handbook rows (nitrogen or argon-hydrogen torches, 250..750 A), with the type-test load voltage.
/// Kept for checks and for the worked examples.
[[nodiscard]] const Terms& handbook(Metal metal);

} // namespace torchside::cut
