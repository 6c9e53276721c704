// From the torch code to an arc on the plate: in programs, in time, in what a logged delay means.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/gear/start.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/worksheet.hpp"

using namespace torchside;
using Catch::Approx;

TEST_CASE("The start lag is the shop's own, else that of its start") {
    Machine m;
    // Common practice, no source: contact 0.3 to 1.0 s. The other two are priors.
    CHECK(start_lag(m).value.in(second) == 0.5);
    CHECK(start_lag(m).low.in(second) == 0.3);
    CHECK(start_lag(m).high.in(second) == 1.0);
    CHECK(start_lag(m).basis.practice);
    for (const StartMethod method : {StartMethod::high_frequency, StartMethod::capacitor}) {
        m.start = method;
        CHECK(start_lag(m).value > Duration{0.2, second});
        CHECK(start_lag(m).value < Duration{1, second});
    }
    m.start_lag = Duration{0.8, second};
    CHECK(start_lag(m).value.in(second) == 0.8);
    CHECK(start_lag(m).high.in(second) == 0.8);
    CHECK(start_lag(m).basis.entered);
    CHECK(program_lag(m).in(second) == 0.8);
    m.waits_for_transfer = true;
    CHECK(program_lag(m).in(second) == 0.0);
}

TEST_CASE("A program dwells lag and delay, or the delay where the controller waits") {
    Workbook w;
    w.shop.machine.start_lag = Duration{0.7, second};
    for (const bool waits : {false, true}) {
        w.shop.machine.waits_for_transfer = waits;
        const Worksheet sheet = evaluate(w);
        const Duration delay = sheet.settings->pierce_delay->value;
        const Duration dwell = delay + Duration{waits ? 0.0 : 0.7, second};
        CHECK(sheet.settings->start_lag.value.in(second) == 0.7);
        CHECK(sheet.settings->dwell->in(second) == Approx(dwell.in(second)));
        const auto coupon = torchside::coupon(w, tune::CouponKind::kerf);
        REQUIRE(coupon.ok());
        CHECK(coupon.value().pierce_delay == delay);
        CHECK(coupon.value().dwell.in(second) == Approx(dwell.in(second)));
    }
}

TEST_CASE("The lag takes its time at every start, whoever waits") {
    Workbook w;
    w.shop.machine.start_lag = Duration{};
    const Worksheet none = evaluate(w);
    w.shop.machine.start_lag = Duration{2, second};
    const Worksheet slow = evaluate(w);
    REQUIRE(slow.time);
    CHECK((slow.time->total.value - none.time->total.value).in(second) == Approx(2.0 * none.time->starts));
    CHECK(slow.time->arc.value == none.time->arc.value); // no arc yet: no wear by it
    w.shop.machine.waits_for_transfer = true;
    CHECK(evaluate(w).time->total.value == slow.time->total.value);
}

TEST_CASE("A logged delay is what stood in the program") {
    CHECK(after_transfer(Duration{0.95, second}, Duration{0.5, second}).in(second) == Approx(0.45));
    CHECK(after_transfer(Duration{0.45, second}, Duration{}).in(second) == Approx(0.45));
    CHECK(after_transfer(Duration{0.4, second}, Duration{0.5, second}).in(second) == Approx(0.04));

    // The same pierce, logged by a shop whose program counts from the torch code and by one whose controller waits.
    Workbook counts, waits;
    waits.shop.machine.waits_for_transfer = true;
    counts.shop.machine.start_lag = Duration{0.6, second};
    tune::TestCut cut;
    cut.pierce = tune::PierceVerdict::is_short;
    cut.pierce_delay = Duration{0.7, second};
    waits.shop.tests = {cut};
    cut.pierce_delay = Duration{1.3, second};
    counts.shop.tests = {cut};
    const double a = evaluate(counts).settings->pierce_delay->value.in(second);
    const double b = evaluate(waits).settings->pierce_delay->value.in(second);
    CHECK(a == Approx(b).epsilon(1e-9));
    CHECK(b > 0.7);
    // Nobody timed the lag, and half a second in a program pierced well: the lag was less than the usual one.
    Workbook quick;
    cut.pierce = tune::PierceVerdict::good;
    cut.pierce_delay = Duration{0.5, second};
    quick.shop.tests = {cut, cut};
    const cut::Settings s = *evaluate(quick).settings;
    CHECK(s.start_lag.value.in(second) == Approx(0.4));
    CHECK(s.dwell->in(second) < 0.65);
    CHECK(s.dwell->in(second) == Approx(s.start_lag.value.in(second) + s.pierce_delay->value.in(second)));
    quick.shop.machine.start_lag = Duration{0.45, second}; // who timed it is believed
    CHECK(evaluate(quick).settings->start_lag.value.in(second) == 0.45);

    // A fit of before does not stand for a shop with another lag.
    const ShopModel model(counts.shop);
    counts.shop.machine.start_lag = Duration{0.2, second};
    CHECK_FALSE(model.holds_for(counts.shop));
}
