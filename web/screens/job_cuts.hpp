// The rows of the log that were cut in the job's own stock.
#pragma once

#include <vector>

#include "core/worksheet/workbook.hpp"

namespace torchside::web {

[[nodiscard]] bool is_job_stock(const Workbook& book, const tune::TestCut& cut);
[[nodiscard]] std::vector<const tune::TestCut*> cuts_of_job(const Workbook& book);

} // namespace torchside::web
