// What the codes and good practice ask of this circuit besides not tripping, each as one sentence with its source.
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
