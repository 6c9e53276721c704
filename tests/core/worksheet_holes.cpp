// Holes by size: equal ones are one finding, and the good are named too.
#include <utility>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/quantity/print.hpp"
#include "core/worksheet/hindrance.hpp"
#include "core/worksheet/holes.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;

namespace {

std::vector<Holes> holes(Workbook& w, double hole_mm) {
    w.job.part.hole = Length{hole_mm, mm};
    return holes_of(evaluate(w), w.job.thickness);
}

} // namespace

TEST_CASE("Four equal holes are one finding: poor, small or good") {
    Workbook w;
    w.job.part.holes = 4;
    w.job.thickness = Length{2, mm}; // thin: the kerf decides
    const Length least = least_hole(*evaluate(w).settings);
    const auto good = holes(w, least.in(mm));
    REQUIRE(good.size() == 1);
    CHECK(good[0].count == 4);
    CHECK(good[0].state == HoleState::good);
    CHECK(holes(w, least.in(mm)-0.1)[0].state == HoleState::small);
    CHECK(holes(w, w.job.thickness.in(mm))[0].state == HoleState::small);
    CHECK(holes(w, w.job.thickness.in(mm)-0.1)[0].state == HoleState::poor);
    w.job.thickness = Length{99, mm};
    CHECK(holes(w, 20).empty()); // refused: nothing is said of them
}

TEST_CASE("The smallest hole is rounded up in either unit: one as small as it says is good") {
    cut::Settings settings;
    const auto shown = [&](double value_mm) {
        settings.min_hole.value = Length{value_mm, mm};
        return std::pair(least_hole(settings).in(mm), least_hole(settings, UnitSystem::inch).in(inch));
    };
    CHECK_THAT(shown(6).first, WithinAbs(6, 1e-12));
    CHECK_THAT(shown(6.04).first, WithinAbs(6.1, 1e-12));
    CHECK_THAT(shown(9.5).second, WithinAbs(0.375, 1e-12)); // 0.37402 in
    CHECK_THAT(shown(25.4).second, WithinAbs(1, 1e-12));
    Workbook w;
    w.job.part.holes = 1;
    for (double t = 0.5; t < 12; t += 0.25) {
        w.job.thickness = Length{t, mm};
        const auto sheet = evaluate(w);
        REQUIRE(sheet.settings);
        for (const UnitSystem system : {UnitSystem::metric, UnitSystem::inch}) {
            const Length least = least_hole(*sheet.settings, system);
            CHECK(least.in(mm) > sheet.settings->min_hole.value.in(mm)-1e-9);
            CHECK(holes(w, least.in(mm))[0].state == HoleState::good);
        }
    }
}

TEST_CASE("What is in the way has one reason") {
    Workbook w;
    CHECK_FALSE(hindrance(w, evaluate(w)));
    w.job.part.hole = Length{500, mm};
    REQUIRE(hindrance(w, evaluate(w)));
    CHECK(test::said(hindrance(w, evaluate(w))->reason) == "The part cannot have these sizes");
    w.job.thickness = Length{99, mm};
    CHECK(test::said(hindrance(w, evaluate(w))->reason) == "45 A does not sever this plate");
}

TEST_CASE("A feed to dial in has three figures and stays within the table") {
    const Speed fast{7600, mm_min};
    const auto metric = [&](double v, Speed most) {
        return to_dial(Speed{v, mm_min}, most, UnitSystem::metric).in(mm_min);
    };
    CHECK(metric(1641.3, fast) == 1640);
    CHECK(metric(998.4, fast) == 998);
    CHECK(metric(5234, Speed{3048, mm_min}) == 3048);
    CHECK(metric(2996.5, Speed{2997, mm_min}) == 2997);
    CHECK(print(to_dial(Speed{64.63, in_min}, fast, UnitSystem::inch), UnitSystem::inch).text() == "64.6 in/min");
    CHECK(print(to_dial(Speed{164.63, in_min}, fast, UnitSystem::inch), UnitSystem::inch).text() == "165 in/min");
}
