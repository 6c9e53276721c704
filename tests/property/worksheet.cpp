// Properties of the worksheet over random workbooks; fixed seeds.
#include <algorithm>
#include <cmath>

#include <catch2/catch_test_macros.hpp>

#include "core/supply/low_voltage.hpp"
#include "core/worksheet/chart.hpp"
#include "core/worksheet/metal_model.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;

namespace {

bool sound(double low, double value, double high) {
    return std::isfinite(low) && std::isfinite(high) && 0.0 <= low && low <= value && value <= high;
}

template <class Q, class U>
bool sound(const Estimate<Q>& e, U unit) {
    return sound(e.low.in(unit), e.value.in(unit), e.high.in(unit));
}

bool sound(const cut::Settings& s) {
    return sound(s.feed, mm_min) && sound(s.arc, volt) && sound(s.cut_height, mm) && sound(s.pierce_height, mm) &&
           (!s.pierce_delay || sound(*s.pierce_delay, second)) && sound(s.kerf, mm) && sound(s.lead_in, mm) &&
           sound(s.min_hole, mm) && s.feed.value > Speed{} && s.kerf.value > Length{} &&
           std::isfinite(s.controller.in(volt));
}

bool sound(const Estimate<double>& e) {
    return sound(e.low, e.value, e.high);
}

// Part, time, wear and price.
bool sound_job(const Worksheet& sheet) {
    const wear::Report& w = sheet.wear;
    bool all = sheet.part != nullptr && sheet.part->area_mm2 >= 0.0 && sound(w.life_used) && sound(w.part_uses) &&
               sound(w.job_uses) && sound(w.changes) && sound(w.starts_left) && sound(w.cost_each) &&
               sound(w.starts_per_set) && sound(w.arc_per_set, minute) && w.finishes >= 0.0 && w.finishes <= 1.0 &&
               w.sets_to_hold >= 0;
    if (sheet.time) {
        const motion::Report& t = *sheet.time;
        all = all && sound(t.cutting, second) && sound(t.piercing, second) && sound(t.total, second) &&
              t.slow_share >= 0.0 && t.slow_share <= 1.0 && t.resting >= Duration{} && t.starts > 0 &&
              std::isfinite(t.batch.in(second));
    }
    if (sheet.price) {
        const price::Report& p = *sheet.price;
        price::Money sum{};
        for (const price::Line& line : p.lines) {
            sum = sum + line.total;
        }
        all = all && sum == p.total && sound(p.cost_each) && sound(p.price_each) && sound(p.price_total);
    }
    return all;
}

} // namespace

TEST_CASE("Every workbook has a sound worksheet", "[worksheet][property]") {
    test::Rng rng{20240701};
    int with_settings = 0;
    for (int i = 0; i < 1500; ++i) {
        const Workbook w = test::random_workbook(rng);
        const Worksheet sheet = evaluate(w);
        const cut::Capacity& c = sheet.capacity;
        CAPTURE(i);
        CHECK((c.pierce <= c.clean && c.clean <= c.sever));
        CHECK_FALSE(c.reason.empty());
        CHECK(c.suggested_current.has_value() == c.suggested_nozzle.has_value());
        CHECK(sheet.settings.has_value() == (c.verdict != cut::Reach::refused));
        CHECK(sheet.by_hand.has_value() == sheet.settings.has_value());
        if (sheet.settings) {
            ++with_settings;
            CHECK(sound(*sheet.settings));
            CHECK(sheet.settings->feed.value <= w.shop.table.max_feed);
            CHECK(sheet.settings->pierce_delay.has_value() == (c.verdict == cut::Reach::clean));
        }
        const auto stops = [](const Message& x) { return x.severity == Severity::stop; };
        CHECK(sound_job(sheet));
        CHECK(sheet.time.has_value() == (sheet.settings && !sheet.part->path.runs.empty()));
        CHECK(sheet.price.has_value() == sheet.time.has_value());
        if (c.verdict == cut::Reach::refused) {
            CHECK(std::any_of(sheet.warnings.begin(), sheet.warnings.end(), stops));
        }
    }
    CHECK(with_settings > 400);
}

