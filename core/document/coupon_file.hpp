// A test coupon as JSON: what `torchside coupon --format json` prints.
#pragma once

#include <string>

#include "core/tune/coupon.hpp"

namespace torchside::document {

[[nodiscard]] std::string write_coupon(const tune::Coupon& coupon);

} // namespace torchside::document
