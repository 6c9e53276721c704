#include "core/codec/decimal.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>

namespace torchside::codec {
namespace {

/// As many factors as fit one limb: their product, and how many are left.
std::uint32_t take_factors(std::uint32_t base, int& times) {
    std::uint64_t product = base;
    for (--times; times > 0 && product * base <= 0xFFFFFFFFU; --times) {
        product *= base;
    }
    return static_cast<std::uint32_t>(product);
}

/// A whole number of up to 2816 bits, smallest limb first: the longest double has 53 + 1074 · log2(5) = 2547.
class Whole {
public:
    explicit Whole(std::uint64_t value)
        : limbs_{static_cast<std::uint32_t>(value), static_cast<std::uint32_t>(value >> 32)}, used_(value >> 32 != 0 ? 2
                                                                                                    : value != 0     ? 1
                                                                                                                 : 0) {}

    /// this = this · factor + more
    void grow(std::uint32_t factor, std::uint32_t more) {
        std::uint64_t carry = more;
        for (int i = 0; i < used_; ++i) {
            carry += std::uint64_t{limbs_[i]} * factor;
            limbs_[i] = static_cast<std::uint32_t>(carry);
            carry >>= 32;
        }
        if (carry != 0) {
            limbs_[used_++] = static_cast<std::uint32_t>(carry);
        }
    }

    /// this = this / divisor; the remainder is the answer.
    std::uint32_t shrink(std::uint32_t divisor) {
        std::uint64_t rest = 0;
        for (int i = used_ - 1; i >= 0; --i) {
            rest = rest << 32 | limbs_[i];
            limbs_[i] = static_cast<std::uint32_t>(rest / divisor);
            rest %= divisor;
        }
        while (used_ > 0 && limbs_[used_ - 1] == 0) {
            --used_;
        }
        return static_cast<std::uint32_t>(rest);
    }

    void grow_by_power(std::uint32_t base, int times) {
        while (times > 0) {
            grow(take_factors(base, times), 0);
        }
    }

    /// True when something is left over.
    bool shrink_by_power(std::uint32_t base, int times) {
        bool rest = false;
        while (times > 0) {
            rest = shrink(take_factors(base, times)) != 0 || rest;
        }
        return rest;
    }

    [[nodiscard]] int bits() const {
        return used_ == 0 ? 0 : 32 * (used_ - 1) + static_cast<int>(std::bit_width(limbs_[used_ - 1]));
    }

    /// Up to 64 bits, from this one upwards.
    [[nodiscard]] std::uint64_t bits_from(int at, int count) const {
        std::uint64_t out = 0;
        for (int i = (at + count - 1) / 32; i >= at / 32; --i) {
            const int shift = 32 * i - at;
            out |= shift < 0 ? std::uint64_t{limbs_[i]} >> -shift : std::uint64_t{limbs_[i]} << shift;
        }
        return count < 64 ? out & ((std::uint64_t{1} << count) - 1) : out;
    }

