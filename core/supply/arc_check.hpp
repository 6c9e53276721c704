// What a reading of the height control says of a running cut: as it should be, high, low, or the wrong divider.
//
// What       The volts at the torch that a reading stands for, how far they are from what is expected, and what to
//            look at first.
// Formula    at the torch V = N reading;  off = V - expected, each to whole volts as they are shown
//            as expected  |off| <= 2 V
//            divider      V is 12 % or more off, and a ratio of the trade other than N fits the reading to 12 %
//            no reading   V is 30 % or more off and no ratio fits
//            high, low    anything else
// Source     2 V: rule of thumb, what a reading wanders by on a good cut. 12 %: how well the arc is known (divider.hpp).
//            30 %: our estimate; no cut runs with its arc a third too long or too short.
//            High: torch high or the electrode's pit deep, both lengthen the arc. Low: torch low, or a nozzle worn
//            wide, which squeezes the arc less. Trade knowledge, no source.
// Range      readings above 0 V, divider 1 to 100.
// Edges      Inside the expected band but more than 2 V off it is still high or low, and `in_band` says that our own
//            figure may be what is off.
// Example    2.7 V through 50:1 where 130 V is expected: 135 V, 5 V above, high. The same with 1:1 entered: 50:1 fits.
#pragma once

#include <optional>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/outcome.hpp"
#include "core/words/text.hpp"

namespace torchside::supply {

enum class ArcState { as_expected, high, low, divider, no_reading };

struct ArcCheck {
    ArcState state = ArcState::as_expected;
    Voltage torch{};               // what the reading stands for
    Voltage off{};                 // from what is expected
    bool in_band = false;          // our own figure may be what is off
    std::optional<double> ratio{}; // divider: the one that fits
    Text text{};                   // how it reads
    Text to_do{};                  // what to do about it
};

/// Fault: a reading that is not above 0 V.
[[nodiscard]] Outcome<ArcCheck> check_arc(const Estimate<Voltage>& expected, double divider_ratio, Voltage reading);

} // namespace torchside::supply
