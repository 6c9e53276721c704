// Lens shades, limits and times of the cautions against the published tables; each row names its source and how it was seen.
#include <string>
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/safety/assess.hpp"
#include "core/safety/words.hpp"
#include "tests/core/said.hpp"

using namespace torchside;

namespace {

safety::LensShade shade(double current_a) {
    return safety::lens_shade(Current{current_a, ampere});
}

bool says(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

const safety::Caution* find(const safety::Report& report, std::string_view code) {
    for (const safety::Caution& c : report.cautions) {
        if (c.code == code) {
            return &c;
        }
    }
    return nullptr;
}

std::string text_of(const safety::Report& report, std::string_view code) {
    const safety::Caution* c = find(report, code);
    return c == nullptr ? "" : test::said(c->text);
}

/// "A | B | C", strictest first.
std::string limits(Metal metal, std::string_view code, Country country) {
    const safety::Report report = safety::assess({.metal = metal, .country = country});
    const safety::Caution* c = find(report, code);
    REQUIRE(c != nullptr);
    std::string out;
    for (const Word limit : safety::limits_of(*c, country)) {
        out += (out.empty() ? "" : " | ") + test::said(limit);
    }
    return out;
}

} // namespace

TEST_CASE("Lens shade rows", "[safety][published]") {
    // us: legal minimum, 29 CFR 1910.133(a)(5), read: under 300 A 8, 300 to 400 A 9, 400 to 800 A 10.
    // en: EN 169 as reproduced in a manual: 50 to 149 A 11, 150 to 249 A 12, 250 to 400 A 13; nothing below 50 A.
    struct Row {
        double current_a;
        int us, en;
    };
    constexpr Row rows[] = {{5, 8, 0},    {20, 8, 0},   {45, 8, 0},   {49.9, 8, 0},  {50, 8, 11},
                            {60, 8, 11},  {149, 8, 11}, {150, 8, 12}, {249, 8, 12},  {250, 8, 13},
                            {299, 8, 13}, {300, 9, 13}, {399, 9, 13}, {400, 10, 13}, {800, 10, 13}};
    for (const Row& r : rows) {
        INFO(r.current_a << " A");
        CHECK(shade(r.current_a).us == r.us);
        CHECK(shade(r.current_a).en == r.en);
    }
}

TEST_CASE("The shade says whose minimum it is, and nothing lighter", "[safety][published]") {
    const auto at = [](double amps, Country country) {
        return safety::assess({.current = Current{amps, ampere}, .country = country});
    };
    for (const double amps : {20.0, 45.0, 49.0}) {
        for (const Country country : {Country::us, Country::uk, Country::eu, Country::other}) {
            CHECK(test::said(at(amps, country).shade_text) == "Shade 8 or darker, the US minimum");
        }
    }
    CHECK(test::said(at(60, Country::us).shade_text) == "Shade 8 or darker, the US minimum");
    CHECK(test::said(at(300, Country::us).shade_text) == "Shade 9 or darker, the US minimum");
    for (const Country country : {Country::uk, Country::eu, Country::other}) {
        CHECK(test::said(at(50, country).shade_text) == "Shade 11 or darker, by EN 169");
        CHECK(at(200, country).shade_min == 12);
    }
    for (const double amps : {20.0, 50.0, 200.0}) {
        for (const Country country : {Country::us, Country::eu}) {
            const std::string note = test::said(safety::shade_note(at(amps, country)));
            INFO(note);
            CHECK(says(note, "With the arc in view, 8 is the US legal minimum (29 CFR 1910.133)"));
            CHECK(says(note, "EN 169, as reproduced"));
            CHECK(says(note, "Lighter only where the plate or a shield hides the arc"));
            CHECK(says(note, "never below the minimum"));
            for (const char* lighter : {" 4", " 5 ", " 6", "ANSI"}) {
                CHECK_FALSE(says(note, lighter));
            }
            CHECK((note.find("8 is") < note.find("EN 169")) == (country == Country::us));
        }
    }
}

TEST_CASE("Published limits beside the cautions, the strictest first", "[safety][published]") {
    // 29 CFR 1910.1026 (read); Directive 2004/37/EC as in UK SI 2020/40 (read): 0.025 mg/m3 until 17 January 2025, then
    // 0.005; EH40 0.01 mg/m3 (a page).
    const std::string us_chromium = "OSHA 5 µg/m³ over 8 h, action from 2.5";
    const std::string eu_chromium = "EU 5 µg/m³ over 8 h since 17 January 2025, 25 before";
    CHECK(limits(Metal::stainless, "chromium_fume", Country::us) == us_chromium);
    CHECK(limits(Metal::stainless, "chromium_fume", Country::eu) == us_chromium + " | " + eu_chromium);
    CHECK(limits(Metal::stainless, "chromium_fume", Country::uk) ==
          us_chromium + " | " + eu_chromium + " | UK 10 µg/m³ over 8 h");
    // OSHA ceiling 5 ppm and NIOSH 1 ppm over 15 min (sampling sheet, read); Germany 950 ug/m3 (reproduced).
    CHECK(limits(Metal::mild_steel, "no2", Country::us) ==
          "Germany 0.5 ppm over 8 h | UK 0.5 ppm over 8 h | NIOSH 1 ppm over 15 min | OSHA 5 ppm at any moment");
    CHECK(limits(Metal::mild_steel, "no2", Country::other) == limits(Metal::mild_steel, "no2", Country::us));
    CHECK(limits(Metal::mild_steel, "no2", Country::eu) == "Germany 0.5 ppm over 8 h");
    // Ozone: NIOSH ceiling 0.1 ppm, OSHA 0.1 ppm over 8 h (reproduced).
    CHECK(limits(Metal::mild_steel, "ozone", Country::us) == "NIOSH 0.1 ppm at any moment | OSHA 0.1 ppm over 8 h");
    // Manganese: OSHA ceiling 5, NIOSH 1 and 3 mg/m3 (reproduced three times); EH40 0.05 respirable (a page).
    const std::string manganese = limits(Metal::mild_steel, "steel_fume", Country::us);
    CHECK(says(manganese,
               "NIOSH 1 mg/m³ of manganese over 8 h, 3 over 15 min | OSHA 5 mg/m³ of manganese at any moment"));
    CHECK(limits(Metal::mild_steel, "steel_fume", Country::uk) == "UK 0.05 mg/m³ of manganese over 8 h, respirable");
    // Zinc oxide fume: OSHA and NIOSH 5, NIOSH 10 over 15 min, ACGIH 2 (sampling sheet, read).
    CHECK(limits(Metal::galvanised, "zinc_fume", Country::us) ==
          "ACGIH 2 mg/m³ over 8 h | OSHA and NIOSH 5 mg/m³ over 8 h | NIOSH 10 mg/m³ over 15 min");
    // Copper fume: OSHA 0.1 mg/m3 (54 FR 2332, read).
    CHECK(says(limits(Metal::copper, "copper_fume", Country::us), "OSHA 0.1 mg/m³ over 8 h"));
    // Noise: 2003/10/EC 80, 85, 87 dB(A) (SR (NI) 2006/1, read); 29 CFR 1910.95: 85 and 90 dBA.
    CHECK(limits(Metal::mild_steel, "noise", Country::uk) ==
          "UK and EU over 8 h: act from 80 dBA, protect from 85, maximum 87");
    CHECK(limits(Metal::mild_steel, "noise", Country::eu) == limits(Metal::mild_steel, "noise", Country::uk));
    CHECK(says(limits(Metal::mild_steel, "noise", Country::us),
               "OSHA: hearing program from 85 dBA over 8 h, 90 at most"));
}

TEST_CASE("Published times, pressures and voltages in the cautions", "[safety][published]") {
    const safety::Report r = safety::assess({.raw_tap = true});
    // 29 CFR 1910.252(a)(2)(iii)(B): 0.5 h; NFPA 51B-2019 5.6.1.1: 1 h. The longer one; 35 ft.
    CHECK(says(text_of(r, "fire_watch"), "at least 1 h after the last cut"));
    CHECK(says(text_of(r, "fire_watch"), "OSHA asks for 30 min, NFPA 51B of 2019 for 1 h. Take the longer one"));
    CHECK(says(text_of(r, "fire_watch"), "11 m"));
    // 29 CFR 1910.242(b): 30 psi.
    CHECK(says(test::said(find(r, "blow_off")->text, UnitSystem::inch), "30 psi"));
    // Small machines, from memory; the 500 V of EN 60974-1 is read in a copy.
    CHECK(says(text_of(r, "shock"), "200 to 400 V DC"));
    CHECK(says(test::said(find(r, "shock")->citation), "up to 500 V"));
    CHECK(says(text_of(safety::assess({.metal = Metal::aluminium, .water_table = true}), "hydrogen"),
               "Never cut aluminum-lithium on or near water"));
}
