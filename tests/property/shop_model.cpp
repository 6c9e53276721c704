// With the shop's model and without: the same answers to the last bit, over random shops and whatever changes in them.
#include <catch2/catch_test_macros.hpp>

#include "core/worksheet/chart.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;

namespace {

template <class Q>
bool same(const Estimate<Q>& a, const Estimate<Q>& b) {
    return a.value == b.value && a.low == b.low && a.high == b.high;
}

bool same(const std::optional<cut::Settings>& a, const std::optional<cut::Settings>& b) {
    if (!a || !b) {
        return a.has_value() == b.has_value();
    }
    return same(a->feed, b->feed) && same(a->arc, b->arc) && same(a->kerf, b->kerf) && same(a->lead_in, b->lead_in) &&
           a->pierce_delay.has_value() == b->pierce_delay.has_value() &&
           (!a->pierce_delay || same(*a->pierce_delay, *b->pierce_delay)) && a->controller == b->controller;
}

bool same(const Worksheet& a, const Worksheet& b) {
    return same(a.settings, b.settings) && a.capacity.clean == b.capacity.clean &&
           a.capacity.sever == b.capacity.sever && a.capacity.suggested_current == b.capacity.suggested_current &&
           a.warnings.size() == b.warnings.size();
}

bool same(const Outcome<Tuning>& a, const Outcome<Tuning>& b) {
    if (!a || !b) {
        return a.ok() == b.ok();
    }
    return a.value().outlook.next == b.value().outlook.next &&
           a.value().outlook.next_clean == b.value().outlook.next_clean &&
           a.value().notes.size() == b.value().notes.size();
}

// One change at a time, some of which the log's fit rests on.
void change(Workbook& w, const Workbook& other, test::Rng& rng) {
    switch (rng.below(9)) {
    case 0:
        w.job.thickness = other.job.thickness;
        break;
    case 1:
        w.job.current = other.job.current;
        break;
    case 2:
        w.job.material = other.job.material;
        break;
    case 3:
        w.shop.machine.nozzles = other.shop.machine.nozzles;
        break;
    case 4:
        w.shop.height_control = other.shop.height_control;
        break;
    case 5:
        w.shop.table.max_feed = other.shop.table.max_feed;
        break;
    case 6:
        w.shop.tests = other.shop.tests;
        break;
    case 7:
        w.shop.wear.now.starts = other.shop.wear.now.starts + static_cast<int>(rng.below(400));
        break;
    default:
        if (!w.shop.tests.empty()) {
            w.shop.tests.back().worn = !w.shop.tests.back().worn;
        }
    }
}

} // namespace

TEST_CASE("The shop's model changes no answer, however long it is kept", "[worksheet][property]") {
    test::Rng rng{20251101};
    for (int i = 0; i < 40; ++i) {
        Workbook w = test::random_workbook(rng);
        const Workbook other = test::random_workbook(rng);
        const ShopModel first(w.shop); // never renewed
        ShopModel kept = first;
        for (int step = 0; step < 6; ++step) {
            change(w, other, rng);
            kept = kept.fitted_to(w.shop);
            REQUIRE(kept.holds_for(w.shop));
            const Worksheet anew = evaluate(w);
            CHECK(same(evaluate(w, nullptr, kept), anew));
            CHECK(same(evaluate(w, nullptr, first), anew));
            CHECK(same(tuning(w, kept), tuning(w)));
        }
    }
}

TEST_CASE("A chart is kept only while what it depends on stays", "[worksheet][property]") {
    test::Rng rng{20251102};
    for (int i = 0; i < 12; ++i) {
        Workbook w = test::random_workbook(rng);
        const Workbook other = test::random_workbook(rng);
        ShopModel model(w.shop);
        ChartInputs inputs = chart_inputs(w.shop, w.job.material, model);
        Chart kept = chart(w.shop, w.job.material, model);
        for (int step = 0; step < 6; ++step) {
            change(w, other, rng);
            model = model.fitted_to(w.shop);
            const Chart anew = chart(w.shop, w.job.material);
            if (inputs != chart_inputs(w.shop, w.job.material, model)) {
                inputs = chart_inputs(w.shop, w.job.material, model);
                kept = chart(w.shop, w.job.material, model);
            }
            REQUIRE(kept.cells.size() == anew.cells.size());
            for (std::size_t cell = 0; cell < anew.cells.size(); ++cell) {
                CHECK(same(kept.cells[cell].settings, anew.cells[cell].settings));
                CHECK(kept.cells[cell].tested == anew.cells[cell].tested);
            }
        }
    }
}

TEST_CASE("A thickness that is typed needs no new fit; a row of the log does", "[worksheet]") {
    Workbook w;
    w.shop.tests.resize(3);
    const ShopModel model(w.shop);
    w.job.thickness = Length{8, mm};
    w.shop.rates.labour_per_h += 1;
    CHECK(model.fitted_to(w.shop) == model);
    w.shop.tests[1].verdict = tune::Verdict::clean;
    CHECK(model.fitted_to(w.shop) != model);
}
