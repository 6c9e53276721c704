// What a height controller reads of the arc's voltage, and whether its input stands it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/gear/machine.hpp"
#include "core/quantity/outcome.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::supply {

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
    bool sure = false;                 // no other ratio of the trade fits within the arc voltage's own uncertainty
    std::optional<double> runner_up{}; // the other one that fits
    std::string text{};                // one sentence
};
/// Fault: a voltage that is not positive, or a reading above the arc's voltage by more than its uncertainty.
[[nodiscard]] Outcome<DividerMatch> identify_divider(Voltage arc, Voltage reading);

struct HeightReading {
    Voltage voltage{};
    Length height{};
};
/// Volts per millimetre from two cuts at two heights. Fault: heights closer than 0.1 mm, or volts that fall with
/// height.
[[nodiscard]] Outcome<Gradient> calibrate(const HeightReading& low, const HeightReading& high);
[[nodiscard]] Length height_at(Voltage voltage, const HeightReading& known, Gradient gradient);

enum class TapSeverity { fine, caution, stop };

struct TapReport {
    Voltage controller{}; // while cutting
    Voltage before_arc{}; // the most the standard lets stand there before the arc strikes
    TapSeverity severity = TapSeverity::fine;
    bool shock = false; // a raw tap: arc and open-circuit voltage at the terminals
    std::string text{}; // one or two sentences; empty when fine
    std::vector<std::string> basis{};
};
[[nodiscard]] TapReport check_tap(const HeightControl& control, Voltage arc);

} // namespace torchside::supply
