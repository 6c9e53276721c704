// Doubles and decimal text against the C library of the machine, which rounds both ways exactly.
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <string>

#include "core/codec/decimal.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::codec;

namespace {

std::string by_library(double value) {
    char buffer[40];
    for (int digits = 15; digits <= 17; ++digits) {
        std::snprintf(buffer, sizeof buffer, "%.*g", digits, value);
        if (std::strtod(buffer, nullptr) == value) {
            break;
        }
    }
    return buffer;
}

double any_finite(test::Rng& rng) {
    for (;;) {
        const double x = __builtin_bit_cast(double, rng.bits());
        if (std::isfinite(x)) {
            return x;
        }
    }
}

bool same_bits(double a, double b) {
    return __builtin_bit_cast(std::uint64_t, a) == __builtin_bit_cast(std::uint64_t, b);
}

} // namespace

TEST_CASE("the header's examples, and edges of the doubles") {
    CHECK(read_decimal("0.1") == 0x1.999999999999ap-4);
    CHECK(decimal_text(0.1) == "0.1");
    CHECK(decimal_text(1.0 / 3.0) == "0.3333333333333333");
    CHECK(same_bits(read_decimal("-0"), -0.0));
    CHECK(same_bits(read_decimal("-1e-400"), -0.0));
    CHECK(read_decimal("0e999999999999") == 0.0);
    CHECK(std::isinf(read_decimal("1.7976931348623159e308"))); // half a step above the largest
    CHECK(read_decimal("1.7976931348623158e308") == std::numeric_limits<double>::max());
    CHECK(read_decimal("5e-324") == std::numeric_limits<double>::denorm_min());
    CHECK(read_decimal("2.4703282292062327e-324") == 0.0);                                       // below half the least
    CHECK(read_decimal("2.4703282292062328e-324") == std::numeric_limits<double>::denorm_min()); // above
    CHECK(read_decimal("2.2250738585072011e-308") ==
          0x0.fffffffffffffp-1022); // long known to hang or round wrongly elsewhere
}

TEST_CASE("ties between doubles go to the even one, and what is past a tie does not") {
    CHECK(read_decimal("9007199254740993") == 9007199254740992.0);
    CHECK(read_decimal("9007199254740993.0000000000000000000000000000000000000000001") == 9007199254740994.0);
    CHECK(read_decimal("9007199254740995") == 9007199254740996.0);
    CHECK(read_decimal("0.500000000000000166533453693773481063544750213623046875") == 0.5000000000000002);
    CHECK(read_decimal("0.500000000000000055511151231257827021181583404541015625") == 0.5);
}

TEST_CASE("zeros before and figures without end are read, and a sign of either kind") {
    CHECK(read_decimal(std::string(300, '0') + "12.5") == 12.5);
    CHECK(read_decimal("." + std::string(300, '0') + "125e301") == 1.25);
    CHECK(read_decimal("0." + std::string(500, '3')) == 1.0 / 3.0);
    CHECK(read_decimal(std::string(400, '3') + "e-400") == 1.0 / 3.0);
    CHECK(read_decimal("9007199254740993." + std::string(200, '0') + "1") == 9007199254740994.0);
    CHECK(read_decimal("+.5") == 0.5);
    CHECK(read_decimal("5.") == 5.0);
}

TEST_CASE("printed and read as the C library does: random doubles of every size") {
    test::Rng rng(11);
    for (int i = 0; i < 20000; ++i) {
        const double x = any_finite(rng);
        const std::string text = decimal_text(x);
        INFO(text);
        REQUIRE(text == by_library(x));
        REQUIRE(same_bits(read_decimal(text), x));
    }
}

TEST_CASE("printed and read as the C library does: numbers as people write them") {
    test::Rng rng(12);
    for (int i = 0; i < 20000; ++i) {
        const auto whole = static_cast<double>(rng.below(1000000));
        const double x = whole / std::pow(10.0, static_cast<double>(rng.below(9)));
        const std::string text = decimal_text(x);
        INFO(text);
        REQUIRE(text == by_library(x));
        REQUIRE(same_bits(read_decimal(text), x));
    }
}

TEST_CASE("read as the C library does: up to 64 characters of figures, point and exponent") {
    test::Rng rng(13);
    for (int i = 0; i < 20000; ++i) {
        std::string text = rng.chance(0.3) ? "-" : "";
        const std::size_t before = 1 + rng.below(20), after = rng.below(30);
        for (std::size_t k = 0; k < before; ++k) {
            text += static_cast<char>('0' + rng.below(10));
        }
        if (after > 0) {
            text += '.';
            for (std::size_t k = 0; k < after; ++k) {
                text += static_cast<char>('0' + rng.below(10));
            }
        }
        if (rng.chance(0.7)) {
            text += rng.chance(0.5) ? 'e' : 'E';
            text += rng.chance(0.5) ? "-" : rng.chance(0.5) ? "+" : "";
            text += std::to_string(rng.below(rng.chance(0.5) ? 30 : 400));
        }
        INFO(text);
        REQUIRE(same_bits(read_decimal(text), std::strtod(text.c_str(), nullptr)));
    }
}
