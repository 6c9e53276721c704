// Money in whole minor units.
#include <catch2/catch_test_macros.hpp>

#include <cmath>

#include "core/price/money.hpp"

using namespace torchside::price;

// Minor units by ISO 4217, from memory.
TEST_CASE("currencies have their decimals") {
    CHECK(decimals("USD") == 2);
    CHECK(decimals("EUR") == 2);
    CHECK(decimals("JPY") == 0);
    CHECK(decimals("XPF") == 0);
    CHECK(decimals("KWD") == 3);
    CHECK(decimals("TND") == 3);
    CHECK(decimals("CLF") == 4);
    CHECK(decimals("FJP") == 2); // letters of two neighbours in the list
    CHECK(decimals("") == 2);
}

TEST_CASE("a customer's amount has a sign between thousands") {
    const torchside::Units point, comma{torchside::UnitSystem::metric, ','};
    CHECK(print_grouped({0}, 2, point, ",") == "0.00");
    CHECK(print_grouped({99999}, 2, point, ",") == "999.99");
    CHECK(print_grouped({113514}, 2, point, ",") == "1,135.14");
    CHECK(print_grouped({113514}, 2, comma, ".") == "1.135,14");
    CHECK(print_grouped({-123456789}, 2, comma, ".") == "−1.234.567,89");
    CHECK(print_grouped({-999}, 0, point, ",") == "−999");
    CHECK(print_grouped({1000}, 0, point, ",") == "1,000");
    CHECK(print_grouped({1234567}, 3, point, ",") == "1,234.567");
    CHECK(print_grouped({1234567}, 0, point, "") == "1234567");
}

TEST_CASE("money rounds to the nearest minor unit, halves away from zero") {
    CHECK(money(26.163, 2) == Money{2616});
    CHECK(money(26.163, 0) == Money{26});
    CHECK(money(26.163, 3) == Money{26163});
    CHECK(money(1.005, 2) == Money{101});
    CHECK(money(-1.005, 2) == Money{-101});
    CHECK(money(1.00499, 2) == Money{100});
    CHECK(money(0.0, 2) == Money{0});
    CHECK(money(1e300, 2) == Money{9000000000000000});
    CHECK(money(-HUGE_VAL, 2) == Money{-9000000000000000});
    CHECK(amount(Money{2616}, 2) == 26.16);
    CHECK(amount(Money{7}, 0) == 7.0);
}

TEST_CASE("money prints all its decimals") {
    CHECK(print(Money{2616}, 2) == "26.16");
    CHECK(print(Money{5}, 2) == "0.05");
    CHECK(print(Money{-5}, 3) == "−0.005");
    CHECK(print(Money{1234567}, 0) == "1234567");
    CHECK(print(Money{0}, 2) == "0.00");
}
