// What the codes and good practice ask of this circuit besides not tripping, each as one sentence with its source.
//
// Rule                                             Source (assets/data/sources.json)         a lower current mends it
//   breaker against the run                        nec_240, nec_310_16; iec_60364_4_43        no
//   load against breaker (IB <= In)                iec_60364_4_43                             yes
//   load against the run's and the cord's ampacity nec_310_16, nec_400_5, nec_430_24;
//                                                  iec_60364_5_52, bs_7671_4f3a               yes
//   plug: volts, phases, breaker; its amperes      nec_210, nec_wd_6, bs_1363; from memory    no; yes
//   dedicated circuit: effective current           nec_630; only where the NEC is             yes
//   supply within 10 %                             iec_60974_1 (from memory)                  yes
//   generator at most at 80 %                      practice                                   yes
// and as notes, whatever the current is set to:
//   one plugged-in machine is rated at most 80 %   nec_210, circuits to 30 A
//   dedicated circuit: run by the machine's rating, breaker at most 200 % of I1max            nec_630
//   drop: 3 % in the run, 5 % in all by the NEC's note; 5 % by IEC 60364-5-52, G.52.1
//   nameplate                                      energy balance
// The country says which rules speak (limits.hpp). 240.4(B), the next larger breaker, is not used: it does not hold for a
// run with several outlets. Without a 75 C mark on cable and terminals the 60 C column holds: 110.14(C), NM cable.
#pragma once

#include <vector>

#include "core/supply/load.hpp"

namespace torchside::supply {

/// Ampacity the run of a dedicated circuit needs by the machine's rating, NEC 630.11(A): the plate's I1eff, or rated
/// primary current x multiplier, and what else is on the circuit.
[[nodiscard]] Current welder_run_size(const Input& input, const Load& load);

/// `report` has its least wires by now.
[[nodiscard]] std::vector<Check> checks_of(const Input& input, const Load& load, const Report& report);

} // namespace torchside::supply
