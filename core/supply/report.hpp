// What the circuit does with this machine at this current.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/quantity/quantity.hpp"
#include "core/words/message.hpp"

namespace torchside::supply {

/// What the breaker makes of the load, worst last. It speaks of tripping and of delivery alone; what a code asks of
/// wires, plugs and devices besides is in Report::checks.
enum class CircuitVerdict { holds, may_trip, trips_within_hour, trips_soon, cannot_deliver };

/// Which numbers the input current rests on.
enum class PowerBasis {
    estimate,     // efficiency x power factor as entered
    corrected,    // efficiency as entered x the power factor of a corrected input
    nameplate,    // efficiency x power factor as the nameplate's I1max implies at the rated load voltage
    plate_refuted // an I1max that would need more than 100 %: put aside, the estimate was used
};

/// One thing that a code or good practice asks, and how it stands.
enum class CheckKind {
    drop,          // 3 % / 5 % notes on voltage drop
    low_line,      // the machine's own tolerance of its supply voltage
    plug_load,     // 80 % of a branch circuit for the rating of one cord-and-plug machine
    run_device,    // the breaker against the run's gauge, by Article 630 200 % of its ampacity
    run_load,      // the load against the run's ampacity
    cord_load,     // the load against the cord's ampacity
    welder_device, // Article 630: breaker at most 200 % of I1max
    welder_run,    // Article 630: the effective current against the run's ampacity
    generator,     // 80 % loading of a generator
    nameplate,     // the nameplate disagrees with physics or with the numbers entered
    breaker_load,  // IEC 60364-4-43, 433.1: the load against the breaker's rating
    plug,          // the load against what the plug carries
    plug_fit,      // the plug against supply and breaker
    welder_size    // Article 630: run's ampacity against the machine's rating, whatever it is set to
};

/// A note is advice, or speaks of the machine's rating whatever it is set to, and does not bear on the highest current;
/// at the highest current every other check is fulfilled.
struct Check {
    CheckKind kind = CheckKind::drop;
    bool ok = true;
    Message message{}; // its severity: what it means when it is not fulfilled
    Text source{};     // code, edition and status
};

/// What gives first above the highest current.
enum class Cap { machine, breaker, run, cord, plug, generator, voltage };

/// The way from the panel to the torch, for a one-line diagram.
enum class Stop { panel, breaker, run, cord, machine, torch };

struct Node {
    Stop stop = Stop::panel;
    Text figure{};       // the number at this point, "45.9 A of 50 A"
    Text detail{};       // what stands there, "8 AWG, 15 m"
    double used = 0.0;   // load over what this point holds; 0 where nothing limits
    bool present = true; // false: no extension cord
    Voltage voltage{};   // behind this point
};

struct Chain {
    std::array<Node, 6> nodes{}; // in the order of Stop
    int weakest = 1;             // index of the node with the greatest `used`
};

/// One corner of the breaker's band: a load of `multiple` ratings trips within `within` at the latest. Save for one point
/// of IEC 60898 no standard gives a least time, so the band is everything below the line.
struct BandPoint {
    double multiple = 1.0;
    Duration within{};
};

struct Band {
    double holds_to = 1.0;            // up to this multiple the standard says it must not trip
    double trips_from = 1.35;         // from this multiple it must; nothing is promised in between
    std::vector<BandPoint> upper{};   // rising multiple; a step at each point, from there on to the right
    std::optional<BandPoint> least{}; // IEC 60898: not earlier than this at this multiple; the one least time there is
    std::vector<BandPoint> between{}; // IEC 60898 only: an interpolated upper line, a reading aid and not a promise
    double load_multiple = 0.0;       // this load
};

struct Report {
    Current input{};               // while cutting, line resistance included; cannot_deliver: at the line's most power
    Current input_at_rated_load{}; // at the type-test load voltage (80 V + 0.4 V/A), before any drop
    Current effective{};           // by duty
    Current other{};               // everything else on this circuit, the compressor's motor included
    Voltage machine{};             // at the machine while cutting
    double drop_share = 0.0;       // of the line voltage, panel to machine
    double run_drop_share = 0.0;   // the fixed wiring's part of it
    double load_ratio = 0.0;       // input (with the other load) / breaker rating
    CircuitVerdict verdict = CircuitVerdict::holds;
    std::optional<Duration> trips_within{};              // an upper time from the standard, never a promised one
    std::optional<Duration> trips_within_interpolated{}; // IEC 60898: between two points of the standard; a reading aid
    std::optional<Duration> trips_not_before{};          // IEC 60898, to 2.55 ratings
    /// The largest output at which breaker, run, cord, plug, generator and volts are all within their limits; at most the
    /// machine's own largest. None: not any.
    std::optional<Current> highest_current{};
    Cap capped_by = Cap::machine;                 // what gives first above it, or forbids any current
    bool highest_is_machine_limit = false;        // the circuit would carry more than the machine gives
    bool highest_below_machine = false;           // it carries less than the machine's smallest setting
    std::optional<Current> largest_deliverable{}; // cannot_deliver: the largest output the wires can carry to it
    std::optional<int> cord_min_awg{};            // least cord for this input, also when there is none now
    std::optional<double> cord_min_mm2{};         // the same by section
    std::optional<int> run_min_awg{};             // least run, cable and terminals marked for 75 C
    std::optional<int> run_min_awg_60c{};         // least run without that mark, and NM cable
    std::optional<double> run_min_mm2{};          // least run by section, when the run is entered by section
    std::optional<ApparentPower> generator_min{};
    double duty = 1.0; // at this output
    Duration arc_per_10_min{};
    Text duty_note{}; // the same as a sentence, with the ambient it is rated at
    PowerBasis power_basis = PowerBasis::estimate;
    bool effective_from_plate = false;
    std::vector<Check> checks{};
    Chain chain{};
    Band band{};
    bool by_section = false;   // wires are sold by section here, not by gauge
    Text guard{};              // the switch against shock that the outlet should have
    Message message{};         // the verdict
    std::vector<Text> basis{}; // which code, edition and status each part rests on
};

} // namespace torchside::supply
