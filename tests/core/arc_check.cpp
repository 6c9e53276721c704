#include "core/supply/arc_check.hpp"
#include "tests/core/said.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace torchside;
using namespace torchside::supply;

namespace {

Estimate<Voltage> arc(double value, double band) {
    return {Voltage{value, volt}, Voltage{value - band, volt}, Voltage{value + band, volt}, {}};
}

ArcCheck check(double expected, double band, double ratio, double reading) {
    const auto out = check_arc(arc(expected, band), ratio, Voltage{reading, volt});
    REQUIRE(out.ok());
    return out.value();
}

} // namespace

TEST_CASE("a reading is turned into volts at the torch and held against what is expected") {
    const ArcCheck high = check(130, 3, 50, 2.7);
    CHECK(high.state == ArcState::high);
    CHECK(high.torch.in(volt) == 135.0);
    CHECK(high.off.in(volt) == 5.0);
    CHECK_FALSE(high.in_band);
    CHECK(test::said(high.text) == "2.7 V × 50 = 135 V, 5 V above: torch high or electrode worn.");
    const ArcCheck low = check(130, 3, 50, 2.44);
    CHECK(low.state == ArcState::low);
    CHECK(test::said(low.text) == "2.44 V × 50 = 122 V, 8 V below: torch low or nozzle worn.");
    CHECK(test::said(check(130, 3, 1, 136).text) == "136 V, 6 V above: torch high or electrode worn.");
}

TEST_CASE("two volts either way are as expected, three are not") {
    CHECK(check(130, 10, 50, 2.64).state == ArcState::as_expected);
    CHECK(check(130, 10, 50, 2.56).state == ArcState::as_expected);
    CHECK(check(130, 10, 50, 2.66).state == ArcState::high);
    CHECK(check(130, 10, 50, 2.54).state == ArcState::low);
    // What is said follows from what is shown: 132.4 V against 129.6 V reads 132 against 130.
    CHECK(check(129.6, 10, 1, 132.4).state == ArcState::as_expected);
    CHECK(test::said(check(130, 10, 50, 2.6).text) == "2.6 V × 50 = 130 V: as expected.");
}

TEST_CASE("inside our own band the figure itself may be off") {
    CHECK(test::said(check(130, 10, 50, 2.7).to_do).find("Our own figure") != std::string::npos);
    CHECK(test::said(check(130, 3, 50, 2.7).to_do).find("Our own figure") == std::string::npos);
}

TEST_CASE("a reading far off names the divider that fits") {
    const ArcCheck raw = check(130, 3, 1, 2.7);
    CHECK(raw.state == ArcState::divider);
    REQUIRE(raw.ratio);
    CHECK(*raw.ratio == 50.0);
    CHECK(test::said(raw.text) == "Not a 1:1 divider: that would be 3 V. The reading points to 50:1.");
    CHECK(*check(135, 3, 40, 2.7).ratio == 50.0);
    CHECK(*check(130, 3, 50, 130).ratio == 1.0);
    // 16 and 20 to 1 cannot be told apart: the one that is entered is not called wrong when it fits.
    CHECK(check(130, 3, 20, 7.2).state == ArcState::high);
}

TEST_CASE("a reading that no divider explains is no arc") {
    CHECK(check(130, 3, 50, 0.4).state == ArcState::no_reading);
    CHECK(check(130, 3, 1, 400).state == ArcState::no_reading);
    CHECK_FALSE(check_arc(arc(130, 3), 50, Voltage{}).ok());
    CHECK_FALSE(check_arc(arc(130, 3), 50, Voltage{-1, volt}).ok());
}
