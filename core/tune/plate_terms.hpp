// What the learning needs to know of a plate: its place among the regressors, and which stock it is.
//
// What       x of f = x'b for each response, and a tag that tells apart stocks of equal x by their nozzle.
// Formula    feed    x = (1, ln(t/6 mm), ln(I/45 A), [one of the metals that cut as themselves], ln(t/6)^2)
//            kerf    x = (1, ln(t/6), ln(I/45))           pierce  the same
//            arc     x = (1, t - 6, I - 45, h - 1.5)      mm, A, mm: the spreads of core/cut's voltage terms
//            thickness is taken to 0.001 mm, current to 0.01 A, bore to 0.001 mm, so that one stock is one stock
// Source     own; process of common use in calibration.
// Example    6 mm, 45 A: x = (1, 0, 0, 1, 0, ... 0) for the feed of mild steel.
#pragma once

#include <cstdint>
#include <span>

#include "core/cut/balance.hpp"
#include "core/gear/machine.hpp"
#include "core/tune/gaussian.hpp"
#include "core/tune/test_cut.hpp"

namespace torchside::tune {

inline constexpr double thickness_0_mm = 6.0;
inline constexpr double current_0_a = 45.0;
inline constexpr double height_0_mm = 1.5;

struct Regressors {
    Vector x{};
    std::int64_t tag = 0;
};

/// Metals whose feed has an offset of its own: those that cut as themselves, in the order of the enum.
inline constexpr std::size_t metal_classes = [] {
    std::size_t n = 0;
    for (const stock::MetalInfo& metal : stock::metals) {
        n += metal.cuts_as == metal.metal ? 1 : 0;
    }
    return n;
}();
inline constexpr std::size_t bend_term = 3 + metal_classes;
static_assert(bend_term < most_terms && metal_classes <= 8, "feed_regressors() and a stock's tag have room for them");

[[nodiscard]] Regressors feed_regressors(const cut::CutSetup& plate);
[[nodiscard]] Regressors power_regressors(const cut::CutSetup& plate); // kerf and pierce delay
[[nodiscard]] Regressors arc_regressors(const cut::CutSetup& plate);

/// The plate that a row of the log was cut from, with the bore of the nozzle used: the one of the rating that the row
/// names; if the machine has none such, a bore for that rating from the current density; if the row names none, the
/// nozzle the shop would pick (cut::nozzle_for).
[[nodiscard]] cut::CutSetup plate_of(const TestCut& row, std::span<const Nozzle> nozzles);

/// The plate as asked about: a bore filled in when it names none, a measured arc left out (it is evidence, not
/// setting).
[[nodiscard]] cut::CutSetup plate_of(cut::CutSetup plate, std::span<const Nozzle> nozzles);

} // namespace torchside::tune