TEST_CASE("Every job is told of electric shock, and of no more than two hazards", "[worksheet][property][safety]") {
    test::Rng rng{20261129};
    for (int i = 0; i < 1500; ++i) {
        const Workbook w = test::random_workbook(rng);
        const Worksheet sheet = evaluate(w);
        CAPTURE(i);
        int hazards = 0;
        for (const safety::Caution& c : sheet.safety.cautions) {
            for (const Message& x : sheet.warnings) {
                hazards += x.code == c.code ? 1 : 0;
            }
        }
        CHECK(hazards == 2);
        CHECK(std::count_if(sheet.warnings.begin(), sheet.warnings.end(), [](const Message& x) {
                  return x.code == "shock" && x.severity == Severity::caution;
              }) == 1);
        CHECK(std::any_of(sheet.safety.cautions.begin(), sheet.safety.cautions.end(),
                          [](const safety::Caution& c) { return c.code == "shock"; }));
        CHECK((sheet.safety.cautions.back().code == "local_rules"));
        CHECK(std::is_sorted(sheet.warnings.begin(), sheet.warnings.end(),
                             [](const Message& a, const Message& b) { return a.severity > b.severity; }));
    }
}

TEST_CASE("What is suggested cuts the plate, within machine, nozzle and table", "[worksheet][property]") {
    test::Rng rng{20240702};
    int suggested = 0;
    for (int i = 0; i < 600; ++i) {
        Workbook w = test::random_workbook(rng);
        w.job.thickness = Length{rng.by_factor(0.5, 20.0), mm};
        w.shop.tests.clear(); // what they teach depends on the nozzles, which are taken away below
        const cut::Capacity asked = evaluate(w).capacity;
        if (!asked.suggested_current) {
            continue;
        }
        ++suggested;
        CAPTURE(i, w.job.thickness.in(mm), asked.suggested_current->in(ampere));
        const Machine here =
            supply::machine_on(w.shop.machine, w.shop.circuit.line); // on a low line it has another rating
        CHECK(*asked.suggested_current >= here.min_current);
        CHECK(*asked.suggested_current <= here.max_current);
        CHECK(*asked.suggested_current <= *asked.suggested_nozzle);
        // The shop with that nozzle alone, at that current.
        std::erase_if(w.shop.machine.nozzles, [&](const Nozzle& n) { return n.rated != *asked.suggested_nozzle; });
        w.shop.machine.nozzles.resize(1);
        w.job.current = *asked.suggested_current;
        CHECK(evaluate(w).capacity.verdict <= cut::Reach::edge_start);
    }
    CHECK(suggested > 200);
}

TEST_CASE("The learnt feed's middle falls with thickness and rises with current", "[worksheet][property]") {
    test::Rng rng{20240703};
    for (int i = 0; i < 60; ++i) {
        const Workbook w = test::random_workbook(rng);
        Shop shop = w.shop;
        shop.tests.resize(std::min<std::size_t>(shop.tests.size(), 4));
        const MetalModel learnt{shop, w.job.material};
        cut::CutSetup p = learnt.plate(Length{3, mm}, Current{45, ampere});
        for (double t = 0.5; t < 30; t *= 1.2) {
            p.thickness = Length{t, mm};
            cut::CutSetup thicker = p;
            thicker.thickness = 1.05 * p.thickness;
            CHECK((learnt.feed(thicker) < learnt.feed(p) || learnt.feed(p) == Speed{}));
        }
    }
}

TEST_CASE("No own cuts: feed and capacity are monotone", "[worksheet][property]") {
    const Shop shop;
    for (const Metal metal : all_metals) {
        const MetalModel learnt{shop, metal};
        cut::Limits before{};
        for (double i_a = 20; i_a <= 100; i_a += 5) {
            const cut::Limits l = learnt.limits(Current{i_a, ampere});
            CHECK((l.clean > before.clean || l.capped));
            CHECK((l.sever > before.sever || l.capped));
            CHECK((l.pierce > before.pierce || l.capped));
            before = l;
            Speed last{1e9, mm_min};
            for (double t = 0.5; t < 12; t *= 1.1) {
                const Speed v = learnt.arc_feed(learnt.plate(Length{t, mm}, Current{i_a, ampere})).value;
                CHECK((v < last || v == Speed{}));
                last = v;
            }
        }
    }
}
