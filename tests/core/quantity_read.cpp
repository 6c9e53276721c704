#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/quantity/read.hpp"
#include "tests/core/typed_readers.hpp"

using namespace torchside;
using namespace torchside::test;
using Catch::Approx;

namespace {

constexpr UnitSystem metric = UnitSystem::metric, in_inch = UnitSystem::inch;

template <class Q>
double base(Q q) {
    if constexpr (std::is_same_v<Q, double>) {
        return q;
    } else {
        return q.in(Unit<typename Q::kind>{1.0});
    }
}

/// The value in base units, -1 when there is no plain answer.
template <class Q>
double value(const Reading<Q>& r) {
    return r.answer() ? base(r.answer()->value) : -1.0;
}

template <class Q>
std::string as(const Reading<Q>& r) {
    return r.answer() ? r.answer()->as : "no answer";
}

template <class Q>
std::optional<Unread> why(const Reading<Q>& r) {
    return r.refusal() ? std::optional(r.refusal()->why) : std::nullopt;
}

} // namespace

TEST_CASE("Lengths as a shop types them", "[read]") {
    struct Row {
        std::string_view text;
        double mm_value;
        std::string_view as;
    };
    // Exact: a value is the double nearest to what was typed.
    constexpr Row rows[] = {
        {"6", 6, "6 mm"},
        {"6mm", 6, "6 mm"},
        {"6 mm", 6, "6 mm"},
        {"  6   MM. ", 6, "6 mm"},
        {"6,5", 6.5, "6.5 mm"},
        {"6.5", 6.5, "6.5 mm"},
        {"06.50", 6.5, "6.50 mm"},
        {"0,125", 0.125, "0.125 mm"},
        {"6.", 6, "6 mm"},
        {"3/16", 4.7625, "3/16 in"},
        {"3/16\"", 4.7625, "3/16 in"},
        {"3/16 in", 4.7625, "3/16 in"},
        {"3 / 16 inches", 4.7625, "3/16 in"},
        {"3⁄16", 4.7625, "3/16 in"},
        {"³⁄₁₆", 4.7625, "3/16 in"},
        {"1³⁄₁₆", 30.1625, "1 3/16 in"},
        {"1/4", 6.35, "1/4 in"},
        {"1-1/2", 38.1, "1 1/2 in"},
        {"1 1/2", 38.1, "1 1/2 in"},
        {"1 - 1/2 in", 38.1, "1 1/2 in"},
        {"1–1/2″", 38.1, "1 1/2 in"},
        {"⅛", 3.175, "1/8 in"},
        {"½", 12.7, "1/2 in"},
        {"1½", 38.1, "1 1/2 in"},
        {"1 ½", 38.1, "1 1/2 in"},
        {"1-½\"", 38.1, "1 1/2 in"},
        {"⅟16", 1.5875, "1/16 in"},
        {"¼”", 6.35, "1/4 in"},
        {"1/4''", 6.35, "1/4 in"},
        {"½ mm", 0.5, "1/2 mm"},
        {"3 1/2 mm", 3.5, "3 1/2 mm"},
        {".125\"", 3.175, "0.125 in"},
        {",5 mm", 0.5, "0.5 mm"},
        {"0.6 cm", 6, "0.6 cm"},
        {"2.5m", 2500, "2.5 m"},
        {"4 ft", 1219.2, "4 ft"},
        {"4'", 1219.2, "4 ft"},
        {"4' 6\"", 1371.6, "4 ft 6 in"},
        {"5′6½″", 1689.1, "5 ft 6 1/2 in"},
        {"1 m 20 cm", 1200, "1 m 20 cm"},
        {"125 thou", 3.175, "125 thou"},
        {"250 mil", 6.35, "250 mil"},
        {"250 mils", 6.35, "250 mil"},
        {"500 µm", 0.5, "500 µm"},
        {"1,234.5", 1234.5, "1234.5 mm"},
        {"1.234,5", 1234.5, "1234.5 mm"},
        {"1,234,567", 1234567, "1234567 mm"},
        {"12\u2009000 mm", 12000, "12000 mm"},
        {"６ mm", 6, "6 mm"},
        {"\ufeff6 mm", 6, "6 mm"},
    };
    for (const Row& r : rows) {
        INFO(std::string{r.text});
        CHECK(value(read_length(r.text, metric)) == r.mm_value);
        CHECK(as(read_length(r.text, metric)) == std::string{r.as});
    }
}

