// A test coupon as JSON: what `torchside coupon --format json` prints.
#pragma once

#include "core/tune/coupon.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json coupon_json(const tune::Coupon& coupon);

} // namespace torchside::cli
