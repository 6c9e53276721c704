// Money in whole minor units: cents, yen, fils.
//
// What       A price that is shown, added up and sent is a Money; nothing is rounded twice.
// Rule       to the nearest minor unit, halves away from zero; half a millionth of a unit is given to the half, so that
//            1.005 (which no double holds) is 1.01.
// Source     ISO 4217, list one: minor units of each currency (from memory). A code that is not listed has two.
// Range      amounts up to 9e15 minor units; larger ones, and NaN, are held at that.
// Example    money(26.163, 2) is 2616 minor units, shown "26.16"; in JPY 26, in KWD 26163.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/quantity/unit_system.hpp"

namespace torchside::price {

struct Money {
    std::int64_t minor = 0;

    friend constexpr Money operator+(Money a, Money b) { return {a.minor + b.minor}; }
    friend constexpr Money operator-(Money a, Money b) { return {a.minor - b.minor}; }
    friend constexpr auto operator<=>(Money, Money) = default;
};

/// Decimals of a currency: 0, 2, 3 or 4.
[[nodiscard]] int decimals(std::string_view currency);

[[nodiscard]] Money money(double amount, int decimals);
[[nodiscard]] double amount(Money money, int decimals);

/// "26.16" or "26,16", without the currency and without gaps; U+2212 for minus.
[[nodiscard]] std::string print(Money money, int decimals, Units units = {});
/// "1,135.14": the same with this sign between thousands, for a customer.
[[nodiscard]] std::string print_grouped(Money money, int decimals, Units units, std::string_view sign);

} // namespace torchside::price