TEST_CASE("A bare number is in the reader's unit, a bare fraction in inches", "[read]") {
    CHECK(value(read_length("0.25", in_inch)) == 6.35);
    CHECK(value(read_length(".125", in_inch)) == 3.175);
    CHECK(as(read_length(".125", in_inch)) == "0.125 in");
    CHECK(value(read_length(".125", metric)) == 0.125);
    CHECK(value(read_length("1", in_inch)) == 25.4);
    CHECK(value(read_length("3/16", in_inch)) == 4.7625);
    CHECK(value(read_length("6 mm", in_inch)) == 6);
}

TEST_CASE("Every vulgar fraction of Unicode", "[read]") {
    struct Row {
        std::string_view text;
        double inches;
    };
    constexpr Row rows[] = {
        {"¼", 1.0 / 4}, {"½", 1.0 / 2}, {"¾", 3.0 / 4}, {"⅐", 1.0 / 7}, {"⅑", 1.0 / 9}, {"⅒", 1.0 / 10}, {"⅓", 1.0 / 3},
        {"⅔", 2.0 / 3}, {"⅕", 1.0 / 5}, {"⅖", 2.0 / 5}, {"⅗", 3.0 / 5}, {"⅘", 4.0 / 5}, {"⅙", 1.0 / 6},  {"⅚", 5.0 / 6},
        {"⅛", 1.0 / 8}, {"⅜", 3.0 / 8}, {"⅝", 5.0 / 8}, {"⅞", 7.0 / 8}, {"↉", 0.0},
    };
    for (const Row& r : rows) {
        INFO(std::string{r.text});
        CHECK(value(read_length(r.text, metric)) == Approx(25.4 * r.inches).epsilon(1e-15));
        CHECK(value(read_length("2" + std::string{r.text}, metric)) == Approx(25.4 * (2 + r.inches)).epsilon(1e-15));
    }
}

TEST_CASE("Asked back, not guessed", "[read]") {
    struct Row {
        std::string_view text;
        std::string_view first;
        double first_mm;
        std::string_view second;
        double second_mm;
        std::size_t answers;
        Doubt doubt = Doubt::fraction;
    };
    constexpr Row rows[] = {
        {"11/4", "11/4 in = 2.75 in", 69.85, "1 1/4 in = 1.25 in", 31.75, 2},
        {"11/4\"", "11/4 in = 2.75 in", 69.85, "1 1/4 in = 1.25 in", 31.75, 2},
        {"113/16", "113/16 in = 7.0625 in", 179.3875, "11 3/16 in = 11.1875 in", 284.1625, 3},
        {"16/3", "16/3 in = 5.3333 in", 16 * 25.4 / 3, "3/16 in = 0.1875 in", 4.7625, 2},
        {"11/4 mm", "11/4 mm = 2.75 mm", 2.75, "1 1/4 mm = 1.25 mm", 1.25, 2},
        {"1,000", "1000 mm", 1000, "1.000 mm", 1, 2, Doubt::comma},
        {"1,000 in", "1000 in", 25400, "1.000 in", 25.4, 2, Doubt::comma},
        {"6 mil", "6 mil = 0.006 in", 0.1524, "6 mm", 6, 2, Doubt::mil},
    };
    for (const Row& r : rows) {
        INFO(std::string{r.text});
        const Reading<Length> reading = read_length(r.text, metric);
        REQUIRE(reading.question());
        const Question<Length>& q = *reading.question();
        CHECK(q.doubt == r.doubt);
        REQUIRE(q.answers.size() == r.answers);
        CHECK(q.answers[0].as == std::string{r.first});
        CHECK(q.answers[0].value.in(mm) == Approx(r.first_mm).epsilon(1e-15));
        CHECK(q.answers[1].as == std::string{r.second});
        CHECK(q.answers[1].value.in(mm) == Approx(r.second_mm).epsilon(1e-15));
    }
    // The same everywhere a number goes.
    CHECK(read_speed("1,700", metric).question());
    CHECK(read_number("1,000").question());
    CHECK(read_current("1,000").question());
    CHECK(value(read_length("4/4", metric)) == 25.4);
    CHECK(read_number("0,125").answer());
    CHECK(read_number("1.000").answer()->value == 1.0);
}

