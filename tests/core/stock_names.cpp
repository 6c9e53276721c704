#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/stock/gauge.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "tests/core/said.hpp"

using namespace torchside;

TEST_CASE("Every metal has a key and a name of its own", "[stock]") {
    for (const Metal metal : all_metals) {
        for (const Metal other : all_metals) {
            CHECK((stock::key(metal) == stock::key(other)) == (metal == other));
            CHECK((stock::name(metal) == stock::name(other)) == (metal == other));
        }
    }
    CHECK(std::string{stock::key(Metal::mild_steel)} == "mild_steel");
    CHECK(test::said(stock::name(Metal::mild_steel)) == "Mild steel");
}

TEST_CASE("Galvanised and wear plate cut as mild steel", "[stock]") {
    CHECK(stock::cuts_as(Metal::galvanised) == Metal::mild_steel);
    CHECK(stock::cuts_as(Metal::wear_plate) == Metal::mild_steel);
    for (const Metal metal : all_metals) {
        CHECK(stock::cuts_as(stock::cuts_as(metal)) == stock::cuts_as(metal));
    }
    CHECK(stock::melt_heat_j_kg(stock::properties(Metal::galvanised)) ==
          stock::melt_heat_j_kg(stock::properties(Metal::mild_steel)));
}

TEST_CASE("Gauges that do not exist", "[stock]") {
    CHECK(stock::gauges(Metal::copper).empty());
    CHECK(stock::print_gauge(Metal::copper, 16).empty());
    for (const int gauge : {-1, 0, 6, 25, 999}) {
        CHECK_FALSE(stock::gauge_thickness(Metal::mild_steel, gauge));
    }
    CHECK(stock::print_gauge(Metal::mild_steel, 16) == "16 ga, 0.0598 in");
}

TEST_CASE("The nearest gauge", "[stock]") {
    const auto near = stock::nearest_gauge(Metal::mild_steel, Length{1.5, mm});
    REQUIRE(near);
    CHECK(near->gauge == 16);
    CHECK(std::abs(near->difference.in(mm)-0.01892) < 1e-9);
    CHECK_FALSE(stock::nearest_gauge(Metal::mild_steel, Length{6, mm}));
    CHECK_FALSE(stock::nearest_gauge(Metal::mild_steel, Length{0.4, mm}));
    CHECK_FALSE(stock::nearest_gauge(Metal::copper, Length{1.5, mm}));
    CHECK(stock::nearest_gauge(Metal::stainless, Length{4.8, mm})->gauge == 7);
}

TEST_CASE("A typed thickness with its metal", "[stock][read]") {
    const auto value = [](const char* text, Metal metal) {
        const auto r = stock::read_thickness(text, metal, UnitSystem::metric);
        return r.answer() ? r.answer()->value.in(inch) : -1.0;
    };
    for (const char* text : {"16 ga", "16ga", "#16", "16 gauge", "gauge 16", "16-ga", "GA 16", "016 ga"}) {
        INFO(text);
        CHECK(std::abs(value(text, Metal::mild_steel) - 0.0598) < 1e-9);
        CHECK(std::abs(value(text, Metal::galvanised) - 0.0635) < 1e-9);
        CHECK(std::abs(value(text, Metal::stainless) - 0.0625) < 1e-9);
        CHECK(std::abs(value(text, Metal::aluminium) - 0.0508) < 1e-9);
    }
    CHECK(stock::read_thickness("16 ga", Metal::mild_steel, UnitSystem::metric).answer()->as == "16 ga, 0.0598 in");
    CHECK(stock::read_thickness("6", Metal::copper, UnitSystem::metric).answer()->value.in(mm) == 6);
    // Copper has none; the table ends at 7 and 24.
    CHECK(stock::read_thickness("16 ga", Metal::copper, UnitSystem::metric).refusal()->why ==
          Unread::sold_by_thickness);
    for (const char* text : {"6 ga", "25 ga", "#0", "gauge 999"}) {
        INFO(text);
        const auto read = stock::read_thickness(text, Metal::mild_steel, UnitSystem::metric);
        REQUIRE(read.refusal());
        CHECK(read.refusal()->why == Unread::no_such_gauge);
    }
}

TEST_CASE("Thicknesses on offer", "[stock]") {
    for (const Metal metal : all_metals) {
        for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
            const std::vector<stock::Chip> chips = stock::chips(metal, units);
            CHECK(chips.size() >= 7);
            CHECK(chips.size() <= 14);
            for (std::size_t i = 0; i < chips.size(); ++i) {
                INFO(test::said(stock::name(metal)) << " " << std::string{chips[i].label});
                // What the button says, typed, is what the button sets.
                const auto typed = stock::read_thickness(chips[i].label, metal, units);
                REQUIRE(typed.answer());
                CHECK(typed.answer()->value == chips[i].thickness);
                CHECK((i == 0 || chips[i - 1].thickness < chips[i].thickness));
            }
        }
    }
}

TEST_CASE("A plate is called what it is sold as", "[stock]") {
    const auto called = [](Metal metal, double thickness_in) {
        return stock::plate_name(metal, Length{thickness_in, inch}, UnitSystem::inch).text();
    };
    CHECK(called(Metal::mild_steel, 0.1345) == "10 ga");
    CHECK(called(Metal::aluminium, 0.1019) == "10 ga");
    CHECK(called(Metal::mild_steel, 0.25) == "1/4 in");
    CHECK(called(Metal::stainless, 0.1875) == "3/16 in"); // 7 ga too, but not sold as that
    CHECK(called(Metal::copper, 0.1345) == "0.135 in");   // copper has no gauge
    CHECK(called(Metal::mild_steel, 6 / 25.4) == "0.236 in");
    CHECK(stock::plate_name(Metal::mild_steel, Length{0.1345, inch}, UnitSystem::metric).text() == "3.42 mm");
}
