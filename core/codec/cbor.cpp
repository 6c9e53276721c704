#include "core/codec/cbor.hpp"

#include <cmath>

#include "core/codec/decimal.hpp"

namespace torchside::codec {

namespace {

constexpr double exact_limit = 9007199254740992.0; // 2^53
constexpr int most_places = 22;                    // 10^22 is the largest power of ten that a double holds exactly

constexpr unsigned flag_false = 20;
constexpr unsigned null_value = 22;
constexpr unsigned float_16 = 25;
constexpr unsigned float_32 = 26;
constexpr unsigned float_64 = 27;
constexpr std::uint64_t decimal_fraction = 4; // the tag

void append(std::string& out, std::uint64_t value, unsigned bytes) {
    while (bytes-- > 0) {
        out += static_cast<char>(static_cast<unsigned char>(value >> (8 * bytes) & 0xFF));
    }
}

void append_head(std::string& out, Cbor type, unsigned info) {
    append(out, static_cast<unsigned>(type) << 5 | info, 1);
}

double power_of_ten(int places) {
    double out = 1.0;
    while (places-- > 0) {
        out *= 10.0;
    }
    return out;
}

void integer(std::string& out, double value) {
    if (value < 0.0) {
        cbor_head(out, Cbor::negative_int, static_cast<std::uint64_t>(-value) - 1);
    } else {
        cbor_head(out, Cbor::unsigned_int, static_cast<std::uint64_t>(value));
    }
}

// What a float of 16 bits holds, as a double.
double from_half(std::uint64_t half) {
    const int exponent = static_cast<int>(half >> 10 & 31U);
    const double fraction = static_cast<double>(half & 1023U);
    const double size = exponent == 0    ? std::ldexp(fraction, -24)
                        : exponent == 31 ? HUGE_VAL
                                         : std::ldexp(fraction + 1024.0, exponent - 25);
    return (half >> 15 & 1U) != 0 ? -size : size;
}

// The float of 16 bits whose value this is; false when none is.
bool to_half(double value, std::uint64_t& half) {
    // std::bit_cast by its other name: the wasm compiler's library has not got it.
    const std::uint64_t bits = __builtin_bit_cast(std::uint64_t, value);
    const int exponent = static_cast<int>(bits >> 52 & 2047U) - 1023;
    if (exponent < -14 || exponent > 15 || (bits & 0x3FFFFFFFFFFU) != 0) {
        return false;
    }
    half = bits >> 63 << 15 | static_cast<std::uint64_t>(exponent + 15) << 10 | (bits >> 42 & 1023U);
    return true;
}

// The digits of the shortest decimal of a double: value = mantissa * 10^-places.
bool to_decimal(double value, double& mantissa, int& places) {
    mantissa = 0.0;
    places = 0;
    bool after_point = false;
    const std::string text = decimal_text(value);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == 'e') {
            int exponent = 0;
            for (std::size_t j = i + 2; j < text.size(); ++j) {
                exponent = exponent * 10 + (text[j] - '0');
            }
            places += text[i + 1] == '-' ? exponent : -exponent;
            break;
        }
        after_point = after_point || c == '.';
        if (c >= '0' && c <= '9') {
            mantissa = mantissa * 10.0 + (c - '0');
            places += after_point ? 1 : 0;
        }
    }
    mantissa = value < 0.0 ? -mantissa : mantissa;
    return places >= 0 && places <= most_places && std::fabs(mantissa) < exact_limit &&
           mantissa / power_of_ten(places) == value;
}

} // namespace

void cbor_head(std::string& out, Cbor type, std::uint64_t value) {
    if (value < 24) {
        return append_head(out, type, static_cast<unsigned>(value));
    }
    unsigned info = 24;
    unsigned bytes = 1;
    while (bytes < 8 && value >> (8 * bytes) != 0) {
        ++info;
        bytes *= 2;
    }
    append_head(out, type, info);
    append(out, value, bytes);
}

