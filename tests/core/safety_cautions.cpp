#include <algorithm>
#include <string>
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/safety/assess.hpp"

using namespace torchside;

namespace {

bool has(const safety::Report& report, std::string_view code) {
    return std::any_of(report.cautions.begin(), report.cautions.end(),
                       [&](const safety::Caution& c) { return c.code == code; });
}

} // namespace

TEST_CASE("A caution comes with what calls for it, and only then", "[safety]") {
    for (const Metal metal : all_metals) {
        for (const bool water : {false, true}) {
            for (const bool raw : {false, true}) {
                for (const bool hand : {false, true}) {
                    const safety::Report r = safety::assess({.metal = metal,
                                                             .current = Current{45, ampere},
                                                             .raw_tap = raw,
                                                             .water_table = water,
                                                             .by_hand = hand});
                    CHECK(has(r, "zinc_fume") == (metal == Metal::galvanised));
                    CHECK(has(r, "chromium_fume") == (metal == Metal::stainless));
                    CHECK(has(r, "copper_fume") == (metal == Metal::copper));
                    CHECK(has(r, "hydrogen") == (metal == Metal::aluminium && water));
                    CHECK(has(r, "raw_arc_voltage") == raw);
                    CHECK(has(r, "hand_torch") == hand);
                    for (const char* always : {"eyes_and_skin", "noise", "fire_watch", "ozone_no2", "blow_off"}) {
                        CHECK(has(r, always));
                    }
                    CHECK(r.cautions.back().code == "local_rules");
                }
            }
        }
    }
}

TEST_CASE("The worst caution comes first", "[safety]") {
    CHECK(safety::assess({.metal = Metal::stainless, .raw_tap = true}).cautions.front().code == "raw_arc_voltage");
    CHECK(safety::assess({.metal = Metal::galvanised}).cautions.front().code == "zinc_fume");
}

TEST_CASE("Each caution is one sentence with a stable code and a source", "[safety]") {
    for (const Metal metal : all_metals) {
        const safety::Report r =
            safety::assess({.metal = metal, .raw_tap = true, .water_table = true, .by_hand = true});
        for (const safety::Caution& c : r.cautions) {
            INFO(c.code);
            CHECK_FALSE(c.source.empty());
            CHECK(c.text.ends_with('.'));
            CHECK(c.text.find(". ") == std::string::npos);
            CHECK(c.text.size() <= 220);
            CHECK(c.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos);
            CHECK(std::count_if(r.cautions.begin(), r.cautions.end(),
                                [&](const safety::Caution& other) { return other.code == c.code; }) == 1);
        }
    }
}
