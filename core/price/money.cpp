#include "core/price/money.hpp"

#include <cmath>
#include <cstdlib>

namespace torchside::price {

namespace {

constexpr double largest = 9e15;
constexpr double lenience = 5e-7; // of a minor unit: what a half may miss by and still count as one

// Codes of three letters, one after the other.
constexpr std::string_view without = "BIFCLPDJFGNFISKJPYKMFKRWPYGRWFUGXUYIVNDVUVXAFXOFXPF";
constexpr std::string_view with_three = "BHDIQDJODKWDLYDOMRTND";
constexpr std::string_view with_four = "CLFUYW";

bool listed(std::string_view codes, std::string_view code) {
    for (std::size_t i = 0; i < codes.size(); i += 3) {
        if (codes.substr(i, 3) == code) {
            return true;
        }
    }
    return false;
}

double minors(int decimals) {
    double out = 1.0;
    while (decimals-- > 0) {
        out *= 10.0;
    }
    return out;
}

} // namespace

int decimals(std::string_view currency) {
    return listed(without, currency) ? 0 : listed(with_three, currency) ? 3 : listed(with_four, currency) ? 4 : 2;
}

Money money(double amount, int decimals) {
    const double exact = amount * minors(decimals);
    const double size = std::fabs(exact);
    const double whole = size < largest ? std::floor(size + 0.5 + lenience) : largest; // NaN too is held
    return {static_cast<std::int64_t>(exact < 0.0 ? -whole : whole)};
}

double amount(Money money, int decimals) {
    return static_cast<double>(money.minor) / minors(decimals);
}

std::string print(Money money, int decimals, Units units) {
    std::string digits = std::to_string(std::llabs(money.minor));
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) {
        digits.insert(0, places + 1 - digits.size(), '0');
    }
    if (places > 0) {
        digits.insert(digits.size() - places, 1, units.decimal);
    }
    return (money.minor < 0 ? "−" : "") + digits;
}

std::string print_grouped(Money money, int decimals, Units units, std::string_view sign) {
    std::string out = print(money, decimals, units);
    const std::size_t begin = money.minor < 0 ? std::string_view("−").size() : 0;
    const std::size_t behind = decimals > 0 ? static_cast<std::size_t>(decimals) + 1 : 0; // the decimals and their sign
    for (std::size_t at = out.size() - behind; at > begin + 3;) {
        at -= 3;
        out.insert(at, sign);
    }
    return out;
}

} // namespace torchside::price
