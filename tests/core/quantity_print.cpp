#include <limits>
#include <string>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/quantity/print.hpp"

using namespace torchside;
using Catch::Approx;

namespace {
constexpr UnitSystem metric = UnitSystem::metric, in_inch = UnitSystem::inch;
}

TEST_CASE("Fixed decimals, ties away from zero", "[print]") {
    CHECK(print_fixed(0.125, 2) == "0.13");
    CHECK(print_fixed(-0.125, 2) == "−0.13");
    CHECK(print_fixed(2.5, 0) == "3");
    CHECK(print_fixed(1.005, 2) == "1.01"); // no double holds 1.005: a tie as it was typed
    CHECK(print_fixed(1.00499999, 2) == "1.00");
    CHECK(print_fixed(0.285, 2) == "0.29");
    CHECK(print_fixed(9.995, 2) == "10.00");
    CHECK(print_fixed(0.05, 2) == "0.05");
    CHECK(print_fixed(0, 3) == "0.000");
    CHECK(print_fixed(12, -1) == "12");
    CHECK(print_fixed(123456789.123456, 6) == "123\u2009456\u2009789.123456");
}

TEST_CASE("No minus sign on nothing", "[print]") {
    CHECK(print_fixed(-0.0, 2) == "0.00");
    CHECK(print_fixed(-0.004, 2) == "0.00");
    CHECK(print_trimmed(-0.0001, 2) == "0");
    CHECK(print_significant(-0.0, 3) == "0");
}

TEST_CASE("Gaps from 10 000 on", "[print]") {
    CHECK(print_fixed(9999, 0) == "9999");
    CHECK(print_fixed(9999.6, 0) == "10\u2009000");
    CHECK(print_fixed(12000, 1) == "12\u2009000.0");
    CHECK(print_fixed(-1234567, 0) == "−1\u2009234\u2009567");
}

TEST_CASE("What is no number, or too large a one", "[print]") {
    CHECK(print_fixed(std::numeric_limits<double>::quiet_NaN(), 2) == "—");
    CHECK(print_trimmed(std::numeric_limits<double>::infinity(), 2) == "—");
    CHECK(print_significant(-std::numeric_limits<double>::infinity(), 2) == "—");
    CHECK(print_fixed(1e15, 2) == ">1e15");
    CHECK(print_fixed(-1e300, 2) == "<−1e15");
    CHECK(print_fixed(1e14, 6) == "100\u2009000\u2009000\u2009000\u2009000.000000");
    CHECK(print(Duration{1e300, second}).text() == ">1e15 h");
}

TEST_CASE("Significant figures", "[print]") {
    CHECK(print_significant(1234.5, 3) == "1230");
    CHECK(print_significant(12345, 2) == "12\u2009000");
    CHECK(print_significant(0.00123456, 3) == "0.00123");
    CHECK(print_significant(9.996, 3) == "10.0");
    CHECK(print_significant(9.994, 3) == "9.99");
    CHECK(print_significant(999.6, 3) == "1000");
    CHECK(print_significant(6, 3) == "6.00");
    CHECK(print_significant(1e-300, 3) == "0.000000000000");
}

TEST_CASE("Lengths", "[print]") {
    CHECK(print(Length{6, mm}, metric).text() == "6 mm");
    CHECK(print(Length{0.7591, mm}, metric).text() == "0.759 mm");
    CHECK(print(Length{1.51892, mm}, metric).text() == "1.52 mm");
    CHECK(print(Length{19.05, mm}, metric).text() == "19.05 mm");
    CHECK(print(Length{150.26, mm}, metric).text() == "150.3 mm");
    CHECK(print(Length{1234.5, mm}, metric).text() == "1235 mm");
    CHECK(print(Length{15, metre}, metric).text() == "15 m");
    CHECK(print(Length{6.35, mm}, in_inch).text() == "0.250 in");
    CHECK(print(Length{6, mm}, in_inch).text() == "0.2362 in");
    CHECK(print(Length{38.1, mm}, in_inch).text() == "1.500 in");
    CHECK(print(Length{15, metre}, in_inch).text() == "49.2 ft");
}

TEST_CASE("The nearest 64th, with its error", "[print]") {
    const auto f = inch_fraction(Length{6, mm});
    REQUIRE(f);
    CHECK(f->text == "15/64 in");
    CHECK_FALSE(f->exact);
    CHECK(inch_fraction(Length{6.35, mm})->text == "1/4 in");
    CHECK(inch_fraction(Length{6.35, mm})->exact);
    CHECK(inch_fraction(Length{1.5, mm})->text == "1/16 in");
    CHECK(f->error.in(inch) == Approx(15.0 / 64 - 6 / 25.4).epsilon(1e-12));
    CHECK(inch_fraction(Length{38.1, mm})->text == "1 1/2 in");
    CHECK(inch_fraction(Length{25.4, mm})->text == "1 in");
    CHECK(inch_fraction(Length{50.6, mm})->text == "1 63/64 in");
    CHECK(inch_fraction(Length{0.2, mm})->text == "1/64 in");
    CHECK_FALSE(inch_fraction(Length{0.19, mm}));
    CHECK_FALSE(inch_fraction(Length{0, mm}));
    CHECK_FALSE(inch_fraction(Length{26, metre}));
}