TEST_CASE("Gauges are a reading of their own", "[read]") {
    for (const char* text :
         {"16 ga", "16ga", "#16", "# 16", "16-ga", "16 gauge", "gauge 16", "gage 16", "ga 16", "ga. 16", "16GA."}) {
        INFO(text);
        REQUIRE(read_length_or_gauge(text, metric).gauge());
        CHECK(read_length_or_gauge(text, metric).gauge()->number == 16);
        CHECK(why(read_length(text, metric)) == Unread::gauge);
    }
    for (const char* text :
         {"16.5 ga", "1/2 ga", "#", "#x", "ga", "#16 mm", "1000 ga", "#16 17", "1,000 ga", "-16 ga"}) {
        INFO(text);
        CHECK(read_length_or_gauge(text, metric).refusal());
    }
    CHECK(why(read_speed("16 ga", metric)) == Unread::gauge);
}

TEST_CASE("Refused, with the reason", "[read]") {
    struct Row {
        std::string_view text;
        Unread reason;
    };
    using namespace std::string_view_literals;
    constexpr Row rows[] = {
        {"", Unread::nothing},
        {"   \t\n", Unread::nothing},
        {"\u00a0", Unread::nothing},
        {"nan", Unread::no_number},
        {"NaN", Unread::no_number},
        {"inf", Unread::no_number},
        {"1e3", Unread::power_of_ten},
        {"1E3 mm", Unread::power_of_ten},
        {"1e-3", Unread::power_of_ten},
        {"-2", Unread::negative},
        {"−2 mm", Unread::negative},
        {"+2", Unread::plus_sign},
        {"1234567890123456789012345678901234567890", Unread::many_digits},
        {"0.1234567890123456", Unread::many_digits},
        {"1234567/8", Unread::long_fraction},
        {"123456789012345678901234567890123456789012345678901234567890", Unread::too_long},
        {"5 A", Unread::other_quantity},
        {"5 bar", Unread::other_quantity},
        {"5 mm/min", Unread::other_quantity},
        {"5 m3", Unread::other_quantity},
        {"6 7", Unread::many_numbers},
        {"6x4", Unread::many_numbers},
        {"6 mm 7 mm", Unread::many_numbers},
        {"3/16/2", Unread::unfinished_fraction},
        {"6 in 4 ft", Unread::many_numbers},
        {"4' 13\"", Unread::many_numbers},
        {"1'000", Unread::many_numbers},
        {"4'.5\" x", Unread::many_numbers},
        {"12 000", Unread::many_numbers},
        {"6 parsec", Unread::unknown_unit},
        {"6 <b>", Unread::not_understood},
        {"6°", Unread::other_quantity},
        {"mm", Unread::no_number},
        {"quarter", Unread::no_number},
        {"/4", Unread::no_number},
        {".", Unread::no_number},
        {"1/", Unread::unfinished_fraction},
        {"1/0", Unread::zero_below},
        {"1.2.3", Unread::marks_clash},
        {"1,2,3", Unread::marks_clash},
        {"1,23.5", Unread::marks_clash},
        {"1.5 1/2", Unread::mark_before_fraction},
        {"1 5/4", Unread::large_fraction},
        {"1½½", Unread::many_numbers},
        {"6²", Unread::many_numbers},
        {"0x10", Unread::many_numbers},
        {"6\xff", Unread::not_text},
        {"\xc0\xaf", Unread::not_text},
        {"\xed\xa0\x80", Unread::not_text},
        {"6\xe2\x85", Unread::not_text},
        {"6\0mm"sv, Unread::not_understood},
        {"\0"sv, Unread::no_number},
    };
    for (const Row& r : rows) {
        INFO(std::string{r.text});
        CHECK(why(read_length(r.text, metric)) == r.reason);
    }
    CHECK(why(read_length(std::string(1000000, '6'), metric)) == Unread::too_long);
    CHECK(value(read_length(std::string(1000, ' ') + "6" + std::string(1000, ' '), metric)) == 6);
}

