// Worked examples of cost and price (own arithmetic; specific power of a compressor: prior).
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/price/quote.hpp"

using namespace torchside;
using namespace torchside::price;
using Catch::Approx;

namespace {

const Power arc = input_power(Voltage{104, volt}, Current{45, ampere}, 0.85), air = air_power(Flow{150, litre_min}, 7);

template <class Q>
Estimate<Q> sure(Q value) {
    return {value, value, value, {}};
}

} // namespace

TEST_CASE("Energy of a metre of cut", "[price][published]") {
    CHECK(arc.in(kilowatt) == Approx(5.506).margin(6e-4));
    CHECK(air.in(kilowatt) == Approx(1.05));
    CHECK(kwh(arc + air, Duration{1 / 1.15, minute}) == Approx(0.0950).margin(6e-5));
}

TEST_CASE("Scrap as a share of the plate and as waste for each part", "[price][published]") {
    const Mass part{0.12 * 0.006 * 7850, kg};
    CHECK(part.in(kg) == Approx(5.652));
    JobPrice p;
    p.material_per_kg = 1.40;
    p.scrap_share = 0.25;
    CHECK(material_cost(part, p) == Approx(10.550).margin(6e-4));
    p.waste_per_part = 0.25;
    CHECK(material_cost(part, p) == Approx(9.891).margin(6e-4));
    p.waste_per_part = 1.0 / 3.0; // the same scrap said the other way
    CHECK(material_cost(part, p) == Approx(10.550).margin(6e-4));
}

TEST_CASE("One part from set-up to price", "[price][published]") {
    const double cutting_min = 4.2e3 / 1150, table_min = cutting_min + 10 * (0.65 + 6) / 60;
    CHECK(cutting_min == Approx(3.652).margin(6e-4));
    CHECK(table_min == Approx(4.761).margin(6e-4));
    // The example counts electricity over the table's whole time: so here all of it is arc time.
    Work w;
    w.mass = Mass{5.652, kg};
    w.arc = sure(Duration{table_min, minute});
    w.sets = sure(0.00160 * 10 + 0.0066 * cutting_min);
    w.input = sure(arc);
    w.air = air;
    Rates rates;
    JobPrice price;
    price.material_per_kg = 1.40;
    const Report r = quote(w, {rates, price, {}, 18.00, 1});
    CHECK(line(r, LineKind::setup).each.value == Approx(10.0));
    CHECK(line(r, LineKind::material).each.value == Approx(10.550).margin(6e-4));
    CHECK(line(r, LineKind::machine).each.value == Approx(4.761).margin(6e-4));
    CHECK(line(r, LineKind::consumables).each.value == Approx(0.722).margin(6e-4));
    CHECK(line(r, LineKind::energy).each.value == Approx(0.130).margin(6e-4));
    CHECK(r.cost_each.value == Approx(26.163).margin(6e-4));
    CHECK(r.cost_each.value / (1 - 0.3) == Approx(37.375).margin(6e-4));
    CHECK(r.cost_each.value * (1 + 0.3) == Approx(34.012).margin(6e-4));
    CHECK(r.cost.minor == 2616);
    CHECK(r.total.minor == 3737); // 26.16 / 0.7 = 37.371
}

TEST_CASE("Markup and margin", "[price][published]") {
    CHECK(margin_of(0.30) == Approx(0.23077).margin(6e-6));
    CHECK(markup_of(0.30) == Approx(0.42857).margin(6e-6));
}

TEST_CASE("Minor units", "[price][published]") {
    // ISO 4217, list one; from memory.
    for (const char* code :
         {"USD", "EUR", "GBP", "CAD", "AUD", "CHF", "SEK", "PLN", "INR", "ZAR", "MXN", "BRL", "XYZ"}) {
        CHECK(decimals(code) == 2);
    }
    for (const char* code : {"JPY", "KRW", "CLP", "ISK", "VND", "XOF", "PYG"}) {
        CHECK(decimals(code) == 0);
    }
    for (const char* code : {"KWD", "BHD", "OMR", "JOD", "TND"}) {
        CHECK(decimals(code) == 3);
    }
    CHECK(decimals("CLF") == 4);
    CHECK(decimals("IFC") == 2); // across two codes of the list
}
