// Cutting on a circuit that is too small for the arc to stay on: how long at a time, and how long without.
//
// What       The longest arc, and the rest after it, at which no point is hotter over minutes than its rating makes it.
// Formula    a point that heats with the square of the current, time constant tau, in steady repetition of t_on at m and t_off at
//            m0 (loads over its rating):
//              peak = m0^2 + (m^2 - m0^2) (1 - e^(-t_on/tau)) / (1 - e^(-(t_on + t_off)/tau)) <= 1
//            t_on is half of what is possible from cold: -tau ln(1 - q) / 2 with q = (1 - m0^2) / (m^2 - m0^2); t_off follows.
//            The mean square of the current is then below the rating's as well. Taken over breaker, run, cord and plug: the one that
//            is loaded most; the rest is longer where the machine's duty asks for it.
// Source     own: an estimate that no standard promises. tau 30 s is a prior (assets/data/intermittent.json): breakers differ from
//            about 15 to 200 s. Upper trip times alone are in the standards (breaker.hpp).
// Range      m up to 2.5, where a breaker of IEC 60898 may trip from 1 s on; beyond it, and where the supply cannot deliver, where
//            a generator is too small or the circuit is unsound: none.
// Edges      Every point holds for ever, or the arc would be shorter than 1 s: none. While the arc burns a wire, cord or plug may carry more than its table allows:
//            then `beyond_tables`.
// Example    40 A on a breaker of 20 A, nothing else on it: q = 0.25, t_on 4.32 s, t_off 18.71 s; mean square 0.75 of the rating's.
#pragma once

#include <optional>

#include "core/supply/assess.hpp"
#include "core/supply/usual.hpp"

namespace torchside::supply {

/// assets/data/intermittent.json
struct IntermittentRules {
    double low_line_v = 0.0;    // a line below it is a low one
    double tau_s = 0.0;         // time constant of what heats
    double arc_share = 0.0;     // of the longest arc from cold
    double most_multiple = 0.0; // of a rating
};
[[nodiscard]] const IntermittentRules& intermittent_rules();

struct Bursts {
    Current output{};
    Duration arc{};
    Duration rest{};
    bool beyond_tables = false;
};

/// At the input's own output. None: not needed, or it does not help.
[[nodiscard]] std::optional<Bursts> bursts_at(const Input& input);

/// The least of the usual supplies (smallest breaker, then highest volts) that carries the output over the same lengths of
/// wire, on a circuit of its own; `machine` with all its ratings. None: none of them.
[[nodiscard]] std::optional<UsualSupply> supply_for(const Input& input, const Machine& machine);

} // namespace torchside::supply