TEST_CASE("Speeds", "[read]") {
    CHECK(value(read_speed("120 ipm", metric)) == 3048);
    CHECK(value(read_speed("120 in/min", metric)) == 3048);
    CHECK(value(read_speed("120 inches per minute", metric)) == 3048);
    CHECK(value(read_speed("120\"/min", metric)) == 3048);
    CHECK(value(read_speed("120", in_inch)) == 3048);
    CHECK(value(read_speed("2.5 m/min", metric)) == 2500);
    CHECK(value(read_speed("2,5 m / min", metric)) == 2500);
    CHECK(value(read_speed("1700", metric)) == 1700);
    CHECK(value(read_speed("1700 mm/min", in_inch)) == 1700);
    CHECK(value(read_speed("30 mm/s", metric)) == 1800);
    CHECK(value(read_speed("2 in/s", metric)) == 3048);
    CHECK(value(read_speed("10 ft/min", metric)) == 3048);
    CHECK(as(read_speed("120 ipm", metric)) == "120 in/min");
    CHECK(as(read_speed("65", in_inch)) == "65 in/min");
    CHECK(why(read_speed("120 in", metric)) == Unread::other_quantity);
    CHECK(value(read_acceleration("0.5 m/s2", metric)) == 500);
    CHECK(value(read_acceleration("20 in/s²", metric)) == 508);
    CHECK(why(read_acceleration("20 mm/s", metric)) == Unread::other_quantity);
}

TEST_CASE("The other quantities", "[read]") {
    CHECK(value(read_current("45")) == 45);
    CHECK(value(read_current("45 amps")) == 45);
    CHECK(why(read_current("45 V")) == Unread::other_quantity);
    CHECK(value(read_voltage("240V")) == 240);
    CHECK(value(read_voltage("1.2 kV")) == 1200);
    CHECK(value(read_duration("0.5", second)) == 0.5);
    CHECK(value(read_duration("15", minute)) == 900);
    CHECK(value(read_duration("2", hour)) == 7200);
    CHECK(value(read_duration("500 ms", second)) == 0.5);
    CHECK(value(read_duration("3 min 20 s", second)) == 200);
    CHECK(value(read_duration("3min20s", second)) == 200);
    CHECK(value(read_duration("1 h 05 min", minute)) == 3900);
    CHECK(read_duration("1 h 60 min", minute).refusal());
    CHECK(read_duration("3 min.20 s", minute).refusal()); // a full stop, or a point?
    CHECK(value(read_pressure("6", metric)) == 6);
    CHECK(value(read_pressure("600 kPa", metric)) == 6);
    CHECK(value(read_pressure("0.6 MPa", metric)) == 6);
    CHECK(value(read_pressure("90 psi", metric)) == Approx(6.2052816).epsilon(1e-8));
    CHECK(value(read_pressure("90", in_inch)) == value(read_pressure("90 psi", metric)));
    CHECK(value(read_flow("150", metric)) == 150);
    CHECK(value(read_flow("150 l/min", in_inch)) == 150);
    CHECK(value(read_flow("5.3 cfm", metric)) == Approx(150.07929).epsilon(1e-7));
    CHECK(value(read_flow("5.3", in_inch)) == value(read_flow("5.3 cfm", metric)));
    CHECK(value(read_flow("9 m3/h", metric)) == 150);
    CHECK(value(read_flow("9 m³/h", metric)) == 150);
    CHECK(value(read_volume("100", metric)) == 100);
    CHECK(value(read_volume("26 gal", metric)) == Approx(98.420706).epsilon(1e-8));
    CHECK(value(read_volume("0.1 m³", metric)) == 100);
    CHECK(value(read_mass("10 lbs", metric)) == Approx(4.5359237).epsilon(1e-15));
    CHECK(value(read_number("24")) == 24);
    CHECK(value(read_number("1/2")) == 0.5);
    CHECK(why(read_number("24 A")) == Unread::other_quantity);
}

