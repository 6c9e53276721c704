// Whether a height controller may be connected to a tap, and readings that are refused.
#include <catch2/catch_test_macros.hpp>

#include "core/supply/divider.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::supply;

TEST_CASE("a raw tap into an input that does not stand it is stopped", "[supply]") {
    const HeightControl raw{1.0, Voltage{10, volt}, {}};
    const ControllerInput report = check_tap(raw, Voltage{135, volt});
    CHECK(test::severity(report.message) == Severity::stop);
    CHECK(report.shock);
    CHECK(report.controller == Voltage{135, volt});
    CHECK(test::said(*report.message).find("50:1 or more") != std::string::npos); // brings 500 V under 10 V
    CHECK(test::said(*report.message).find("shock hazard") != std::string::npos);
}

TEST_CASE("a raw tap into an input that stands it is still a shock hazard", "[supply]") {
    const ControllerInput report = check_tap({1.0, Voltage{500, volt}, {}}, Voltage{135, volt});
    CHECK(test::severity(report.message) == Severity::caution);
    CHECK(report.shock);
}

TEST_CASE("a tap that carries more than 100 V before the arc strikes is a shock hazard", "[supply]") {
    for (const double ratio : {1.5, 2.0, 4.0, 4.99}) {
        const ControllerInput report = check_tap({ratio, Voltage{1000, volt}, {}}, Voltage{135, volt});
        CAPTURE(ratio);
        CHECK(report.shock);
        CHECK(test::severity(report.message) == Severity::caution);
        CHECK(test::said(*report.message).find("shock hazard") != std::string::npos);
    }
    const ControllerInput at = check_tap({5.0, Voltage{1000, volt}, {}}, Voltage{135, volt});
    CHECK_FALSE(at.shock);
    CHECK_FALSE(at.message);
}

TEST_CASE("a divided tap", "[supply]") {
    const ControllerInput fine = check_tap({50.0, Voltage{10, volt}, {}}, Voltage{135, volt});
    CHECK_FALSE(fine.message);
    CHECK_FALSE(fine.shock);
    // 20 to 1 is good while cutting, but before the arc strikes up to 25 V may stand there.
    const ControllerInput before = check_tap({20.0, Voltage{10, volt}, {}}, Voltage{135, volt});
    CHECK(test::severity(before.message) == Severity::stop); // one rule with the divider that is advised
    CHECK(test::said(*before.message).find("up to 25 V before the arc strikes") != std::string::npos);
    CHECK(before.before_arc == Voltage{25, volt});
    CHECK_FALSE(before.shock);
    CHECK(test::severity(check_tap({10.0, Voltage{10, volt}, {}}, Voltage{135, volt}).message) == Severity::stop);
    CHECK_FALSE(before.basis.empty());
}

TEST_CASE("readings that cannot be are refused by name", "[supply]") {
    const auto more = identify_divider(Voltage{135, volt}, Voltage{160, volt});
    REQUIRE_FALSE(more);
    CHECK(more.fault().field == "reading_v");
    REQUIRE_FALSE(identify_divider(Voltage{135, volt}, Voltage{}));
    REQUIRE_FALSE(identify_divider(Voltage{}, Voltage{2.7, volt}));
    CHECK(identify_divider(Voltage{}, Voltage{2.7, volt}).fault().field == "arc_v");
    const auto same = calibrate({Voltage{110, volt}, Length{1.5, mm}}, {Voltage{115, volt}, Length{1.55, mm}});
    REQUIRE_FALSE(same);
    CHECK(same.fault().field == "height_mm");
    const auto falls = calibrate({Voltage{115, volt}, Length{1.5, mm}}, {Voltage{110, volt}, Length{2.5, mm}});
    REQUIRE_FALSE(falls);
    CHECK(falls.fault().field == "arc_v");
}
