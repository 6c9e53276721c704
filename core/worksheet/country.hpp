// The country whose rules speak in a shop: the one that was chosen, else the one that its supply points to.
//
// What       UL 489 breaker: United States. Any other: United Kingdom where prices are in pounds, European Union at its
//            220 to 240 V or 380 to 415 V, else other.
// Source     own: who wires with what. A guess to start from; the screen shows it and one touch changes it.
// Example    240 V on UL 489: us. 230 V on a C32, prices in EUR: eu; in GBP: uk. 100 V on a B16: other.
#pragma once

#include "core/worksheet/workbook.hpp"

namespace torchside {

[[nodiscard]] Country country_of(const Shop& shop);

/// No breaker of this kind is made for that country's wiring: what was chosen before no longer speaks for the shop.
[[nodiscard]] bool is_foreign(Country country, supply::BreakerRule breaker);

} // namespace torchside