    [[nodiscard]] bool any_below(int at) const {
        return std::any_of(limbs_, limbs_ + at / 32, [](std::uint32_t limb) { return limb != 0; }) ||
               (limbs_[at / 32] & ((1U << (at % 32)) - 1)) != 0;
    }

private:
    std::uint32_t limbs_[88];
    int used_;
};

/// The double nearest to (whole + a part below 1, which is 0 unless `more`) / 2^halvings.
double nearest(const Whole& whole, int halvings, bool more) {
    const int bits = whole.bits();
    const int exponent = bits - 1 - halvings; // of the first bit
    const int kept = exponent >= -1022 ? 53 : 53 - (-1022 - exponent);
    if (kept < 0) {
        return 0.0;
    }
    const int dropped = bits - kept;
    if (dropped <= 0) {
        return std::ldexp(static_cast<double>(whole.bits_from(0, bits)), -halvings);
    }
    std::uint64_t figure = whole.bits_from(dropped, kept);
    if (whole.bits_from(dropped - 1, 1) != 0) { // half of the last place, or above
        figure += more || whole.any_below(dropped - 1) ? 1 : figure & 1;
    }
    return std::ldexp(static_cast<double>(figure), dropped - halvings);
}

/// All decimal figures of a value above 0, and how many of them stand before the point (less than 0: zeros behind it).
struct Figures {
    std::string digits{};
    int before = 0;
};

Figures figures_of(double value) {
    int exponent = 0;
    const double fraction = std::frexp(value, &exponent);
    std::uint64_t mantissa = static_cast<std::uint64_t>(std::ldexp(fraction, 53));
    exponent -= 53;
    while (exponent < 0 && (mantissa & 1) == 0) {
        mantissa >>= 1;
        ++exponent;
    }
    Whole whole(mantissa);
    whole.grow_by_power(exponent < 0 ? 5 : 2, std::abs(exponent)); // m / 2^k = m · 5^k / 10^k
    Figures out;
    while (whole.bits() > 0) {
        out.digits += static_cast<char>('0' + whole.shrink(10));
    }
    std::reverse(out.digits.begin(), out.digits.end());
    out.before = static_cast<int>(out.digits.size()) + std::min(exponent, 0);
    return out;
}

/// To so many figures, a tie to the even one; zeros at the end dropped.
Figures rounded(Figures f, std::size_t count) {
    if (f.digits.size() > count) {
        const std::string_view rest = std::string_view(f.digits).substr(count);
        const bool above =
            rest[0] > '5' || (rest[0] == '5' && rest.find_first_not_of('0', 1) != std::string_view::npos);
        const bool up = above || (rest[0] == '5' && (f.digits[count - 1] & 1) != 0);
        f.digits.resize(count);
        std::size_t at = count;
        while (up && at > 0 && f.digits[at - 1] == '9') {
            --at;
        }
        if (up) {
            f.digits.resize(at);
            if (at == 0) {
                f.digits = "1";
                ++f.before;
            } else {
                ++f.digits[at - 1];
            }
        }
    }
    while (f.digits.size() > 1 && f.digits.back() == '0') {
        f.digits.pop_back();
    }
    return f;
}

std::string written(const Figures& f, int most) {
    std::string text = f.digits;
    const int size = static_cast<int>(text.size());
    if (f.before <= -4 || f.before > most) {
        if (size > 1) {
            text.insert(1, 1, '.');
        }
        const int exponent = f.before - 1;
        text += exponent < 0 ? "e-" : "e+";
        const std::string digits = std::to_string(std::abs(exponent));
        return text + (digits.size() < 2 ? "0" : "") + digits;
    }
    if (f.before <= 0) {
        return "0." + std::string(static_cast<std::size_t>(-f.before), '0') + text;
    }
    if (f.before >= size) {
        return text + std::string(static_cast<std::size_t>(f.before - size), '0');
    }
    return text.insert(static_cast<std::size_t>(f.before), 1, '.');
}

constexpr int most_in_value = 19; // digits that 64 bits hold

/// A number as it is written: digits · 10^tens.
struct Written {
    std::string_view digits{}; // from the first that is not 0, with the point among them
    std::uint64_t value = 0;   // of the digits, when they are few enough
    int count = 0;
    int tens = 0;
};

Written scan(std::string_view text) {
    Written w;
    bool behind_point = false;
    std::size_t at = 0;
    std::size_t first = text.size();
    for (; at < text.size() && (text[at] | 0x20) != 'e'; ++at) {
        if (text[at] == '.') {
            behind_point = true;
            continue;
        }
        w.tens -= behind_point ? 1 : 0;
        if (w.count > 0 || text[at] != '0') {
            first = std::min(first, at);
            w.value = 10 * w.value + static_cast<std::uint64_t>(text[at] - '0');
            ++w.count;
        }
    }
    w.digits = text.substr(std::min(first, at), at - std::min(first, at));
    if (at < text.size()) {
        const bool down = text[++at] == '-';
        int exponent = 0;
        for (at += down || text[at] == '+' ? 1 : 0; at < text.size(); ++at) {
            exponent = std::min(10 * exponent + (text[at] - '0'), 100000);
        }
        w.tens += down ? -exponent : exponent;
    }
    return w;
}

/// The digits as one number, of more than 64 the first; `tens` and `more` tell of the rest.
Whole digits_of(const Written& w, int& tens, bool& more) {
    constexpr int most_digits = 64;
    if (w.count <= most_in_value) {
        return Whole(w.value);
    }
    Whole whole(0);
    int kept = 0;
    for (const char c : w.digits) {
        if (c != '.' && kept < most_digits) {
            whole.grow(10, static_cast<std::uint32_t>(c - '0'));
            ++kept;
        } else if (c != '.') {
            more = more || c != '0';
            ++tens;
        }
    }
    return whole;
}

double exactly(const Written& w) {
    int tens = w.tens;
    bool more = false;
    Whole whole = digits_of(w, tens, more);
    if (tens > 308) {
        return HUGE_VAL;
    }
    if (tens < -400) { // 64 figures are below 1e64; half the least double is above 1e-324
        return 0.0;
    }
    if (tens >= 0) {
        whole.grow_by_power(10, tens);
        return nearest(whole, 0, more);
    }
    // Room for 64 bits of the quotient at least: a ten has less than 10 / 3 bits.
    const int halvings = std::max(64 - tens * 10 / 3 + 1 - whole.bits(), 0);
    whole.grow_by_power(2, halvings);
    more = whole.shrink_by_power(10, -tens) || more;
    return nearest(whole, halvings, more);
}

} // namespace

double read_decimal(std::string_view text) {
    constexpr std::uint64_t largest_exact = std::uint64_t{1} << 53;
    constexpr double powers_of_ten[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                        1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    const bool negative = text.starts_with('-');
    const Written w = scan(text.substr(negative || text.starts_with('+') ? 1 : 0));
    double size = 0.0;
    if (w.count > 0 && w.count <= most_in_value && w.value <= largest_exact && std::abs(w.tens) <= 22) {
        const double power = powers_of_ten[std::abs(w.tens)]; // both are doubles: one rounding
        size = w.tens < 0 ? static_cast<double>(w.value) / power : static_cast<double>(w.value) * power;
    } else if (w.count > 0) {
        size = exactly(w);
    }
    return negative ? -size : size;
}

std::string decimal_text(double value) {
    if (!std::isfinite(value)) {
        return std::isnan(value) ? "nan" : value < 0.0 ? "-inf" : "inf";
    }
    if (value == 0.0) {
        return std::signbit(value) ? "-0" : "0";
    }
    const double size = std::abs(value);
    const Figures all = figures_of(size);
    std::string text;
    for (int count = 15; count <= 17; ++count) {
        text = written(rounded(all, static_cast<std::size_t>(count)), count);
        if (read_decimal(text) == size) {
            break;
        }
    }
    return value < 0.0 ? "-" + text : text;
}

} // namespace torchside::codec
