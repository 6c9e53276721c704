// What the codes and good practice ask of this circuit besides not tripping, each as one sentence with its source.
//
// Rule                                             Source (assets/data/sources.json)
//   breaker against the run's gauge                nec_240, nec_310_16; by section iec_60364_4_43, iec_60364_5_52
//   load against the run's and the cord's ampacity nec_310_16, nec_400_5
//   one plugged-in machine takes at most 80 %      nec_210; only where the NEC is (UL 489) and the circuit is shared
//   dedicated circuit, 200 % rules                 nec_630; only where the NEC is
//   drop of 3 % in the run, 5 % in all             nec_210, an informational note
//   supply within 10 %                             iec_60974_1 (from memory)
//   generator at most at 80 %                      practice
// 240.4(B), the next larger breaker, is not used: it does not hold for a run with several outlets. The 75 C column
// needs terminals marked for it (110.14(C)); what the 60 C column asks for is said beside it.
#pragma once

#include <vector>

#include "core/supply/load.hpp"

namespace torchside::supply {

/// NEC Article 630 holds only for a circuit wired for this machine alone, and only where the NEC does.
[[nodiscard]] bool article_630_applies(const Circuit& circuit);

/// Ampacity the run of a dedicated circuit needs: the plate's I1eff or rated primary current x multiplier, and never
/// less than the effective current of the cut at hand (an arc above the rated load voltage draws more than the plate
/// says).
[[nodiscard]] Current welder_run_needs(const Input& input, const Load& load);

/// Ampacity of the run: 75 C column by gauge, method B2 by section.
[[nodiscard]] Current run_ampacity(const Circuit& circuit);

/// `report` has its least gauges by now.
[[nodiscard]] std::vector<Check> checks_of(const Input& input, const Load& load, const Report& report);

} // namespace torchside::supply
