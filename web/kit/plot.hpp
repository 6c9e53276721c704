// Where a value stands on an axis. Layout only: the values come from the worksheet.
#pragma once

namespace torchside::web {

/// 0 at `low`, 1 at `high`, held inside.
[[nodiscard]] float linear_share(double value, double low, double high);
/// The same on a logarithmic axis; all three above 0.
[[nodiscard]] float log_share(double value, double low, double high);

} // namespace torchside::web
