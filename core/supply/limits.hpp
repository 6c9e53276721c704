// What each point of a circuit may carry, and the highest current at which no point is asked for more.
//
// What       Rules that speak, ampacity of run and cord, largest breaker of the run, what the run must carry, and the
//            highest output current to advise.
// Formula    advised: the largest output, up to the machine's own, at which
//              breaker    load <= rating (IEC 60364-4-43, 433.1: IB <= In; UL 489: holds at 1.00)
//              run        what it must carry <= ampacity (IB <= Iz)
//              cord, plug the machine's current <= what they carry
//              generator  load <= 80 % of its rating
//              voltage    at least 90 % of the line at the machine
//            all rise with the output, so one bisection finds it; where the circuit is unsound at any current, none.
//            unsound: a breaker above what the run allows (In <= Iz; 240.4(D); for Article 630 200 % of the ampacity,
//            630.12(B)), or a plug that is not made for this supply or this breaker
//            run must carry  machine + other load;  NEC 430.24: 25 % of the motor's current more;  dedicated by Article
//            630: the effective current in place of the machine's
// Source     nec_210, nec_240, nec_310_16, nec_400_5, nec_430_24, nec_630, iec_60364_4_43, iec_60364_5_52; the machine's
//            own tolerance iec_60974_1 (from memory); generator: practice.
// Error      against an independent second implementation of the rules, 100 000 random circuits: equal, currents to
//            1e-9 (tests/oracle/circuit_rules.py).
// Edges      A load exactly at a limit is within it. A section that is not in the table carries 0 A.
// Example    5 hp at 240 V (28 A) beside a machine of 17.3 A: 52.3 A, more than 8 AWG carries (50 A at 75 C).
#pragma once

#include <optional>

#include "core/supply/conductor.hpp"
#include "core/supply/load.hpp"
#include "core/supply/plug.hpp"

namespace torchside::supply {

enum class Rules { nec, iec };

/// By the country; elsewhere by the kind of breaker.
[[nodiscard]] Rules rules_of(const Input& input);

/// NEC Article 630 holds only for a circuit wired for this machine alone, and only where the NEC does.
[[nodiscard]] bool article_630_applies(const Input& input);

[[nodiscard]] Column run_column(const Circuit& circuit);
[[nodiscard]] Current run_ampacity(const Input& input);                // 0 A: not in the table
[[nodiscard]] Current largest_device(const Input& input);              // largest breaker that the run allows
[[nodiscard]] std::optional<Current> cord_carries(const Input& input); // none without a cord
[[nodiscard]] Current run_asked(const Input& input, const Load& load);
[[nodiscard]] Current motor_share(const Input& input, const Load& load); // NEC 430.24: 25 % of the motor's current

[[nodiscard]] bool breaker_is_sound(const Input& input);
[[nodiscard]] bool plug_fits_supply(const Circuit& circuit, int phases); // voltage and phases; true without one
[[nodiscard]] bool plug_fits_breaker(const Input& input);

/// The first point that this load asks too much of; none when all hold.
[[nodiscard]] std::optional<Cap> first_over(const Input& input, const Load& load);

struct Advised {
    std::optional<Current> most{}; // none: no current at all
    Cap cap = Cap::machine;        // what gives first above it
};
[[nodiscard]] Advised advise(const Input& input);

/// Largest output, up to the one asked for, that the wires, and the generator fully loaded, bring to the machine.
[[nodiscard]] Current largest_deliverable(const Input& input);

} // namespace torchside::supply
