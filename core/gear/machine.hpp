// What stands in the shop and more than one calculation needs: the plasma power source, its nozzles, the height
// control, the table and its controller. Plain structs; ranges and error texts are in core/schema/schema*.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

struct Nozzle {
    Current rated{45, ampere};    // 10..200 A
    std::optional<Length> bore{}; // 0.4..4 mm; unknown: from a current density (core/cut)

    friend bool operator==(const Nozzle&, const Nozzle&) = default;
};

/// Its rating on a supply of about 120 V, where it is made for two voltages; without a largest current nothing of it counts.
struct LowVoltage {
    std::optional<Current> max_current{};  // largest output setting there, 5..200 A
    std::optional<double> duty_cycle{};    // 0.05..1; none: the machine's own share
    std::optional<Current> duty_current{}; // 5..200 A; none: the largest
    std::optional<Current> i1max{};        // rated largest supply current there, 1..300 A
    std::optional<Current> i1eff{};        // rated effective supply current there

    friend bool operator==(const LowVoltage&, const LowVoltage&) = default;
};
/// How the pilot arc is lit.
enum class StartMethod { contact, high_frequency, capacitor };

struct Machine {
    Current max_current{50, ampere};      // largest output setting, 10..200 A
    Current min_current{20, ampere};      // smallest output setting, 5..200 A
    double duty_cycle = 0.60;             // rated duty, 0.05..1 of a 10 min period
    Current duty_current{50, ampere};     // the output current that duty is rated at
    double efficiency = 0.80;             // output power / input power, 0.5..0.98
    double power_factor = 0.70;           // of the input without correction, 0.4..1
    bool power_factor_corrected = false;  // a corrected input: the factor is taken as 0.99
    int phases = 1;                       // 1 or 3
    Current idle_input{0.5, ampere};      // input current with the arc off
    std::optional<Current> plate_i1max{}; // rated largest supply current on the nameplate; overrides the estimate
    std::optional<Current> plate_i1eff{}; // rated effective supply current on the nameplate
    LowVoltage low_voltage{};             // what holds in its place on a low line: core/supply/low_voltage.hpp
    bool clockwise_swirl = true;          // of the cutting gas, seen from above: the right face of travel is squarer
    StartMethod start = StartMethod::contact;
    std::optional<Duration> start_lag{}; // torch code to arc on the plate, 0..10 s; none: by start method (start.hpp)
    bool waits_for_transfer = false;     // the controller counts the pierce delay from the machine's transfer signal
    std::vector<Nozzle> nozzles{{Current{45, ampere}, Length{1.1, mm}}}; // 1..8, any order
};

struct HeightControl {
    double divider_ratio = 1.0;         // arc volts / volts at the controller, 1..100; 1 is a raw tap
    Voltage input_limit{500, volt};     // what the controller's input stands, 1..1000 V
    std::optional<Gradient> gradient{}; // measured on this machine, 0.5..20 V/mm
    std::optional<Length> cut_height{}; // that this shop cuts at, 0.5..6 mm; none: the usual 1.5 mm
    Duration touch_off{3, second};      // lift, find the plate, stand at pierce height, 0..60 s; prior, no source
};

struct Table {
    Speed max_feed{7600, mm_min};
    Acceleration acceleration{500, mm_s2};
    Length corner_tolerance{0.05, mm};
    Speed rapid{10000, mm_min};
    bool water = true; // a water tray under the plate
};

enum class DwellUnit { second, millisecond }; // "s" and "ms" in the workbook

/// What this shop's controller understands in a program. Words are up to 40 plain letters, digits and signs, without
/// brackets.
struct Controller {
    std::string torch_on = "M3";
    std::string torch_off = "M5";
    std::string height_on{}; // empty: none
    std::string height_off{};
    DwellUnit dwell = DwellUnit::second; // unit of P after G4
    bool z_words = true;                 // heights are written into a program; off: the controller sets them by itself
    Length safe_height{15, mm};          // 5..100 mm, for moves between cuts
    std::optional<UnitSystem> units{};   // of a program; none: those on screen
};

} // namespace torchside
