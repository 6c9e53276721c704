#include "core/schema/usual_shop.hpp"

#include <catch2/catch_test_macros.hpp>
#include <string>
#include <string_view>

#include "core/supply/usual.hpp"
#include "core/worksheet/country.hpp"

using namespace torchside;

namespace {

constexpr std::string_view rows =
#include "generated/regions.inc"
    ;

} // namespace

TEST_CASE("a shop in the United States is in inches and dollars, on 240 V and 30 A") {
    for (const char* tag : {"en-US", "en", "es-US"}) {
        INFO(tag);
        const Shop shop = document::usual_shop({}, tag).shop;
        CHECK(shop.display.units == UnitSystem::inch);
        CHECK(shop.rates.currency == "USD");
        CHECK(shop.country == Country::us);
        CHECK(shop.circuit.line == Voltage{240, volt});
        CHECK(shop.circuit.breaker == Current{30, ampere});
        CHECK(shop.circuit.run_awg == 10);
        CHECK(shop.air.compressor == Flow{5, cfm});
        CHECK(shop.air.receiver == Volume{30, us_gallon});
        CHECK(document::usual_shop({}, tag).job.stock_sheet.width == Length{8, foot});
    }
}

TEST_CASE("elsewhere it is in the metric system, on what is wired there") {
    struct Row {
        const char* tag;
        const char* currency;
        Country country;
        double line_v;
    };
    for (const Row& row : {Row{"es-ES", "EUR", Country::eu, 230}, Row{"es", "EUR", Country::eu, 230},
                           Row{"es-MX", "MXN", Country::other, 240}, Row{"en-GB", "GBP", Country::uk, 230},
                           Row{"de", "EUR", Country::eu, 230}, Row{"de-CH", "CHF", Country::other, 230},
                           Row{"en-SG", "USD", Country::other, 230}, Row{"es-419", "USD", Country::other, 230},
                           Row{"xx", "USD", Country::other, 230}, Row{"", "USD", Country::other, 230},
                           Row{"-", "USD", Country::other, 230}, Row{"zh-Hans-AU", "AUD", Country::other, 230}}) {
        INFO(row.tag);
        const Workbook book = document::usual_shop({}, row.tag);
        CHECK(book.shop.display.units == UnitSystem::metric);
        CHECK(book.shop.rates.currency == row.currency);
        CHECK(country_of(book.shop) == row.country);
        CHECK(book.shop.circuit.line == Voltage{row.line_v, volt});
        CHECK_FALSE(is_foreign(country_of(book.shop), book.shop.circuit.breaker_rule));
        CHECK(book.shop.air.receiver == Workbook().shop.air.receiver);
    }
}

TEST_CASE("what was chosen before stays") {
    Workbook book;
    book.shop.display.units = UnitSystem::inch;
    book.shop.rates.currency = "CHF";
    book.job.thickness = Length{3, mm};
    const Workbook next = document::usual_shop(book, "es-ES");
    CHECK(next.shop.display.units == UnitSystem::inch);
    CHECK(next.shop.rates.currency == "CHF");
    CHECK(next.job.thickness == Length{3, mm});
    CHECK(next.shop.air.compressor == Flow{5, cfm}); // as they are sold where one measures in inches
}

TEST_CASE("every region has a usual supply, a currency and a country") {
    int count = 0;
    for (std::size_t at = 0; at < rows.size(); at = rows.find('\n', at) + 1, ++count) {
        const std::string_view row = rows.substr(at, rows.find('\n', at) - at);
        const std::string tag = "xx-" + std::string(row.substr(0, row.find(';')));
        INFO(tag);
        const Shop shop = document::usual_shop({}, tag).shop;
        CHECK(row.find(';' + shop.rates.currency + ';') != std::string_view::npos);
        CHECK(row.ends_with(';' + std::to_string(static_cast<int>(shop.circuit.line.in(volt)))));
        CHECK(shop.country.has_value());
    }
    CHECK(count > 30);
}
