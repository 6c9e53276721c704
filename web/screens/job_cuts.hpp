// The rows of the log that were cut in the job's own stock.
#pragma once

#include <vector>

#include "core/worksheet/workbook.hpp"

namespace torchside::web {

[[nodiscard]] bool is_stock(const tune::TestCut& cut, Metal material, Length thickness, Current current);
[[nodiscard]] bool is_job_stock(const Workbook& book, const tune::TestCut& cut);
/// A row for the log of a cut made as this job says, with nothing measured yet.
[[nodiscard]] tune::TestCut cut_of_job(const Workbook& book, Speed feed);
[[nodiscard]] std::vector<const tune::TestCut*> cuts_of_job(const Workbook& book);

} // namespace torchside::web
