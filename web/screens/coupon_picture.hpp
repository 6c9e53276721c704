// A test coupon to scale.
#pragma once

#include "core/tune/coupon.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// What a leg is cut at: "655 mm/min", for a height ladder "0.9 mm high".
[[nodiscard]] std::string leg_words(const App& app, const tune::Coupon& coupon, const tune::Leg& leg);

/// Draws it at the top of `at` and gives back the height used.
float coupon_picture(App& app, Point at, float w, const tune::Coupon& coupon);

} // namespace torchside::web
