// What usually feeds a machine at a voltage, and the intent that takes it.
#include <catch2/catch_test_macros.hpp>

#include "core/schema/intent.hpp"
#include "core/supply/usual.hpp"

using namespace torchside;

TEST_CASE("usual supplies: 120 V is 20 A on 12 AWG first, 277 V is none") {
    const auto low = supply::usual_supplies(Voltage{120, volt});
    REQUIRE(low.size() == 2);
    CHECK(low[0].breaker_a == 20);
    CHECK(low[0].run_awg == 12);
    CHECK(low[1].breaker_a == 15);
    CHECK(low[1].run_awg == 14);
    CHECK(supply::usual_supplies(Voltage{277, volt}).empty());
    for (const double v : {120.0, 208.0, 230.0, 240.0, 400.0}) {
        for (const supply::UsualSupply& s : supply::usual_supplies(Voltage{v, volt})) {
            INFO(v << " V");
            CHECK(s.line_v == v);
            CHECK(s.run_awg.has_value() != s.run_mm2.has_value());
        }
    }
}

TEST_CASE("usual supplies: what is there already is known again") {
    supply::Circuit circuit; // 240 V, 30 A, 10 AWG
    CHECK(supply::is_fed_by(circuit, supply::usual_supplies(circuit.line)[0]));
    circuit.breaker = {50, ampere};
    CHECK_FALSE(supply::is_fed_by(circuit, supply::usual_supplies(circuit.line)[0]));
    circuit.breaker = {30, ampere};
    circuit.run_mm2 = 6.0; // goes before the gauge
    CHECK_FALSE(supply::is_fed_by(circuit, supply::usual_supplies(circuit.line)[0]));
}

TEST_CASE("usual supplies: every row can be taken, all of it in one change") {
    for (const double v : {120.0, 208.0, 230.0, 240.0, 400.0}) {
        for (const supply::UsualSupply& s : supply::usual_supplies(Voltage{v, volt})) {
            Workbook book;
            book.shop.circuit.dedicated = true;
            book.shop.circuit.run_mm2 = 50.0;
            const auto next = document::use_supply(book, s);
            INFO(v << " V, " << s.breaker_a << " A");
            REQUIRE(next.ok());
            CHECK(supply::is_fed_by(next.value().shop.circuit, s));
            CHECK_FALSE(next.value().shop.circuit.dedicated);
            CHECK(next.value().shop.machine.phases == s.phases);
        }
    }
}
