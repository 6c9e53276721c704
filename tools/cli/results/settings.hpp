// The figures to dial in as JSON: a member each, with its band.
#pragma once

#include "core/worksheet/figures.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

/// Every figure is there; without settings, or where a plate has no such figure, it is null.
[[nodiscard]] Json figures_json(const std::optional<cut::Settings>& settings, UnitSystem units);

} // namespace torchside::cli
