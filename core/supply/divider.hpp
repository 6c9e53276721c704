// What a height controller reads of the arc's voltage, and whether its input stands it.
//
// What       Ratio of a divider with and without the controller's own input, the divider a reading points to, the
//            gradient from two cuts, and whether the tap may be connected.
// Formula    N = (R1 + R2) / R2                      R1 upper, R2 lower; the controller is across R2
//            R_th = R1 R2 / (R1 + R2)
//            loading error -R_th / (R_th + R_in),  loaded ratio N (1 + R_th / R_in)
//            heat V^2 / (R1 + R2)
//            gradient g = (V2 - V1) / (h2 - h1),     height h = h1 + (V - V1) / g
// Source     circuit theory. Ratios of the trade 1, 16, 20, 30, 40, 50: common practice (assets/data/dividers.json).
//            Arc voltage rises about linearly with height at steady current, feed and gas: agreed everywhere; no number
//            was found published, so the gradient is always measured, never a constant.
//            500 V peak at the torch before the arc strikes: the limit of the no-load voltage, EN 60974-1 as reproduced
//            in a manual. Start peaks are excluded from it and may be far higher. More than 100 V DC of
//            open circuit only where contact is prevented: 29 CFR 1910.254(b)(3), read in state text; so a divider of
//            less than 5 is a shock hazard.
// Error      | divider from a reading | the arc's voltage is known to 12 %: 16 and 20 to 1 cannot be told apart then |
//            The gradient also moves with feed, pressure and the nozzle's wear.
// Edges      A reading of more than the arc is refused past 12 %; heights closer than 0.1 mm are refused.
//            One rule for the advice and the warning: the divider brings 500 V, or the arc where that is more, to the
//            input's limit at most.
// Example    490 k / 10 k: 50, 100 V reads 2.000 V; 100 k input: -8.93 %, 54.90; 1 M: -0.97 %, 50.49.
//            2.7 V at 135 V: 50 to 1. 110 V at 1.5 mm, 115 V at 2.5 mm: 5.0 V/mm, 112.5 V is 2.0 mm.
//            An input limit of 10 V asks for 50:1, of 20 V for 30:1, of 5 V for 100:1.
#pragma once

#include <optional>
#include <vector>

#include "core/gear/machine.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/message.hpp"
#include "core/words/outcome.hpp"

namespace torchside::supply {

inline constexpr double arc_uncertainty = 0.12; // how well the arc's volts are known without a reading

/// Two resistors across the arc; the controller is connected across `lower`.
struct Divider {
    Resistance upper{490e3, ohm};
    Resistance lower{10e3, ohm};
};

[[nodiscard]] double ratio(const Divider& divider);                           // nothing connected
[[nodiscard]] double loading_error(const Divider& divider, Resistance input); // relative, negative
[[nodiscard]] double loaded_ratio(const Divider& divider, Resistance input);  // with the controller connected
[[nodiscard]] Power heat(const Divider& divider, Voltage arc);                // in both resistors
[[nodiscard]] Voltage at_controller(Voltage arc, double divider_ratio);

/// The divider a reading points to.
struct DividerMatch {
    double measured = 1.0;             // arc volts / reading
    double ratio = 1.0;                // the trade's ratio nearest to it
    double off = 0.0;                  // measured / ratio - 1
    bool sure = false;                 // it fits, and no other ratio of the trade does
    std::optional<double> runner_up{}; // the other one that fits
    Text text{};                       // one sentence or two
};
/// Fault: a voltage that is not positive, or a reading above the arc's voltage by more than its uncertainty.
[[nodiscard]] Outcome<DividerMatch> identify_divider(Voltage arc, Voltage reading);

struct VoltsAtHeight {
    Voltage voltage{};
    Length height{};
};
/// Volts per millimetre from two cuts at two heights. Fault: heights closer than 0.1 mm, or volts that do not rise with
/// height.
[[nodiscard]] Outcome<Gradient> calibrate(const VoltsAtHeight& low, const VoltsAtHeight& high);
[[nodiscard]] Length height_at(Voltage voltage, const VoltsAtHeight& known, Gradient gradient);

/// The least ratio of the trade, or the next whole one, that keeps an input within its limit.
[[nodiscard]] double least_divider(Voltage input_limit, Voltage arc);

struct ControllerInput {
    Voltage controller{};             // while cutting, at the arc's highest
    Voltage before_arc{};             // the most the standard lets stand there before the arc strikes
    bool shock = false;               // more than 100 V may stand on the controller's wires before the arc strikes
    std::optional<Message> message{}; // none when it may be connected
    std::vector<Text> basis{};        // none when nothing was asked
};
/// `arc`: the highest to expect while cutting.
[[nodiscard]] ControllerInput check_tap(const HeightControl& control, Voltage arc);

} // namespace torchside::supply
