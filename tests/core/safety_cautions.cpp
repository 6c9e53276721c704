#include <algorithm>
#include <cstdlib>
#include <string>
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/safety/assess.hpp"
#include "core/safety/words.hpp"
#include "tests/core/said.hpp"

using namespace torchside;

namespace {

bool has(const safety::Report& report, std::string_view code) {
    return std::any_of(report.cautions.begin(), report.cautions.end(),
                       [&](const safety::Caution& c) { return c.code == code; });
}

template <class F>
void for_all(const F& look) {
    for (const Metal metal : all_metals) {
        for (const Country country : {Country::us, Country::uk, Country::eu, Country::other}) {
            for (int bits = 0; bits < 8; ++bits) {
                look(safety::Input{metal, Current{45, ampere}, (bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0,
                                   country});
            }
        }
    }
}

std::string two(const safety::Input& input) {
    std::string out;
    for (const safety::Caution& c : safety::worst_two(safety::assess(input))) {
        out += (out.empty() ? "" : " ") + std::string(c.code);
    }
    return out;
}

} // namespace

TEST_CASE("A caution comes with what calls for it, and only then", "[safety]") {
    for_all([](const safety::Input& in) {
        const safety::Report r = safety::assess(in);
        // Those of each metal: tests/published/metals.cpp.
        CHECK(has(r, "hydrogen") == (in.metal == Metal::aluminium && in.water_table)); // the torch in hand or not
        CHECK(has(r, "raw_arc_voltage") == in.raw_tap);
        CHECK(has(r, "hand_torch") == in.by_hand);
        CHECK(has(r, "gantry") == !in.by_hand);
        CHECK(has(r, "wet_table") == in.water_table);
        CHECK(has(r, "sludge") == in.water_table);
        CHECK(has(r, "dust") == !in.water_table);
        for (const char* always : {"shock", "gloves", "work_clamp", "eyes_and_skin", "impact", "noise", "fire_watch",
                                   "extinguisher", "containers", "cylinders", "confined", "coatings", "solvents", "no2",
                                   "ozone", "hot_slugs", "blow_off", "pacemaker", "bystanders"}) {
            INFO(always);
            CHECK(has(r, always));
        }
        CHECK((r.cautions.back().code == "local_rules"));
        CHECK(test::said(r.cautions.back().text).ends_with("local code and a licensed electrician decide."));
    });
}

TEST_CASE("Stops come before cautions, cautions before notes; the first screen has the two worst", "[safety]") {
    for_all([](const safety::Input& in) {
        const safety::Report r = safety::assess(in);
        for (std::size_t i = 1; i < r.cautions.size(); ++i) {
            CHECK(r.cautions[i - 1].severity >= r.cautions[i].severity);
        }
        const auto said = safety::worst_two(r);
        REQUIRE(said.size() == 2);
        for (const safety::Caution& c : r.cautions) {
            const bool in_two = c.code == said[0].code || c.code == said[1].code;
            if (!in_two && c.title != Word{}) {
                CHECK(c.severity <= said[1].severity);
            }
        }
        CHECK(std::any_of(said.begin(), said.end(), [](const safety::Caution& c) { return c.code == "shock"; }));
    });
    CHECK(two({.metal = Metal::mild_steel}) == "shock steel_fume");
    CHECK(two({.metal = Metal::aluminium, .water_table = true}) == "hydrogen shock");
    CHECK(two({.metal = Metal::aluminium, .water_table = true, .by_hand = true}) == "hydrogen shock");
}

TEST_CASE("Each caution is short, with a stable code and a source", "[safety]") {
    for_all([](const safety::Input& in) {
        const safety::Report r = safety::assess(in);
        for (const safety::Caution& c : r.cautions) {
            const std::string text = test::said(c.text, UnitSystem::inch);
            INFO(std::string(c.code) << ": " << text);
            CHECK(c.citation != Word{});
            CHECK(text.ends_with('.'));
            CHECK(text.size() <= 220);
            CHECK(text.find("°C") == std::string::npos);
            CHECK(text.find(" mm") == std::string::npos);
            CHECK((c.title == Word{}) == (c.remedy == Word{}));
            CHECK(test::said(c.title).size() + test::said(c.remedy).size() <= 75);
            CHECK_FALSE(test::said(c.title).ends_with('.'));
            CHECK(c.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string_view::npos);
            CHECK(std::count_if(r.cautions.begin(), r.cautions.end(),
                                [&](const safety::Caution& other) { return other.code == c.code; }) == 1);
        }
    });
}

TEST_CASE("Limits of one substance go from the strictest to the laxest, and none is for a caution that is not there",
          "[safety]") {
    // The first figure of each text; those of coatings are of two metals.
    for_all([](const safety::Input& in) {
        const safety::Report r = safety::assess(in);
        for (const safety::Caution& c : r.cautions) {
            const auto all = safety::limits_of(c, Country::other);
            double before = 0;
            for (const Word word : all) {
                const std::string limit = test::said(word);
                const std::size_t at = limit.find_first_of("0123456789");
                REQUIRE(at != std::string_view::npos);
                const double figure = std::strtod(limit.substr(at).c_str(), nullptr);
                INFO(limit);
                CHECK(figure >= before);
                before = figure;
            }
            for (const Country country : {Country::us, Country::uk, Country::eu}) {
                const auto own = safety::limits_of(c, country);
                REQUIRE(own.size() <= all.size());
                CHECK(std::equal(own.begin(), own.end(), all.begin())); // the stricter ones are never left out
                CHECK(own.empty() == all.empty());
            }
        }
    });
}
