#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <set>

#include "core/cut/rules.hpp"
#include "core/worksheet/figures.hpp"
#include "core/worksheet/worksheet.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;

TEST_CASE("A figure is one row: its key, its unit and its value in either units") {
    const Figure* kerf = figure_of("kerf");
    REQUIRE(kerf != nullptr);
    cut::Settings s;
    s.kerf = {Length{1.606, mm}, Length{1.4, mm}, Length{1.8, mm}};
    CHECK(file_key(*kerf, UnitSystem::metric) == "kerf_mm");
    CHECK(file_key(*kerf, UnitSystem::inch) == "kerf_in");
    CHECK(kerf->of(s, UnitSystem::metric)->value == 1.606);
    CHECK_THAT(kerf->of(s, UnitSystem::inch)->value, WithinAbs(0.0632, 0.00005));
    CHECK(figure_of("no such") == nullptr);
}

TEST_CASE("No two figures share a key, and each says what it is") {
    std::set<std::string_view> keys;
    std::set<std::string> files;
    for (const Figure& figure : figures()) {
        CHECK(keys.insert(figure.key).second);
        CHECK(files.insert(file_key(figure, UnitSystem::metric)).second);
        CHECK(figure.name != Word{});
        CHECK(figure.what != Word{});
    }
}

TEST_CASE("A plate started at its edge has no pierce delay, and every other figure") {
    Workbook w;
    w.job.thickness = Length{11, mm};
    w.job.current = Current{45, ampere};
    const Worksheet sheet = evaluate(w);
    REQUIRE(sheet.capacity.verdict == cut::Reach::edge_start);
    for (const Figure& figure : figures()) {
        CHECK(figure.of(*sheet.settings, UnitSystem::metric).has_value() == (figure.key != "pierce_delay"));
    }
}

// Common practice, no source: 4 to 5.5 bar, and 5 to 20 s of air after the arc.
TEST_CASE("Air pressure and post-flow are what the shop says, or what such torches are commonly set to") {
    Workbook w;
    Worksheet sheet = evaluate(w);
    CHECK(sheet.settings->pressure.value == w.shop.air.torch_pressure); // the shop's default is the rule
    CHECK(sheet.settings->pressure.basis.practice);
    CHECK(sheet.settings->pressure.low == Pressure{4.0, bar});
    CHECK(sheet.settings->post_flow.value == w.shop.air.post_flow);
    CHECK(sheet.settings->post_flow.high == Duration{20, second});
    w.shop.air.torch_pressure = Pressure{5.2, bar};
    w.shop.air.post_flow = Duration{15, second};
    sheet = evaluate(w);
    CHECK(sheet.settings->pressure.low == Pressure{5.2, bar});
    CHECK(sheet.settings->pressure.basis.entered);
    CHECK(sheet.settings->post_flow.high == Duration{15, second});
    CHECK(sheet.settings->post_flow.basis.entered);
}