void cbor_number(std::string& out, double value) {
    if (value == std::floor(value) && std::fabs(value) < exact_limit) {
        return integer(out, value);
    }
    std::string best;
    std::uint64_t half = 0;
    if (to_half(value, half)) {
        append_head(best, Cbor::simple, float_16);
        append(best, half, 2);
    } else if (const auto single = static_cast<float>(value); static_cast<double>(single) == value) {
        append_head(best, Cbor::simple, float_32);
        append(best, __builtin_bit_cast(std::uint32_t, single), 4);
    } else {
        append_head(best, Cbor::simple, float_64);
        append(best, __builtin_bit_cast(std::uint64_t, value), 8);
    }
    double mantissa = 0.0;
    int places = 0;
    if (std::isfinite(value) && to_decimal(value, mantissa, places)) {
        std::string decimal;
        cbor_head(decimal, Cbor::tag, decimal_fraction);
        cbor_head(decimal, Cbor::array, 2);
        integer(decimal, -places);
        integer(decimal, mantissa);
        if (decimal.size() < best.size()) {
            best = decimal;
        }
    }
    out += best;
}

void cbor_text(std::string& out, std::string_view utf8) {
    cbor_head(out, Cbor::text, utf8.size());
    out += utf8;
}

void cbor_flag(std::string& out, bool value) {
    append_head(out, Cbor::simple, flag_false + (value ? 1U : 0U));
}

void cbor_null(std::string& out) {
    append_head(out, Cbor::simple, null_value);
}

Cbor CborReader::next() const {
    return rest_.empty() ? Cbor::simple : static_cast<Cbor>(static_cast<unsigned char>(rest_[0]) >> 5);
}

bool CborReader::take_head(Cbor& type, unsigned& info, std::uint64_t& value) {
    if (rest_.empty()) {
        return false;
    }
    type = next();
    info = static_cast<unsigned char>(rest_[0]) & 31U;
    const std::size_t bytes = info < 24 ? 0 : info < 28 ? std::size_t{1} << (info - 24) : 9;
    if (bytes > 8 || rest_.size() <= bytes) {
        return false;
    }
    value = bytes == 0 ? info : 0;
    for (std::size_t i = 1; i <= bytes; ++i) {
        value = value << 8 | static_cast<unsigned char>(rest_[i]);
    }
    rest_.remove_prefix(1 + bytes);
    return true;
}

bool CborReader::head(Cbor type, std::uint64_t most, std::uint64_t& value) {
    Cbor is{};
    unsigned info = 0;
    return take_head(is, info, value) && is == type && value <= most;
}

bool CborReader::number(double& value) {
    Cbor type{};
    unsigned info = 0;
    std::uint64_t bits = 0;
    if (!take_head(type, info, bits)) {
        return false;
    }
    constexpr auto most = static_cast<std::uint64_t>(exact_limit);
    switch (type) {
    case Cbor::unsigned_int:
    case Cbor::negative_int:
        value = type == Cbor::unsigned_int ? static_cast<double>(bits) : -1.0 - static_cast<double>(bits);
        return bits < most;
    case Cbor::tag: {
        std::uint64_t count = 0;
        std::uint64_t places = 0;
        double mantissa = 0.0;
        if (bits != decimal_fraction || !head(Cbor::array, 2, count) || count != 2 ||
            !head(Cbor::negative_int, most_places - 1, places) ||
            (next() != Cbor::unsigned_int && next() != Cbor::negative_int) || !number(mantissa)) {
            return false;
        }
        value = mantissa / power_of_ten(static_cast<int>(places) + 1);
        return true;
    }
    case Cbor::simple:
        value = info == float_16   ? from_half(bits)
                : info == float_32 ? static_cast<double>(__builtin_bit_cast(float, static_cast<std::uint32_t>(bits)))
                                   : __builtin_bit_cast(double, bits);
        return info >= float_16 && info <= float_64;
    default:
        return false;
    }
}

bool CborReader::string(Cbor type, std::size_t most, std::string_view& value) {
    std::uint64_t size = 0;
    if (!head(type, most, size) || size > rest_.size()) {
        return false;
    }
    value = rest_.substr(0, static_cast<std::size_t>(size));
    rest_.remove_prefix(value.size());
    return true;
}

bool CborReader::flag(bool& value) {
    std::uint64_t bits = 0;
    value = head(Cbor::simple, flag_false + 1, bits) && bits == flag_false + 1;
    return bits == flag_false || bits == flag_false + 1;
}

bool CborReader::null() {
    std::uint64_t bits = 0;
    return head(Cbor::simple, null_value, bits) && bits == null_value;
}

} // namespace torchside::codec