TEST_CASE("Percentages", "[read]") {
    CHECK(value(read_percent("30")) == 0.3);
    CHECK(value(read_percent("30 %")) == 0.3);
    CHECK(value(read_percent("30 percent")) == 0.3);
    CHECK(value(read_percent("0.3 %")) == Approx(0.003));
    CHECK(value(read_percent("0")) == 0);
    CHECK(value(read_percent("1.5")) == 0.015);
    CHECK(value(read_percent("8.25")) == 0.0825);
    CHECK(value(read_percent("0,5 %")) == 0.005);
    CHECK(value(read_percent("0.3")) == 0.003);
    REQUIRE(read_percent("0.3").answer());
    CHECK(read_percent("0.3").answer()->as == "0.3 %");
    CHECK(read_percent("0.3").answer()->looks_like_share);
    CHECK_FALSE(read_percent("0.3 %").answer()->looks_like_share);
    CHECK_FALSE(read_percent("30").answer()->looks_like_share);
}

TEST_CASE("A field of the workbook, in the unit of its key", "[read]") {
    struct Row {
        std::string_view text;
        FieldUnit unit;
        UnitSystem bare;
        double value;
    };
    constexpr Row rows[] = {
        {"15.3", FieldUnit::metre, metric, 15.3},      {"50 ft", FieldUnit::metre, metric, 15.24},
        {"50", FieldUnit::metre, in_inch, 15.24},      {"1/4", FieldUnit::mm, metric, 6.35},
        {"65", FieldUnit::mm_min, in_inch, 1651},      {"500", FieldUnit::mm_s2, metric, 500},
        {"20", FieldUnit::mm_s2, in_inch, 508},        {"45", FieldUnit::ampere, in_inch, 45},
        {"127", FieldUnit::volt_per_mm, in_inch, 5},   {"8 kVA", FieldUnit::volt_ampere, metric, 8000},
        {"15", FieldUnit::minute, metric, 15},         {"90 s", FieldUnit::minute, metric, 1.5},
        {"1 h 30 min", FieldUnit::minute, metric, 90}, {"5 bar", FieldUnit::bar, in_inch, 5},
        {"100", FieldUnit::litre, metric, 100},        {"150", FieldUnit::litre_min, metric, 150},
        {"9 m3/h", FieldUnit::litre_min, metric, 150}, {"-10", FieldUnit::celsius, metric, -10},
        {"77 F", FieldUnit::celsius, metric, 25},      {"−40 °F", FieldUnit::celsius, metric, -40},
        {"77", FieldUnit::celsius, in_inch, 25},       {"-2", FieldUnit::degree, metric, -2},
        {"−1.5°", FieldUnit::degree, in_inch, -1.5},   {"3 degrees", FieldUnit::degree, metric, 3},
        {"$18.50", FieldUnit::money, metric, 18.5},    {"18,5", FieldUnit::money, metric, 18.5},
        {"10 awg", FieldUnit::awg, metric, 10},        {"6", FieldUnit::mm2, metric, 6},
        {"6 mm²", FieldUnit::mm2, metric, 6},          {"0.6", FieldUnit::none, metric, 0.6},
        {"60 %", FieldUnit::share, metric, 0.6},       {"24", FieldUnit::days, metric, 24},
    };
    for (const Row& r : rows) {
        INFO(std::string{r.text} << " for " << std::string{unit_name(r.unit)});
        CHECK(value(read_field(r.text, r.unit, r.bare)) == r.value);
    }
    CHECK(as(read_field("-10 F", FieldUnit::celsius, metric)) == "−10 °F");
    CHECK(read_field("-1,000", FieldUnit::celsius, metric).question()->answers[1].value == -1.0);
    CHECK(as(read_field("-1.5", FieldUnit::degree, metric)) == "−1.5°");
    CHECK(why(read_field("-", FieldUnit::degree, metric)) == Unread::nothing);
    CHECK(why(read_field("-5", FieldUnit::ampere, metric)) == Unread::negative);
}
