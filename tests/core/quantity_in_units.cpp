#include <cmath>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "core/quantity/field_unit.hpp"
#include "core/quantity/in_units.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;

namespace {

std::string inches(std::string_view text) {
    return in_units(text, UnitSystem::inch);
}
std::string metric(std::string_view text) {
    return in_units(text, UnitSystem::metric);
}

} // namespace

TEST_CASE("of an amount said in both units one is kept") {
    CHECK(inches("6.35 mm (1/4 in) is too thick") == "1/4 in is too thick");
    CHECK(metric("6.35 mm (1/4 in) is too thick") == "6.35 mm is too thick");
    CHECK(inches("3.42 mm (10 ga): start") == "10 ga: start");
    CHECK(inches("at 12\u2009700 mm/min (500 in/min), the table") == "at 500 in/min, the table");
    CHECK(metric("less than 2 bar (30 psi) with") == "less than 2 bar with");
    CHECK(inches("for 11 m (35 ft) around") == "for 35 ft around");
    CHECK(metric("is 38.1 mm (1 1/2 in).") == "is 38.1 mm.");
}

TEST_CASE("a metric amount alone is turned round") {
    CHECK(inches("a kerf is 0 to 15 mm") == "a kerf is 0 to 0.591 in");
    CHECK(inches("between 0.05 and 2 mm") == "between 0.00197 and 0.0787 in");
    CHECK(inches("10 to 50\u2009000 mm/min") == "0.394 to 1970 in/min");
    CHECK(inches("rated at 40 °C; less") == "rated at 104 °F; less");
    CHECK(inches("30 °C ambient (36 to 40 °C: 0.88 of it)") == "86 °F ambient (96.8 to 104 °F: 0.88 of it)");
    CHECK(inches("more than 70 mm².") == "more than 138 kcmil.");
    CHECK(inches("a sheet is 254 mm wide") == "a sheet is 10 in wide");
    CHECK(metric("a kerf is 0 to 15 mm") == "a kerf is 0 to 15 mm");
}

TEST_CASE("what is no amount stays") {
    for (const std::string_view text :
         {"", " mm", "a 75 °C mark", "Table 310.16, 75 °C column", "6 mmx", "mm", "40 A at 120 V", "5 mg/m³ over 8 h",
          "3 minutes", "2.5 m/s", "(1/4 in)", "8 in 10", "6 mm²/kg"}) {
        CHECK(inches(text) == std::string(text));
        CHECK(metric(text) == std::string(text));
    }
    CHECK(inches("6 mm (steel)") == "0.236 in (steel)");
    CHECK(metric("6 mm (steel)") == "6 mm (steel)");
}

TEST_CASE("any bytes are read to their end") {
    test::Rng rng(5);
    constexpr std::string_view pieces[] = {"6",      ".",  " ",  "mm",   "(", ")", "in", "\xE2",
                                           "\u2009", "°C", "to", " to ", "/", "m", "²"};
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (std::size_t n = rng.below(12); n > 0; --n) {
            text += pieces[rng.below(std::size(pieces))];
        }
        const std::string once = metric(text);
        CHECK(once.size() <= text.size());
        (void)inches(text);
    }
}

TEST_CASE("A key without a quantity of its own is typed in the reader's unit", "[read]") {
    struct Near {
        std::string_view text;
        FieldUnit unit;
        UnitSystem bare;
        double value;
    };
    constexpr Near near[] = {
        {"2", FieldUnit::horsepower, UnitSystem::inch, 2},
        {"1.5", FieldUnit::horsepower, UnitSystem::metric, 2.01153},
        {"1.5 kW", FieldUnit::horsepower, UnitSystem::inch, 2.01153},
        {"4 hp", FieldUnit::horsepower, UnitSystem::metric, 4},
        {"$0.72/lb", FieldUnit::money_per_kg, UnitSystem::inch, 1.587328},
        {"€1.60/kg", FieldUnit::money_per_kg, UnitSystem::metric, 1.6},
        {"£2", FieldUnit::money, UnitSystem::metric, 2},
        {"3.048", FieldUnit::per_metre, UnitSystem::inch, 10},
        {"12 per m", FieldUnit::per_metre, UnitSystem::metric, 12},
        {"19.8 kW/100 cfm", FieldUnit::kw_per_m3_min, UnitSystem::inch, 6.99230},
        {"7 kW/(m3/min)", FieldUnit::kw_per_m3_min, UnitSystem::metric, 7},
        {"250 kcmil", FieldUnit::mm2, UnitSystem::metric, 126.677},
        {"250", FieldUnit::mm2, UnitSystem::inch, 126.677},
        {"-4", FieldUnit::celsius, UnitSystem::inch, -20},
    };
    for (const Near& n : near) {
        INFO(std::string{n.text} << " for " << std::string{unit_name(n.unit)});
        const auto reading = read_field(n.text, n.unit, n.bare);
        REQUIRE(reading.answer() != nullptr);
        const double read = reading.answer()->value;
        CHECK(std::abs(read - n.value) < 1e-5 * std::abs(n.value));
    }
}
