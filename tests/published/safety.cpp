// Lens shades and cautions against the published tables.
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/safety/assess.hpp"

using namespace torchside;

namespace {

struct ShadeRow {
    double current_a;
    int legal, ansi_min, ansi_suggested, variant;
};

safety::LensShade shade(double current_a) {
    return safety::lens_shade(Current{current_a, ampere});
}

bool says(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

std::string_view text_of(const safety::Report& report, std::string_view code) {
    for (const safety::Caution& c : report.cautions) {
        if (c.code == code) {
            return c.text;
        }
    }
    return {};
}

} // namespace

TEST_CASE("Lens shade rows", "[safety][published]") {
    // Legal minimum: 29 CFR 1910.133(a)(5), plasma arc cutting: light < 300 A 8, medium 300 to 400 A 9, heavy 400 to
    // 800 A 10. ANSI Z49.1 minimum and suggested: reproductions, the standard itself was not read; rows share their
    // ends, where the darker row is taken.
    constexpr ShadeRow rows[] = {
        {5, 8, 4, 4, 0},    {19.9, 8, 4, 4, 0}, {20, 8, 5, 5, 0},     {39.9, 8, 5, 5, 0},
        {40, 8, 6, 6, 8},   {45, 8, 6, 6, 8},   {50, 8, 6, 6, 8},     {59.9, 8, 6, 6, 8},
        {60, 8, 8, 8, 0},   {79.9, 8, 8, 8, 0}, {80, 8, 8, 9, 0},     {299, 8, 8, 9, 0},
        {300, 9, 9, 12, 0}, {399, 9, 9, 12, 0}, {400, 10, 10, 14, 0}, {800, 10, 10, 14, 0},
    };
    for (const ShadeRow& r : rows) {
        INFO(r.current_a << " A");
        const safety::LensShade s = shade(r.current_a);
        CHECK(s.legal_min == r.legal);
        CHECK(s.ansi_min == r.ansi_min);
        CHECK(s.ansi_suggested == r.ansi_suggested);
        CHECK(s.ansi_variant == r.variant);
    }
}

TEST_CASE("The legal minimum comes first", "[safety][published]") {
    // 20 to 60 A: 8 with the arc in view first, the ANSI number second with the hidden-arc note.
    for (const double a : {20.0, 30.0, 40.0, 45.0, 59.0}) {
        const safety::Report r = safety::assess({.current = Current{a, ampere}});
        INFO(r.shade_note);
        CHECK(r.shade_min == 8);
        CHECK(r.shade_note.starts_with("8 or darker with the arc in view"));
        CHECK(r.shade_note.find("8 or darker") < r.shade_note.find("ANSI"));
        CHECK(says(r.shade_note, "hides the arc"));
        CHECK(says(r.shade_note, "never below the minimum"));
    }
    CHECK(says(safety::assess({.current = Current{50, ampere}}).shade_note, "6 at least (one copy prints 8)"));
    CHECK_FALSE(says(safety::assess({.current = Current{30, ampere}}).shade_note, "one copy"));
    CHECK_FALSE(says(safety::assess({.current = Current{100, ampere}}).shade_note, "hides the arc"));
    CHECK(safety::assess({.current = Current{299, ampere}}).shade_min == 8);
    CHECK(safety::assess({.current = Current{300, ampere}}).shade_min == 9);
}

TEST_CASE("Published limits in the cautions", "[safety][published]") {
    // 29 CFR 1910.1026(b), (c): action level 2.5, limit 5 ug/m3.
    const safety::Report stainless = safety::assess({.metal = Metal::stainless});
    CHECK(says(text_of(stainless, "chromium_fume"), "5 µg/m³ over 8 h"));
    CHECK(says(text_of(stainless, "chromium_fume"), "2.5 µg/m³"));
    // 29 CFR 1910.1000 Table Z-1 by the OSHA sampling sheet: zinc oxide fume 5 mg/m3; NIOSH 10 for 15 min.
    const safety::Report galvanised = safety::assess({.metal = Metal::galvanised});
    CHECK(says(text_of(galvanised, "zinc_fume"), "5 mg/m³ over 8 h (OSHA)"));
    CHECK(says(text_of(galvanised, "zinc_fume"), "10 mg/m³ over 15 min (NIOSH)"));
    // 29 CFR 1910.252(a)(2)(iii)(B): 0.5 h; NFPA 51B-2019 5.6.1.1: 1 h. The later one.
    CHECK(says(text_of(stainless, "fire_watch"), "at least 1 h"));
    CHECK(says(text_of(stainless, "fire_watch"), "0.5 h"));
    // OSHA sampling sheets: NO2 ceiling 5 ppm, ozone 0.1 ppm. 1910.242(b): 30 psi. 1910.95(c)(1): 85 dBA.
    CHECK(says(text_of(stainless, "ozone_no2"), "5 ppm at any moment"));
    CHECK(says(text_of(stainless, "ozone_no2"), "0.1 ppm over 8 h"));
    CHECK(says(text_of(stainless, "blow_off"), "30 psi"));
    CHECK(says(text_of(stainless, "noise"), "85 dBA"));
}
