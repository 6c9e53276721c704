#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/plate_terms.hpp"
#include "core/worksheet/chart.hpp"
#include "core/worksheet/worksheet.hpp"

using namespace torchside;
using Catch::Matchers::WithinAbs;

namespace {

bool equal(const cut::Settings& a, const cut::Settings& b) {
    const auto same = [](const auto& x, const auto& y) {
        return x.value == y.value && x.low == y.low && x.high == y.high;
    };
    return same(a.feed, b.feed) && same(a.arc, b.arc) && same(a.kerf, b.kerf) &&
           a.pierce_delay.has_value() == b.pierce_delay.has_value() &&
           (!a.pierce_delay || same(*a.pierce_delay, *b.pierce_delay)) && same(a.lead_in, b.lead_in) &&
           same(a.min_hole, b.min_hole) && a.feed_capped == b.feed_capped && a.controller == b.controller;
}

} // namespace

TEST_CASE("A chart's cell is the worksheet of that plate", "[worksheet][chart]") {
    Shop shop;
    tune::TestCut cut;
    cut.feed = Speed{1500, mm_min};
    cut.verdict = tune::Verdict::too_fast;
    shop.tests = {cut};
    for (const Metal metal : all_metals) {
        const Chart c = chart(shop, metal);
        REQUIRE(c.cells.size() == c.rows.size() * c.columns.size());
        REQUIRE_FALSE(c.rows.empty());
        for (std::size_t row = 0; row < c.rows.size(); ++row) {
            for (std::size_t column = 0; column < c.columns.size(); ++column) {
                Workbook w;
                w.shop = shop;
                w.job.material = metal;
                w.job.thickness = c.rows[row];
                w.job.current = c.columns[column].current;
                const Worksheet sheet = evaluate(w);
                const ChartCell& cell = c.at(row, column);
                CAPTURE(static_cast<int>(metal), c.rows[row].in(mm), c.columns[column].current.in(ampere));
                CHECK(cell.reach == sheet.capacity.verdict);
                REQUIRE(cell.settings.has_value() == sheet.settings.has_value());
                if (cell.settings) {
                    CHECK(equal(*cell.settings, *sheet.settings));
                }
            }
        }
    }
}

TEST_CASE("A chart says where the shop has cut", "[worksheet][chart]") {
    Shop shop;
    tune::TestCut cut;
    cut.feed = Speed{1500, mm_min};
    cut.verdict = tune::Verdict::clean;
    shop.tests = {cut};
    const Length rows[] = {Length{6, mm}, Length{7, mm}, Length{12, mm}};
    Chart c = chart(shop, Metal::mild_steel, rows);
    const auto column = [&](double i_a) {
        for (std::size_t i = 0; i < c.columns.size(); ++i) {
            if (c.columns[i].current == Current{i_a, ampere}) {
                return i;
            }
        }
        return c.columns.size();
    };
    REQUIRE(column(45) < c.columns.size());
    CHECK(c.at(0, column(45)).tested == Tested::here);
    CHECK(c.at(0, column(40)).tested == Tested::near);
    CHECK(c.at(1, column(45)).tested == Tested::near);
    CHECK(c.at(2, column(45)).tested == Tested::none);
    CHECK(c.at(0, column(20)).tested == Tested::none);
    CHECK(chart(shop, Metal::galvanised, rows).at(0, column(45)).tested == Tested::here);
    CHECK(chart(shop, Metal::stainless, rows).at(0, column(45)).tested == Tested::none);
    shop.tests[0].worn = true;
    c = chart(shop, Metal::mild_steel, rows);
    CHECK(c.at(0, column(45)).tested == Tested::none);
}

TEST_CASE("A chart's columns cover the machine and its nozzles", "[worksheet][chart]") {
    struct Row {
        double low, high;
        std::vector<double> nozzles;
    };
    const Row rows[] = {{20, 50, {45}}, {20, 50, {}},  {10, 200, {30, 45, 60, 80, 105, 125, 150, 200}},
                        {45, 45, {45}}, {5, 12, {10}}, {20, 105, {30, 45, 60, 85, 105}}};
    for (const Row& r : rows) {
        Machine machine;
        machine.min_current = Current{r.low, ampere};
        machine.max_current = Current{r.high, ampere};
        machine.nozzles.clear();
        for (const double n : r.nozzles) {
            machine.nozzles.push_back({Current{n, ampere}, {}});
        }
        const std::vector<Current> currents = chart_currents(machine);
        CAPTURE(r.low, r.high);
        REQUIRE_FALSE(currents.empty());
        CHECK(currents.size() <= 8);
        CHECK(currents.front() == Current{r.low, ampere});
        CHECK(currents.back() == Current{r.high, ampere});
        for (std::size_t i = 1; i < currents.size(); ++i) {
            CHECK(currents[i - 1] < currents[i]);
        }
    }
    Machine usual;
    const std::vector<Current> currents = chart_currents(usual);
    REQUIRE(currents.size() == 5);
    CHECK(currents[3] == Current{45, ampere});
}

