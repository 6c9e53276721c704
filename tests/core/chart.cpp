#include <catch2/catch_test_macros.hpp>

#include "core/worksheet/chart.hpp"
#include "core/worksheet/worksheet.hpp"

using namespace torchside;

namespace {

bool equal(const cut::Settings& a, const cut::Settings& b) {
    const auto same = [](const auto& x, const auto& y) {
        return x.value == y.value && x.low == y.low && x.high == y.high;
    };
    return same(a.feed, b.feed) && same(a.arc, b.arc) && same(a.kerf, b.kerf) && same(a.pierce_delay, b.pierce_delay) &&
           same(a.lead_in, b.lead_in) && same(a.min_hole, b.min_hole) && a.feed_capped == b.feed_capped &&
           a.controller == b.controller;
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
        for (std::size_t row = 0; row < c.rows.size(); ++row)
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
                if (cell.settings)
                    CHECK(equal(*cell.settings, *sheet.settings));
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
        for (std::size_t i = 0; i < c.columns.size(); ++i)
            if (c.columns[i].current == Current{i_a, ampere})
                return i;
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
        for (const double n : r.nozzles)
            machine.nozzles.push_back({Current{n, ampere}, {}});
        const std::vector<Current> currents = chart_currents(machine);
        CAPTURE(r.low, r.high);
        REQUIRE_FALSE(currents.empty());
        CHECK(currents.size() <= 8);
        CHECK(currents.front() == Current{r.low, ampere});
        CHECK(currents.back() == Current{r.high, ampere});
        for (std::size_t i = 1; i < currents.size(); ++i)
            CHECK(currents[i - 1] < currents[i]);
    }
    Machine usual;
    const std::vector<Current> currents = chart_currents(usual);
    REQUIRE(currents.size() == 5);
    CHECK(currents[3] == Current{45, ampere});
}

TEST_CASE("A chart of nothing", "[worksheet][chart]") {
    const Chart c = chart(Shop{}, Metal::copper, std::span<const Length>{});
    CHECK(c.cells.empty());
    CHECK_FALSE(c.columns.empty());
}
