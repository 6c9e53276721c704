// Piercing, kerf and heights against worked values, computed independently of this code.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/cut/feed_model.hpp"
#include "core/cut/pierce.hpp"
#include "core/cut/rules.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

cut::CutSetup plate(Metal metal, double t_mm, double i_a) {
    return {metal, Length{t_mm, mm}, Current{i_a, ampere}, {}, {}, Length{1.5, mm}};
}

} // namespace

TEST_CASE("Pierce delay", "[cut][published]") {
    struct Row {
        Metal metal;
        double i_a, t_mm, melt_s, limit_mm, delay_s;
    };
    // Own, handbook terms, to 2 % or half a unit of the last digit. No published pierce time was found.
    constexpr Row rows[] = {
        {Metal::mild_steel, 45, 3, 0.0624, 9.60, 0.18},  {Metal::mild_steel, 45, 6, 0.1216, 9.60, 0.65},
        {Metal::mild_steel, 60, 8, 0.1517, 12.57, 0.83}, {Metal::mild_steel, 100, 12, 0.1958, 21.15, 0.91},
        {Metal::stainless, 60, 6, 0.1332, 11.96, 0.53},  {Metal::aluminium, 60, 6, 0.0611, 9.86, 0.31},
    };
    for (const Row& r : rows) {
        CAPTURE(static_cast<int>(r.metal), r.i_a, r.t_mm);
        const cut::Terms& terms = cut::handbook(r.metal);
        const cut::CutSetup p = plate(r.metal, r.t_mm, r.i_a);
        CHECK(cut::melting_time(p, terms).value().in(second) == Approx(r.melt_s).epsilon(0.001));
        CHECK(cut::pierce_limit(p, terms).in(mm) == Approx(r.limit_mm).margin(0.0051));
        CHECK(cut::pierce_delay(p, terms).value().in(second) == Approx(r.delay_s).epsilon(0.02));
    }
}

TEST_CASE("No standing pierce at the limit", "[cut][published]") {
    // Own: t = t_max is refused, and so is anything thicker.
    const cut::Terms& terms = cut::handbook(Metal::mild_steel);
    cut::CutSetup p = plate(Metal::mild_steel, 6, 45);
    p.thickness = cut::pierce_limit(p, terms);
    REQUIRE_FALSE(cut::pierce_delay(p, terms).ok());
    CHECK(cut::pierce_delay(p, terms).fault().field == "job.thickness_mm");
    p.thickness = Length{30, mm};
    CHECK_FALSE(cut::pierce_delay(p, terms).ok());
}

TEST_CASE("Thickness at 250 mm/min", "[cut][published]") {
    struct Row {
        Metal metal;
        double t_mm[7]; // at 20, 30, 40, 45, 60, 80, 100 A
    };
    // Own, handbook terms, to half a unit.
    constexpr double currents[] = {20, 30, 40, 45, 60, 80, 100};
    constexpr Row rows[] = {{Metal::mild_steel, {7.3, 10.6, 14.0, 15.7, 21.2, 29.1, 38.0}},
                            {Metal::stainless, {7.4, 10.6, 13.9, 15.6, 20.8, 28.4, 36.8}},
                            {Metal::aluminium, {4.1, 6.2, 8.4, 9.5, 13.2, 18.6, 24.8}}};
    for (const Row& r : rows) {
        for (int i = 0; i < 7; ++i) {
            CAPTURE(static_cast<int>(r.metal), currents[i]);
            CHECK(cut::thickness_at(Speed{250, mm_min}, plate(r.metal, 1, currents[i]),
                                    cut::PhysicsModel{cut::handbook(r.metal)})
                      .in(mm) == Approx(r.t_mm[i]).margin(0.051));
        }
    }
}

TEST_CASE("Kerf before any measured one", "[cut][published]") {
    struct Row {
        double i_a, kerf_mm;
    };
    // Own, 1.5 times the bore at 50 A/mm2 (handbook terms), to half a unit.
    constexpr Row rows[] = {{20, 1.07}, {30, 1.31}, {40, 1.51}, {45, 1.606}, {60, 1.85}, {80, 2.14}, {100, 2.39}};
    for (const Row& r : rows) {
        CHECK(cut::kerf(plate(Metal::mild_steel, 6, r.i_a), cut::handbook(Metal::mild_steel)).in(mm) ==
              Approx(r.kerf_mm).margin(0.0051));
    }
    // Key begic_2012, seen second-hand: kerf below 4.6 mm with a 3 mm nozzle.
    cut::CutSetup wide = plate(Metal::mild_steel, 6, 60);
    wide.bore = Length{3, mm};
    CHECK(cut::kerf(wide, cut::small_air_torch(Metal::mild_steel)).in(mm) < 4.6);
}

TEST_CASE("Lead-in, smallest hole and pace", "[cut][published]") {
    const Estimate<Length> kerf{Length{1.606, mm}, Length{1.1, mm}, Length{2.3, mm}, {}};
    struct Row {
        double t_mm, lead_mm, hole_mm;
    };
    // Shop rules, from memory: max(1.5 t, 2.5 w, 3 mm); max(1.0 t, 3 w).
    constexpr Row rows[] = {{1, 4.015, 4.818}, {2, 4.015, 4.818}, {3, 4.5, 4.818}, {6, 9.0, 6.0}, {12, 18.0, 12.0}};
    for (const Row& r : rows) {
        const auto lead = cut::lead_in(Length{r.t_mm, mm}, kerf);
        const auto hole = cut::smallest_hole(Length{r.t_mm, mm}, kerf);
        CHECK(lead.value.in(mm) == Approx(r.lead_mm).epsilon(1e-12));
        CHECK(hole.value.in(mm) == Approx(r.hole_mm).epsilon(1e-12));
        CHECK((lead.low <= lead.value && lead.value <= lead.high));
        CHECK((hole.low <= hole.value && hole.value <= hole.high));
    }
    CHECK(cut::pierce_height(cut::cut_height()).value.in(mm) == Approx(3.0));
    // Arithmetic: 100 mm and 304.8 mm at 1700 mm/min.
    const cut::ByHand hand = cut::by_hand(Speed{1700, mm_min}, Current{45, ampere}, false);
    CHECK(hand.per_100_mm.in(second) == Approx(3.529412).epsilon(1e-6));
    CHECK(hand.per_foot.in(second) == Approx(10.757647).epsilon(1e-6));
}
