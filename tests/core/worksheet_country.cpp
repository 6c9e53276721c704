// Whose rules speak: the country that was chosen, or the one the supply points to.
#include <catch2/catch_test_macros.hpp>

#include "core/schema/intent.hpp"
#include "core/store/workbook_file.hpp"
#include "core/worksheet/country.hpp"

using namespace torchside;
using supply::BreakerRule;

namespace {

Shop shop_on(double v, BreakerRule rule, const char* currency = "USD") {
    Shop shop;
    shop.circuit.line = Voltage{v, volt};
    shop.circuit.breaker_rule = rule;
    shop.rates.currency = currency;
    return shop;
}

} // namespace

TEST_CASE("country: the supply points to it until one is chosen") {
    CHECK(country_of(Shop{}) == Country::us);
    CHECK(country_of(shop_on(120, BreakerRule::ul489)) == Country::us);
    CHECK(country_of(shop_on(230, BreakerRule::iec60898b, "GBP")) == Country::uk);
    CHECK(country_of(shop_on(230, BreakerRule::iec60898c, "EUR")) == Country::eu);
    CHECK(country_of(shop_on(400, BreakerRule::iec60898d)) == Country::eu);
    CHECK(country_of(shop_on(100, BreakerRule::iec60898b)) == Country::other);
    Shop chosen = shop_on(120, BreakerRule::ul489);
    chosen.country = Country::uk;
    CHECK(country_of(chosen) == Country::uk);
}

TEST_CASE("country: a workbook without it opens as it was, one with it keeps it") {
    const auto old = document::read_workbook(R"({"torchside": 1, "shop": {"circuit": {"breaker_rule": "iec60898b",
        "line_v": 230, "breaker_a": 16, "run_mm2": 2.5}}})");
    REQUIRE(old.ok());
    CHECK_FALSE(old.value().shop.country.has_value());
    CHECK(country_of(old.value().shop) == Country::eu);
    for (const char* word : {"us", "uk", "eu", "other"}) {
        const auto set = document::set(Workbook{}, "shop.country", word);
        REQUIRE(set.ok());
        const auto again = document::read_workbook(document::write_workbook(set.value()));
        REQUIRE(again.ok());
        CHECK(again.value().shop.country == set.value().shop.country);
    }
    CHECK_FALSE(document::set(Workbook{}, "shop.country", "usa").ok());
    CHECK(document::set(Workbook{}, "shop.country", nullptr).ok());
}

TEST_CASE("country: another kind of supply takes the rules with it, the same kind leaves them") {
    Workbook book;
    book.shop.country = Country::us;
    const auto abroad = document::use_supply(book, supply::usual_supplies(Voltage{230, volt})[0]);
    REQUIRE(abroad.ok());
    CHECK_FALSE(abroad.value().shop.country.has_value());
    CHECK(country_of(abroad.value().shop) == Country::eu);
    book = abroad.value();
    book.shop.country = Country::uk;
    const auto same = document::use_supply(book, supply::usual_supplies(Voltage{400, volt})[0]);
    REQUIRE(same.ok());
    CHECK(same.value().shop.country == Country::uk);
    const auto back = document::use_supply(book, supply::usual_supplies(Voltage{120, volt})[0]);
    REQUIRE(back.ok());
    CHECK(country_of(back.value().shop) == Country::us);
    book.shop.country = Country::other;
    CHECK(document::use_supply(book, supply::usual_supplies(Voltage{120, volt})[0]).value().shop.country ==
          Country::other);
}
