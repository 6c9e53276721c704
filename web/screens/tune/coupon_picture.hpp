// A test coupon to scale.
#pragma once

#include "core/tune/coupon.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

/// What a leg is cut at: "655 mm/min", for a height ladder "0.9 mm high".
[[nodiscard]] std::string leg_words(const App& app, const tune::Coupon& coupon, const tune::Leg& leg);

/// Indices of the legs as they lie, the lowest one first: they are cut in another order.
[[nodiscard]] std::vector<std::size_t> from_below(const tune::Coupon& coupon);

void coupon_picture(Body& body, const tune::Coupon& coupon);

/// Of a height ladder: the torch over the plate for each leg, one scale for all.
void heights_picture(Body& body, const tune::Coupon& coupon);

} // namespace torchside::web
