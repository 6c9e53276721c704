// What the figures of a quote rest on, in words. Internal to core/price.
#pragma once

#include "core/price/quote.hpp"

namespace torchside::price {

void describe(const Work& work, const Order& order, Report& out);

void describe(MakeOrBuy& m, int quantity, int decimals);

} // namespace torchside::price
