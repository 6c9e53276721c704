// What a height ladder showed: marked and measured legs, the height and the volts they give.
#pragma once

#include "core/tune/coupon.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

void heights_showed(Body& body, const tune::Coupon& coupon);

} // namespace torchside::web
