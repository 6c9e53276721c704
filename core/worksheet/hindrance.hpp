// Why nothing can be cut. Every screen that has no time, no price or no path says it, and says the same.
#pragma once

#include <optional>

#include "core/words/text.hpp"
#include "core/worksheet/workbook.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {

struct Hindrance {
    Text reason{}; // no full stop: "45 A does not sever this plate"
    Text detail{}; // what is in the way, and how out
};

/// None when there is a path to cut.
[[nodiscard]] std::optional<Hindrance> hindrance(const Workbook& workbook, const Worksheet& worksheet);

} // namespace torchside
