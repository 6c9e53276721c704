// What the test cuts taught and what to cut next, as JSON: what `torchside tune` prints.
#pragma once

#include "core/tune/next_test.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/workbook.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json tune_json(const tune::Posterior& posterior, const tune::Trail& trail, const tune::Outlook& outlook,
                             const Job& job, const Speech& speech);

} // namespace torchside::cli
