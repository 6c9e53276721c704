// Cost lines, price, minimum charge, breaks, make or buy.
#include <algorithm>
#include <cmath>
#include <numeric>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/price/quote.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::price;
using Catch::Approx;

namespace {

Work work() {
    Work w;
    w.mass = Mass{0.66, kg};
    w.arc = {Duration{24, second}, Duration{20, second}, Duration{30, second}, {}};
    w.moving = Duration{20, second};
    w.air_after = Duration{20, second};
    w.sets = {0.02, 0.015, 0.026, {}};
    w.sets_per_min = 0.006;
    w.input = {Power{7500, watt}, Power{7000, watt}, Power{8000, watt}, {}};
    w.air = Power{1050, watt};
    return w;
}

Report price_of(const Work& w, const JobPrice& price = {}, const Rates& rates = {}, int quantity = 24,
                std::optional<double> tax = {}) {
    return quote(w, {rates, price, tax, 18.0, quantity});
}

std::int64_t sum(const Report& r) {
    return std::accumulate(r.lines.begin(), r.lines.end(), Money{}, [](Money m, const Line& l) { return m + l.total; })
        .minor;
}

bool inside(const Estimate<double>& e) {
    return e.low <= e.value && e.value <= e.high;
}

} // namespace

TEST_CASE("Every line says what it rests on, and they add up", "[price]") {
    const Report r = price_of(work());
    CHECK(sum(r) == r.total.minor);
    for (const Line& l : r.lines) {
        CHECK_FALSE(l.how.empty());
        CHECK(inside(l.each));
    }
    CHECK(inside(r.cost_each));
    CHECK(inside(r.price_each));
    CHECK(inside(r.price_total));
    CHECK(line(r, LineKind::setup).total.minor == 1000);
    CHECK(line(r, LineKind::material).each.value == Approx(0.66 * 1.4 / 0.75));
    CHECK(line(r, LineKind::machine).each.value == Approx(44.0 / 60));
    CHECK(line(r, LineKind::consumables).each.value == Approx(0.36));
    CHECK(line(r, LineKind::energy).each.value == Approx(0.25 * (7.5 * 24 + 1.05 * 44) / 3600));
    CHECK(test::said(line(r, LineKind::material).how).find("scrap 25 % of plate bought, 33.3 % on top of parts") !=
          std::string::npos);
    CHECK(r.margin == Approx(0.3).margin(1e-4));
    CHECK(r.markup == Approx(0.42857).margin(1e-4));
    CHECK(test::said(r.margin_text).find("a markup of 42.9 % on the cost") != std::string::npos);
    CHECK(r.cost_each.basis.entered);
    CHECK_FALSE(r.make_or_buy);
    CHECK_FALSE(r.tax);
    CHECK(r.to_pay == r.total);
}

TEST_CASE("A price of one that was rounded says so where it does not multiply to the total", "[price]") {
    int rounded = 0, even = 0;
    for (int quantity = 1; quantity <= 60; ++quantity) {
        const Report r = price_of(work(), {}, {}, quantity);
        CAPTURE(quantity);
        CHECK(r.each_rounded == (quantity * r.each.minor != r.total.minor));
        CHECK((test::said(r.rounding).find("total is what counts") != std::string::npos) == r.each_rounded);
        ++(r.each_rounded ? rounded : even);
    }
    CHECK(rounded > 20);
    CHECK(even > 0);
}

TEST_CASE("Scrap is charged once and electricity once", "[price]") {
    JobPrice none, some;
    none.scrap_share = 0;
    some.scrap_share = 0.5;
    const Report a = price_of(work(), none), b = price_of(work(), some);
    CHECK(line(b, LineKind::material).each.value == Approx(2 * line(a, LineKind::material).each.value));
    CHECK(b.cost_each.value - a.cost_each.value == Approx(line(a, LineKind::material).each.value));
    Rates free;
    free.energy_per_kwh = 0;
    const Report c = price_of(work(), none, free);
    CHECK(line(c, LineKind::energy).each.value == 0.0);
    CHECK(line(c, LineKind::machine).each.value == line(a, LineKind::machine).each.value);
    CHECK(a.cost_each.value - c.cost_each.value == Approx(line(a, LineKind::energy).each.value));
}

TEST_CASE("Bands are first order: the truth of each cause alone lies on them", "[price]") {
    const Work w = work();
    const Report r = price_of(w);
    Work longer = w; // the arc's time alone: machine, energy and wear move together
    longer.arc.value = w.arc.high;
    longer.sets.value = w.sets.value + 0.1 * w.sets_per_min;
    const double by_time = price_of(longer).cost_each.value - r.cost_each.value;
    Work worn = w;
    worn.sets.value = w.sets.value + std::sqrt(0.006 * 0.006 - std::pow(0.1 * w.sets_per_min, 2));
    const double by_wear = price_of(worn).cost_each.value - r.cost_each.value;
    Work volts = w;
    volts.input.value = w.input.high;
    const double by_volts = price_of(volts).cost_each.value - r.cost_each.value;
    CHECK(r.cost_each.high - r.cost_each.value == Approx(std::hypot(by_time, by_wear, by_volts)).epsilon(1e-9));
    CHECK(line(r, LineKind::setup).each.low == line(r, LineKind::setup).each.high);
}

