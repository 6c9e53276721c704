#include "core/worksheet/country.hpp"

namespace torchside {

Country country_of(const Shop& shop) {
    if (shop.country) {
        return *shop.country;
    }
    if (shop.circuit.breaker_rule == supply::BreakerRule::ul489) {
        return Country::us;
    }
    if (shop.rates.currency == "GBP") {
        return Country::uk;
    }
    const double v = shop.circuit.line.in(volt);
    return (v >= 220 && v <= 240) || (v >= 380 && v <= 415) ? Country::eu : Country::other;
}

bool is_foreign(Country country, supply::BreakerRule breaker) {
    return country != Country::other && (country == Country::us) != (breaker == supply::BreakerRule::ul489);
}

} // namespace torchside
