#include "core/codec/decimal.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace torchside::codec {
namespace {

/// A whole number of up to 2816 bits, smallest limb first: the longest double has 53 + 1074 · log2(5) = 2547.
class Whole {
public:
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

    void grow_by_powers(std::uint32_t base, int times) {
        for (int i = 0; i < times; ++i) {
            grow(base, 0);
        }
    }

    [[nodiscard]] bool bit(int at) const { return (limbs_[at / 32] >> (at % 32) & 1U) != 0; }

    [[nodiscard]] int bits() const {
        int n = 32 * used_;
        while (n > 0 && !bit(n - 1)) {
            --n;
        }
        return n;
    }

private:
    std::uint32_t limbs_[88] = {};
    int used_ = 0;
};

/// The double nearest to (whole + a part below 1, which is 0 unless `more`) / 2^halvings.
double nearest(const Whole& whole, int halvings, bool more) {
    const int bits = whole.bits();
    const int exponent = bits - 1 - halvings; // of the first bit
    const int kept = exponent >= -1022 ? 53 : 53 - (-1022 - exponent);
    if (kept < 0) {
        return 0.0;
    }
    std::uint64_t figure = 0;
    int at = bits;
    while (at > bits - kept) {
        figure = figure << 1 | static_cast<std::uint64_t>(--at >= 0 && whole.bit(at));
    }
    if (at > 0 && whole.bit(at - 1)) { // half of the last place, or above
        for (int below = at - 2; below >= 0 && !more; --below) {
            more = whole.bit(below);
        }
        figure += more ? 1 : figure & 1;
    }
    return std::ldexp(static_cast<double>(figure), at - halvings);
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
    Whole whole;
    whole.grow(0, static_cast<std::uint32_t>(mantissa >> 32));
    whole.grow_by_powers(1U << 16, 2);
    whole.grow(1, static_cast<std::uint32_t>(mantissa));
    whole.grow_by_powers(exponent < 0 ? 5 : 2, std::abs(exponent)); // m / 2^k = m · 5^k / 10^k
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

} // namespace

double read_decimal(std::string_view text) {
    const bool negative = !text.empty() && text[0] == '-';
    Whole whole;
    int tens = 0;
    bool behind_point = false;
    std::size_t at = negative ? 1 : 0;
    for (; at < text.size() && (text[at] | 0x20) != 'e'; ++at) {
        if (text[at] == '.') {
            behind_point = true;
            continue;
        }
        whole.grow(10, static_cast<std::uint32_t>(text[at] - '0'));
        tens -= behind_point ? 1 : 0;
    }
    if (at < text.size()) {
        const bool down = text[++at] == '-';
        int exponent = 0;
        for (at += down || text[at] == '+' ? 1 : 0; at < text.size(); ++at) {
            exponent = std::min(10 * exponent + (text[at] - '0'), 100000);
        }
        tens += down ? -exponent : exponent;
    }
    double size = 0.0;
    if (whole.bits() > 0 && tens > 308) {
        size = HUGE_VAL;
    } else if (whole.bits() > 0 && tens > -400) { // 64 figures are below 1e64; half the least double is above 1e-324
        int halvings = 0;
        bool more = false;
        if (tens >= 0) {
            whole.grow_by_powers(10, tens);
        } else {
            // Room for 64 bits of the quotient at least: a ten has less than 10 / 3 bits.
            halvings = 64 - tens * 10 / 3 + 1;
            whole.grow_by_powers(2, halvings);
            for (int i = tens; i < 0; ++i) {
                more = whole.shrink(10) != 0 || more;
            }
        }
        size = nearest(whole, halvings, more);
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