TEST_CASE("A chart on a low line goes as far as the machine does there", "[worksheet][chart]") {
    Shop shop;
    shop.machine.low_voltage.max_current = Current{25, ampere};
    const ChartInputs before = chart_inputs(shop, Metal::mild_steel, {});
    CHECK(chart(shop, Metal::mild_steel).columns.back().current == Current{50, ampere});
    shop.circuit.line = Voltage{120, volt};
    CHECK(chart(shop, Metal::mild_steel).columns.back().current == Current{25, ampere});
    CHECK_FALSE(chart_inputs(shop, Metal::mild_steel, {}) == before);
}

TEST_CASE("A chart of nothing", "[worksheet][chart]") {
    const Chart c = chart(Shop{}, Metal::copper, std::span<const Length>{});
    CHECK(c.cells.empty());
    CHECK_FALSE(c.columns.empty());
}

TEST_CASE("A cell's feed rests on practice where rules of thumb halve its variance", "[worksheet][chart]") {
    // sd of ln(feed) by tune_priors.json: bias 0.35 (0.22 of it the shop's own), slope 0.20 (0.11), current 0.20, metal
    // 0.20, one stock 0.06; five rules of thumb of sd 0.20. Shares by NumPy, one solve over the five rows at once.
    using tune::DominantBasis;
    const tune::Posterior p = tune::learn({}, Machine{});
    const auto plate = [](Metal metal, double t) {
        cut::CutSetup made;
        made.metal = metal;
        made.thickness = Length{t, mm};
        made.current = Current{45, ampere};
        return made;
    };
    const struct {
        Metal metal;
        double t_mm;
        double share;
        DominantBasis feed;
    } rows[] = {{Metal::mild_steel, 6, 0.62016, DominantBasis::practice},
                {Metal::mild_steel, 0.8, 0.45195, DominantBasis::physics},
                {Metal::stainless, 6, 0.54023, DominantBasis::practice},
                {Metal::stainless, 1.5, 0.45787, DominantBasis::physics},
                {Metal::copper, 6, 0.34095, DominantBasis::physics}};
    for (const auto& r : rows) {
        CAPTURE(static_cast<int>(r.metal), r.t_mm);
        const tune::Vector x = tune::feed_regressors(plate(r.metal, r.t_mm)).x;
        const double stock = p.feed.model().stock_sd * p.feed.model().stock_sd;
        const double share = 1.0 - (p.feed_practice.variance(x) + stock) / (p.feed_physics.variance(x) + stock);
        CHECK_THAT(share, WithinAbs(r.share, 1e-5));
        const tune::DominantBases f = tune::dominant_bases(p, plate(r.metal, r.t_mm));
        CHECK(f.feed == r.feed);
        CHECK(f.kerf == DominantBasis::physics);
        CHECK(f.pierce_delay == DominantBasis::physics);
        CHECK(f.arc == DominantBasis::practice);
    }
}

TEST_CASE("A cell rests on own cuts where they halve the band", "[worksheet][chart]") {
    using tune::DominantBasis;
    Shop shop;
    const Length rows[] = {Length{6, mm}, Length{0.8, mm}};
    const auto at_45 = [&](std::size_t row) {
        const Chart c = chart(shop, Metal::mild_steel, rows);
        for (std::size_t i = 0; i < c.columns.size(); ++i) {
            if (c.columns[i].current == Current{45, ampere}) {
                return c.at(row, i).basis;
            }
        }
        return tune::DominantBases{};
    };
    CHECK(at_45(0).feed == DominantBasis::practice);
    tune::TestCut cut;
    cut.feed = Speed{1500, mm_min};
    cut.verdict = tune::Verdict::clean;
    shop.tests = {cut};
    CHECK(at_45(0).feed == DominantBasis::cuts);
    CHECK(at_45(0).kerf == DominantBasis::physics);
    CHECK(at_45(0).arc == DominantBasis::practice);
    CHECK(at_45(1).feed == DominantBasis::physics); // far off: the cut says little of 0.8 mm
    cut.kerf_top = cut.kerf_bottom = Length{1.6, mm};
    cut.arc = Voltage{118, volt};
    cut.pierce_delay = Duration{0.95, second}; // 0.45 s behind a usual contact start
    cut.pierce = tune::PierceVerdict::good;
    shop.tests = {cut};
    CHECK(at_45(0).kerf == DominantBasis::cuts);
    CHECK(at_45(0).arc == DominantBasis::cuts);
    CHECK(at_45(0).pierce_delay == DominantBasis::cuts);
    shop.tests[0].worn = true;
    CHECK(at_45(0).feed == DominantBasis::practice); // it taught nothing
}
