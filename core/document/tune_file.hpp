// What the test cuts taught and what to cut next, as JSON: what `torchside tune` prints.
#pragma once

#include <string>

#include "core/tune/next_test.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

[[nodiscard]] std::string write_tune(const tune::Posterior& posterior, const tune::Trail& trail,
                                     const tune::Outlook& outlook, const Job& job);

} // namespace torchside::document
