// Where a value stands on an axis. Layout only: the values come from the worksheet.
#pragma once

#include "web/mirror/geometry.hpp"

namespace torchside::web {

/// 0 at `low`, 1 at `high`, held inside.
[[nodiscard]] float linear_share(double value, double low, double high);
/// The same on a logarithmic axis; all three above 0.
[[nodiscard]] float log_share(double value, double low, double high);

/// On a dial: `turn` of a whole turn on from the right, clockwise.
[[nodiscard]] Point on_circle(Point centre, float radius, float turn);

} // namespace torchside::web
