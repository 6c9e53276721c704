// What a height ladder showed: marked and measured legs, the height and the volts they give.
#pragma once

#include "core/tune/coupon.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// Draws it at `y` in the panel's body and gives back the height used.
float heights_showed(App& app, Rect body, float y, const tune::Coupon& coupon);

} // namespace torchside::web
