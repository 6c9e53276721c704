// What each metal is, a row a metal: worked by hand from assets/data/metals.json, whose values are from memory but for aluminium's
// melting. This checks the tables, the two formulas and what a metal calls for, not the metals themselves.
#include <iterator>
#include <string>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/cut/terms.hpp"
#include "core/safety/assess.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

struct Row {
    Metal metal;
    Metal cuts_as;
    double h_kj_kg, alpha_m2_s; // half a unit of the last digit
    const char* fumes;          // the codes of the cautions that it alone calls for, in the order they are said
    const char* first;          // of them, the one beside the shock on the first screen
};
constexpr Row rows[] = {
    {Metal::mild_steel, Metal::mild_steel, 1283, 6.46e-6, "steel_fume", "steel_fume"},
    {Metal::stainless, Metal::stainless, 1134, 4.98e-6, "chromium_fume nickel", "chromium_fume"},
    {Metal::aluminium, Metal::aluminium, 1037, 6.41e-5, "aluminum_fume", "aluminum_fume"},
    {Metal::galvanised, Metal::mild_steel, 1283, 6.46e-6, "zinc_fume steel_fume", "zinc_fume"},
    {Metal::copper, Metal::copper, 662, 9.1e-5, "copper_fume beryllium", "copper_fume"},
    {Metal::brass, Metal::brass, 554, 3.83e-5, "lead_fume zinc_fume copper_fume", "lead_fume"},
    {Metal::wear_plate, Metal::mild_steel, 1283, 6.46e-6, "alloy_fume steel_fume", "alloy_fume"},
};
static_assert(std::size(rows) == stock::metal_count, "a row a metal");

/// The codes of what is said of this metal; `common`: only what is said of every metal.
std::string codes(const safety::Input& input, bool common) {
    std::string out;
    for (const safety::Caution& c : safety::assess(input).cautions) {
        bool always = true;
        for (const Metal other : all_metals) {
            safety::Input there = input;
            there.metal = other;
            bool said = false;
            for (const safety::Caution& o : safety::assess(there).cautions) {
                said = said || o.code == c.code;
            }
            always = always && said;
        }
        if (always == common) {
            out += (out.empty() ? "" : " ") + std::string(c.code);
        }
    }
    return out;
}

} // namespace

TEST_CASE("Heat to melt and diffusivity of the metals", "[stock][published]") {
    for (const Row& r : rows) {
        const stock::Properties& p = stock::properties(r.metal);
        INFO(std::string{stock::key(r.metal)});
        CHECK(stock::melt_heat_j_kg(p) / 1000 == Approx(r.h_kj_kg).margin(0.5));
        CHECK(stock::diffusivity_m2_s(p) == Approx(r.alpha_m2_s).epsilon(0.005));
    }
}

TEST_CASE("A metal cuts as itself or as another, with all that is the other's", "[stock][published]") {
    for (const Row& r : rows) {
        INFO(std::string{stock::key(r.metal)});
        CHECK(stock::cuts_as(r.metal) == r.cuts_as);
        CHECK(cut::small_air_torch(r.metal).efficiency.value == cut::small_air_torch(r.cuts_as).efficiency.value);
        CHECK(stock::chips(r.metal, UnitSystem::metric).size() > 3);
        CHECK(stock::chips(r.metal, UnitSystem::inch).size() > 3);
    }
}

TEST_CASE("Each metal calls for its own cautions", "[safety][published]") {
    for (const Row& r : rows) {
        INFO(std::string{stock::key(r.metal)});
        const safety::Input input{.metal = r.metal};
        CHECK(codes(input, false) == r.fumes);
        CHECK_FALSE(codes(input, true).empty());
        std::string two;
        for (const safety::Caution& c : safety::worst_two(safety::assess(input))) {
            two += c.code == "shock" ? "" : std::string(c.code);
        }
        CHECK(two == r.first);
    }
}
