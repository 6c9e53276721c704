// Published cuts beside what is said of them, as JSON and as a table to read.
#pragma once

#include <string>

#include "core/worksheet/evidence.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json evidence_json(const Evidence& evidence);
[[nodiscard]] std::string evidence_text(const Evidence& evidence);

} // namespace torchside::cli
