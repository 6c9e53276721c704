// Other languages than English: their tables and their numbers.
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "core/quantity/field_unit.hpp"
#include "core/quantity/print.hpp"
#include "core/words/languages.hpp"
#include "generated/language_list.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/metal.hpp"
#include "generated/words/part.hpp"

using namespace torchside;

namespace {

constexpr Units comma{UnitSystem::metric, ','};

double read(std::string_view text, FieldUnit unit, Units units) {
    const Reading<double> reading = read_field(text, unit, units);
    return reading.answer() != nullptr ? reading.answer()->value : -1.0;
}

} // namespace

TEST_CASE("every language of the list has a table, and no other", "[words]") {
    REQUIRE(std::size(language_words) >= 2);
    for (std::size_t i = 0; i < std::size(language_words); ++i) {
        const Language* language = language_of(language_words[i]);
        REQUIRE(language != nullptr);
        CHECK(std::string(language->code) == std::string(language_words[i]));
        CHECK(!phrase(words::metal::mild_steel, *language).empty());
    }
    CHECK(language_of("xx") == nullptr);
    CHECK(language_of("") == nullptr);
    CHECK(language_codes().starts_with("en, "));
}

TEST_CASE("a text is said in the language that is asked for, with its decimal sign", "[words]") {
    const Language& spanish = *language_of("es");
    const Text load = words::circuit::Load{.breaker = Current{20, ampere}, .load = Current{45.9, ampere}};
    const std::string said = say(load, Speech(spanish, UnitSystem::metric));
    CHECK(said.find("45,9 A") != std::string::npos);
    CHECK(said.find("20 A") != std::string::npos);
    CHECK(said != say(load, UnitSystem::metric));
    const auto holes = [&](int count) {
        return say(words::part::SmallHoles{.count = count, .least = words::size(Length{6.35, mm})},
                   Speech(spanish, UnitSystem::metric));
    };
    CHECK(holes(1) != holes(3)); // not by the figure alone
    CHECK(holes(3).find("6,35 mm") != std::string::npos);
    CHECK(holes(1).substr(2) != holes(3).substr(2));
}

TEST_CASE("a table of few groups writes a point for the decimals", "[words]") {
    for (const Language* few : {&customers_english(), &readers_english()}) {
        CHECK(Speech(*few, UnitSystem::metric).units.decimal == '.');
        CHECK(say(words::verbatim("a"), Speech(*few, UnitSystem::inch)) == "a");
    }
    const Text within = words::customer::ShownWithin{.tolerance = Length{0.1, mm}};
    CHECK(say(within, Speech(customers_english(), UnitSystem::metric)) == say(within, UnitSystem::metric));
}

TEST_CASE("figures with a decimal comma are printed and read back", "[words][read]") {
    CHECK(print_fixed(1234.5, 2, comma) == "1234,50");
    CHECK(print_fixed(12345.678, 1, comma) == "12\u2009345,7");
    CHECK(print_trimmed(2.500, 3, comma) == "2,5");
    CHECK(print_plain(12345.5, 2, comma) == "12345,50");
    CHECK(print(Length{6.35, mm}, comma).text() == "6,35 mm");
    CHECK(print(Length{6.35, mm}, comma.other()).text() == "0,250 in");
    CHECK(print_field(0.3175, FieldUnit::mm, comma) == "0,318 mm");
    for (const double value : {0.125, 1.5, 6.35, 12.7, 150.0}) {
        CHECK(std::abs(read(print_field(value, FieldUnit::mm, comma), FieldUnit::mm, comma) - value) < 0.0006);
    }
}

TEST_CASE("of two marks the reader's own is the decimal one; the other is asked back", "[words][read]") {
    CHECK(read("1,250", FieldUnit::mm, comma) == 1.25);
    CHECK(read("1.25", FieldUnit::mm, comma) == 1.25); // no group of three: nothing else can be meant
    CHECK(read_field("1.250", FieldUnit::mm_min, comma).question() != nullptr);
    CHECK(read_field("1,250", FieldUnit::mm_min, UnitSystem::metric).question() != nullptr);
    CHECK(read("1.250", FieldUnit::mm_min, UnitSystem::metric) == 1.25);
    const auto asked = read_field("1.500", FieldUnit::mm_min, comma);
    REQUIRE(asked.question() != nullptr);
    CHECK(asked.question()->answers[0].value == 1500);
    CHECK(asked.question()->answers[1].as == "1,500 mm/min");
    CHECK(read("1.234,5", FieldUnit::mm_min, comma) == 1234.5);
}