TEST_CASE("The other quantities, printed", "[print]") {
    CHECK(print(Speed{1637.4, mm_min}, metric).text() == "1637 mm/min");
    CHECK(print(Speed{12000, mm_min}, metric).text() == "12\u2009000 mm/min");
    CHECK(print(Speed{120, in_min}, in_inch).text() == "120 in/min");
    CHECK(print(Acceleration{500, mm_s2}, metric).text() == "500 mm/s²");
    CHECK(print(Acceleration{500, mm_s2}, in_inch).text() == "19.7 in/s²");
    CHECK(print(Pressure{4.5, bar}, metric).text() == "4.5 bar");
    CHECK(print(Pressure{4.5, bar}, in_inch).text() == "65 psi");
    CHECK(print(Pressure{0.05, bar}, metric).text() == "0.05 bar");
    CHECK(print(Flow{150, litre_min}, metric).text() == "150 L/min");
    CHECK(print(Flow{150, litre_min}, in_inch).text() == "5.3 cfm");
    CHECK(print(Volume{100, litre}, metric).text() == "100 L");
    CHECK(print(Volume{100, litre}, in_inch).text() == "26.4 gal");
    CHECK(print(Mass{0.74, kg}, metric).text() == "0.74 kg");
    CHECK(print(Mass{0.74, kg}, in_inch).text() == "1.63 lb");
    CHECK(print(Current{45, ampere}).text() == "45 A");
    CHECK(print(Voltage{128.25, volt}).text() == "128.3 V");
    CHECK(print_percent(0.3).text() == "30 %");
    CHECK(print_percent(0.125, 1).text() == "12.5 %");
}

TEST_CASE("Times", "[print]") {
    struct Row {
        double s;
        const char* text;
    };
    constexpr Row rows[] = {
        {0, "0 s"},          {0.48, "0.48 s"},        {0.5, "0.5 s"},   {9.999, "10 s"},
        {12.34, "12.3 s"},   {59.94, "59.9 s"},       {59.95, "1 min"}, {185, "3 min 05 s"},
        {200, "3 min 20 s"}, {3599.4, "59 min 59 s"}, {3599.5, "1 h"},  {3900, "1 h 05 min"},
        {86400, "24 h"},     {5400, "1 h 30 min"},    {3629.9, "1 h"},  {3599700, "999 h 55 min"},
        {3603600, "1001 h"},
    };
    for (const Row& r : rows) {
        CHECK(print(Duration{r.s, second}).text() == r.text);
    }
    CHECK(print(Duration{-200, second}).text() == "−3 min 20 s");
}

TEST_CASE("A figure is shown to a step that fits its band", "[print]") {
    const auto shown = [](double value, double spread) {
        return print_band(value, value - spread / 2, value + spread / 2, "").value;
    };
    CHECK(shown(1637, 800) == "1640");
    CHECK(shown(1637, 25) == "1637");
    CHECK(shown(1637.3, 24.9) == "1637.5");
    CHECK(shown(0.4837, 0.5) == "0.48");
    CHECK(shown(0.4937, 0.7) == "0.50"); // a step of 0.02
    CHECK(shown(132.44, 26) == "132");
    CHECK(shown(-1637, 800) == "−1640");
    // No band, no rounding: six figures.
    CHECK(shown(1637.123, 0) == "1637");
    CHECK(shown(137.123, 0) == "137.12");
    CHECK(print_band(2, 3, 1, "").value == "2");
    CHECK(shown(137.12, std::numeric_limits<double>::quiet_NaN()) == "137.12");
    CHECK(shown(137.12, std::numeric_limits<double>::infinity()) == "137.12");
}

TEST_CASE("An estimate's three figures share their step", "[print]") {
    const PrintedBand feed = print(Estimate<Speed>{{1637.2, mm_min}, {1301, mm_min}, {2103, mm_min}, {}}, metric);
    CHECK(feed.value == "1640");
    CHECK(feed.low == "1300");
    CHECK(feed.high == "2100");
    CHECK(std::string{feed.unit} == "mm/min");
    const PrintedBand kerf = print(Estimate<Length>{{1.5237, mm}, {1.31, mm}, {1.79, mm}, {}}, metric);
    CHECK(kerf.value == "1.52");
    CHECK(kerf.low == "1.31");
    CHECK(print(Estimate<Length>{{1.5237, mm}, {1.31, mm}, {1.79, mm}, {}}, in_inch).value == "0.0600");
    CHECK(print(Estimate<Duration>{{0.51, second}, {0.3, second}, {0.9, second}, {}}).value == "0.52");
    const PrintedBand exact = print(Estimate<Voltage>{{128, volt}, {128, volt}, {128, volt}, {}});
    CHECK(exact.value == "128");
    CHECK(exact.low == exact.high);
}