TEST_CASE("The minimum charge", "[price]") {
    Rates rates;
    rates.minimum_charge = 500;
    const Report r = price_of(work(), {}, rates);
    CHECK(r.minimum_applies);
    CHECK(r.total.minor == 50000);
    CHECK(sum(r) == 50000);
    CHECK(line(r, LineKind::minimum).total > Money{});
    CHECK(r.margin > 0.3);
    CHECK(r.each.minor == 2083);
    rates.minimum_charge = 1;
    CHECK_FALSE(price_of(work(), {}, rates).minimum_applies);
    CHECK(line(price_of(work(), {}, rates), LineKind::minimum).total == Money{});
}

TEST_CASE("Tax comes on top of the total", "[price]") {
    const Report r = price_of(work(), {}, {}, 24, 0.19);
    REQUIRE(r.tax);
    CHECK(r.tax->minor == money(0.19 * amount(r.total, 2), 2).minor);
    CHECK(r.to_pay == r.total + *r.tax);
    CHECK(sum(r) == r.total.minor);
}

TEST_CASE("Currencies without decimals and with three", "[price]") {
    Rates yen;
    yen.currency = "JPY";
    yen.labour_per_h = 4000;
    const Report r = price_of(work(), {}, yen);
    CHECK(r.decimals == 0);
    CHECK(sum(r) == r.total.minor);
    CHECK(line(r, LineKind::setup).total.minor == 1000);
    Rates dinar;
    dinar.currency = "KWD";
    CHECK(price_of(work(), {}, dinar).decimals == 3);
    CHECK(sum(price_of(work(), {}, dinar)) == price_of(work(), {}, dinar).total.minor);
}

TEST_CASE("Quantity breaks: round numbers around the job's own, each cheaper than the last", "[price]") {
    const Report r = price_of(work());
    REQUIRE(r.breaks.size() == 6);
    const int wanted[] = {1, 10, 20, 24, 50, 100};
    for (std::size_t i = 0; i < 6; ++i) {
        CHECK(r.breaks[i].quantity == wanted[i]);
        if (i > 0) {
            CHECK(r.breaks[i].each < r.breaks[i - 1].each);
            CHECK(r.breaks[i].total > r.breaks[i - 1].total);
        }
    }
    CHECK(r.breaks[3].total == r.total);
    for (const int q : {1, 2, 3, 5, 100000}) {
        const Report other = price_of(work(), {}, {}, q);
        CHECK(std::count_if(other.breaks.begin(), other.breaks.end(),
                            [&](const Break& b) { return b.quantity == q; }) == 1);
        CHECK(std::is_sorted(other.breaks.begin(), other.breaks.end(),
                             [](const Break& a, const Break& b) { return a.quantity < b.quantity; }));
    }
}

TEST_CASE("Make or buy", "[price]") {
    JobPrice p;
    p.outside_quote_each = 9.5;
    Report r = price_of(work(), p);
    REQUIRE(r.make_or_buy);
    CHECK(r.make_or_buy->choice == Choice::make);
    CHECK(r.make_or_buy->saved_each.value == Approx(9.5 - r.cost_each.value));
    CHECK(inside(r.make_or_buy->saved_each));
    REQUIRE(r.make_or_buy->break_even);
    const int from = *r.make_or_buy->break_even;
    CHECK(price_of(work(), p, {}, from).cost_each.value <= 9.5);
    CHECK((from == 1 || price_of(work(), p, {}, from - 1).cost_each.value > 9.5));
    p.outside_quote_each = 1.0;
    r = price_of(work(), p);
    CHECK(r.make_or_buy->choice == Choice::buy);
    CHECK_FALSE(r.make_or_buy->break_even);
    CHECK(test::said(r.make_or_buy->detail).find("never pays") != std::string::npos);
    p.outside_quote_each = r.cost_each.value;
    CHECK(price_of(work(), p).make_or_buy->choice == Choice::even);
}

TEST_CASE("Rests of the duty cycle are paid for", "[price]") {
    Work w = work();
    w.moving = Duration{1, second};
    w.arc_per_10_min = Duration{300, second};
    const Report r = price_of(w, {}, {}, 1000);
    CHECK(line(r, LineKind::machine).each.value == Approx(48.0 / 60).epsilon(0.02));
}
