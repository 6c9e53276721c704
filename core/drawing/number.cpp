#include "core/drawing/number.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

namespace torchside::drawing {

namespace {

__extension__ using Wide = unsigned __int128;

constexpr std::uint64_t powers_of_ten[] = {1,
                                           10,
                                           100,
                                           1000,
                                           10000,
                                           100000,
                                           1000000,
                                           10000000,
                                           100000000,
                                           1000000000,
                                           10000000000,
                                           100000000000,
                                           1000000000000,
                                           10000000000000,
                                           100000000000000,
                                           1000000000000000,
                                           10000000000000000,
                                           100000000000000000,
                                           1000000000000000000,
                                           10000000000000000000U};
constexpr int exact_power = 19;       // 10^19 fits 64 bits
constexpr int double_power = 22;      // 10^22 is a double
constexpr int longest_digits = 19;    // so do 19 digits
constexpr int largest_exponent = 400; // beyond a double in either direction

bool digit(char c) {
    return c >= '0' && c <= '9';
}
bool blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f';
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Order of letters with capitals as small ones.
int compare(std::string_view a, std::string_view b) {
    for (std::size_t i = 0; i < a.size() && i < b.size(); ++i) {
        if (lower(a[i]) != lower(b[i])) {
            return lower(a[i]) < lower(b[i]) ? -1 : 1;
        }
    }
    return a.size() == b.size() ? 0 : (a.size() < b.size() ? -1 : 1);
}

// 10^n for n up to 400: off by at most a few roundings; exact up to 22.
double ten_to(int n) {
    double power = 1.0, base = 1e22;
    for (int left = n / double_power; left > 0; --left) {
        power *= base;
    }
    base = 1.0;
    for (int left = n % double_power; left > 0; --left) {
        base *= 10.0;
    }
    return power * base;
}

// digits * 10^-places, the nearest double: a 128 by 64 bit division, its remainder kept as a sticky last bit.
double divided(std::uint64_t digits, int places) {
    const std::uint64_t by = powers_of_ten[places];
    const int up = std::countl_zero(digits), by_up = std::countl_zero(by);
    const Wide high = static_cast<Wide>(digits << up) << 63;
    const std::uint64_t divisor = by << by_up;
    auto quotient = static_cast<std::uint64_t>(high / divisor);
    if (static_cast<Wide>(quotient) * divisor != high) {
        quotient |= 1U;
    }
    return std::ldexp(static_cast<double>(quotient), by_up - up - 63);
}

double scaled(std::uint64_t digits, int exponent) {
    constexpr std::uint64_t exact = std::uint64_t{1} << 53;
    if (digits == 0) {
        return 0.0;
    }
    if (exponent <= 0 && -exponent <= exact_power) {
        if (digits <= exact) { // both are doubles: one rounding
            return static_cast<double>(digits) / static_cast<double>(powers_of_ten[-exponent]);
        }
        return divided(digits, -exponent);
    }
    if (exponent >= 0) {
        return static_cast<double>(digits) * ten_to(exponent);
    }
    const double half = static_cast<double>(digits) / ten_to(-exponent / 2); // 10^-exponent may not fit
    return half / ten_to(-exponent - -exponent / 2);
}

} // namespace

bool read_decimal(std::string_view text, std::size_t& at, double& value) {
    std::size_t i = at;
    const std::size_t size = text.size();
    const bool negative = i < size && text[i] == '-';
    if (i < size && (text[i] == '-' || text[i] == '+')) {
        ++i;
    }
    std::uint64_t digits = 0;
    int kept = 0, exponent = 0;
    bool any = false, point = false;
    for (; i < size; ++i) {
        const char c = text[i];
        if (digit(c)) {
            any = true;
            if (kept < longest_digits) {
                digits = digits * 10 + static_cast<std::uint64_t>(c - '0');
                kept += digits != 0 ? 1 : 0;
                exponent -= point ? 1 : 0;
            } else if (!point) {
                ++exponent;
            }
        } else if (c == '.' && !point) {
            point = true;
        } else {
            break;
        }
    }
    if (!any) {
        return false;
    }
    if (i + 1 < size && (text[i] == 'e' || text[i] == 'E')) {
        std::size_t j = i + 1;
        const bool down = text[j] == '-';
        if (text[j] == '-' || text[j] == '+') {
            ++j;
        }
        if (j < size && digit(text[j])) { // else the letter is not ours: "2em"
            int power = 0;
            for (; j < size && digit(text[j]); ++j) {
                power = std::min(power * 10 + (text[j] - '0'), 100'000);
            }
            exponent += down ? -power : power;
            i = j;
        }
    }
    if (exponent > largest_exponent && digits != 0) {
        return false;
    }
    const double size_of = exponent < -largest_exponent ? 0.0 : scaled(digits, exponent);
    if (!(size_of <= std::numeric_limits<double>::max())) {
        return false;
    }
    value = negative ? -size_of : size_of;
    at = i;
    return true;
}

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && blank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && blank(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

bool whole_decimal(std::string_view text, double& value) {
    const std::string_view bare = without_blanks(text);
    std::size_t at = 0;
    return read_decimal(bare, at, value) && at == bare.size();
}

bool whole_integer(std::string_view text, std::int32_t& value) {
    const std::string_view bare = without_blanks(text);
    std::size_t i = !bare.empty() && (bare[0] == '-' || bare[0] == '+') ? 1 : 0;
    std::int64_t n = 0;
    if (i == bare.size() || bare.size() > 12) {
        return false;
    }
    for (; i < bare.size(); ++i) {
        if (!digit(bare[i])) {
            return false;
        }
        n = n * 10 + (bare[i] - '0');
    }
    n = bare[0] == '-' ? -n : n;
    if (n < std::numeric_limits<std::int32_t>::min() || n > std::numeric_limits<std::int32_t>::max()) {
        return false;
    }
    value = static_cast<std::int32_t>(n);
    return true;
}

bool alike(std::string_view a, std::string_view b) {
    return a.size() == b.size() && compare(a, b) == 0;
}

std::string quotable(std::string_view text) {
    constexpr std::size_t longest = 32;
    std::string out = "\"";
    for (const char c : text.substr(0, longest)) {
        out += c >= ' ' && c <= '~' && c != '"' && c != '<' && c != '>' ? c : '?';
    }
    return out + (text.size() > longest ? "...\"" : "\"");
}

bool NameIndex::before(std::string_view a, std::string_view b) const {
    return letters_alike_ ? compare(a, b) < 0 : a < b;
}

void NameIndex::sort() {
    std::stable_sort(entries_.begin(), entries_.end(),
                     [this](const Entry& a, const Entry& b) { return before(a.name, b.name); });
}

const std::uint32_t* NameIndex::find(std::string_view name) const {
    const auto found =
        std::lower_bound(entries_.begin(), entries_.end(), name,
                         [this](const Entry& entry, std::string_view n) { return before(entry.name, n); });
    return found != entries_.end() && !before(name, found->name) ? &found->number : nullptr;
}

} // namespace torchside::drawing
