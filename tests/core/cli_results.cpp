// The worksheet and the chart as files.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <string>

#include "tools/cli/results/chart.hpp"
#include "tools/cli/results/worksheet.hpp"

using namespace torchside;
using namespace torchside::cli;

namespace {

Json worksheet_of(const Workbook& w) {
    return worksheet_json(evaluate(w), w);
}

constexpr const char* setting_keys[] = {"feed_mm_min",    "arc_v",   "cut_height_mm", "pierce_height_mm",
                                        "pierce_delay_s", "kerf_mm", "lead_in_mm",    "min_hole_mm"};

} // namespace

TEST_CASE("a worksheet file holds what evaluate says, by the contract's keys") {
    const Workbook w;
    const Worksheet sheet = evaluate(w);
    const Json out = worksheet_of(w);
    REQUIRE(out.is_object());
    REQUIRE(sheet.settings);
    for (const char* key : setting_keys) {
        INFO(key);
        const Json& e = out["settings"][key];
        CHECK(e["low"] <= e["value"]);
        CHECK(e["value"] <= e["high"]);
        CHECK(e["basis"].is_array());
        CHECK_FALSE(e["basis"].empty());
    }
    CHECK(out["settings"]["feed_mm_min"]["value"] == sheet.settings->feed.value.in(mm_min));
    CHECK(out["settings"]["feed_mm_min"]["basis"] == Json({"physics", "practice"}));
    CHECK(out["settings"]["controller_v"] == sheet.settings->controller.in(volt));
    CHECK(out["tap"]["controller_high_v"] == sheet.tap.controller.in(volt));
    CHECK_FALSE(out["tap"].contains("controller_v")); // the settings' is the middle
    CHECK(out["capacity"]["verdict"] == "clean");
    CHECK(out["capacity"]["sever_mm"] == sheet.capacity.sever.in(mm));
    CHECK(out["by_hand"]["s_per_100_mm"] == sheet.by_hand->per_100_mm.in(second));
    CHECK(out["circuit"]["input_a"] == sheet.circuit.input.in(ampere));
    CHECK(out["circuit"]["cord_min_awg"] == *sheet.circuit.cord_min_awg);
    CHECK(out["circuit"]["chain"].size() == 6);
    CHECK(out["air"]["water_g_h"] == sheet.air.water_g_h);
    CHECK(out["safety"]["shade_min"] == sheet.safety.shade_min);
    CHECK(out["warnings"].size() == sheet.warnings.size());
}

TEST_CASE("a refused plate has every key and no settings") {
    Workbook w;
    w.job.thickness = Length{40, mm};
    w.job.current = Current{50, ampere};
    const Json out = worksheet_of(w);
    for (const char* key : setting_keys) {
        CHECK(out["settings"].at(key).is_null());
    }
    CHECK(out["settings"].size() == worksheet_of(Workbook{})["settings"].size());
    CHECK(out["by_hand"].size() == worksheet_of(Workbook{})["by_hand"].size());
    CHECK(out["by_hand"]["s_per_100_mm"].is_null());
    CHECK(out["capacity"]["verdict"] == "refused");
    CHECK_FALSE(out["capacity"]["reason"].get<std::string>().empty());
    REQUIRE_FALSE(out["warnings"].empty());
    CHECK(out["warnings"][0]["severity"] == "stop");
}

TEST_CASE("a plate that is begun at an edge has no pierce delay, not one of 0 s") {
    Workbook w;
    w.job.thickness = Length{11, mm};
    const Json out = worksheet_of(w);
    CHECK(out["capacity"]["verdict"] == "edge_start");
    CHECK(out["settings"]["pierce_delay_s"].is_null());
    CHECK(out["settings"]["feed_mm_min"].is_object());
    CHECK(out["time"]["to_drill"] == 4); // the default plate's holes
    CHECK(std::any_of(out["warnings"].begin(), out["warnings"].end(), [](const Json& warning) {
        return warning["code"] == "needs_pierce" &&
               warning["text"].get<std::string>().find("drill") != std::string::npos;
    }));
    const Length rows[] = {Length{10, mm}};
    const Chart made = chart(w.shop, Metal::mild_steel, rows);
    const std::string csv = chart_csv(made, UnitSystem::metric);
    const std::size_t row = csv.rfind('\n', csv.rfind("edge_start")) + 1;
    const auto before =
        std::count(csv.begin(), csv.begin() + static_cast<std::ptrdiff_t>(csv.find("pierce_delay_s")), ',');
    std::size_t delay = row;
    for (std::ptrdiff_t i = 0; i < before; ++i) {
        delay = csv.find(',', delay) + 1;
    }
    CHECK(csv[delay] == ',');
    const Json cells = chart_json(made, UnitSystem::metric)["cells"];
    CHECK(std::any_of(cells.begin(), cells.end(), [](const Json& cell) {
        return cell["verdict"] == "edge_start" && cell["settings"]["pierce_delay_s"].is_null();
    }));
}

TEST_CASE("the basis lists own cuts and what was entered") {
    Workbook w;
    w.shop.tests.push_back({.feed = Speed{1500, mm_min}, .verdict = tune::Verdict::clean, .arc = Voltage{130, volt}});
    const Json basis = worksheet_of(w)["settings"]["feed_mm_min"]["basis"];
    CHECK(std::find(basis.begin(), basis.end(), "tests:1") != basis.end());
}

TEST_CASE("a chart file has one line and one entry a cell, in the units asked for") {
    const Shop shop;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
        const Chart made = chart(shop, Metal::mild_steel, units);
        const std::string csv = chart_csv(made, units);
        const auto lines = std::count(csv.begin(), csv.end(), '\n');
        CHECK(static_cast<std::size_t>(lines) == 1 + made.cells.size());
        CHECK(csv.starts_with(units == UnitSystem::inch ? "thickness_in,current_a," : "thickness_mm,current_a,"));
        for (std::size_t start = 0; start < csv.size(); start = csv.find('\n', start) + 1) {
            const std::string line = csv.substr(start, csv.find('\n', start) - start);
            INFO(line);
            CHECK(std::count(line.begin(), line.end(), ',') == 19);
            CHECK((line.find("refused") == std::string::npos) == !line.ends_with(",,,,,,,,,,,,out of reach"));
            CHECK((line.find(",edge_start,") != std::string::npos) == line.ends_with("start at an edge"));
            CHECK((line.find(",sever,") != std::string::npos) == line.ends_with("severs rough"));
        }
        const Json out = chart_json(made, units);
        REQUIRE(out["cells"].size() == made.cells.size());
        CHECK(out["columns"].size() == made.columns.size());
        for (std::size_t i = 0; i < made.cells.size(); ++i) {
            const Json& basis = out["cells"][i]["basis"];
            CHECK(basis.is_null() == !made.cells[i].settings);
            CHECK((basis.is_null() || basis == "physics" || basis == "practice"));
        }
        CHECK(out.dump().find("\"basis\":\"practice\"") != std::string::npos);
        CHECK(csv.find(",none,practice,") != std::string::npos);
        CHECK(csv.find(",none,physics,") != std::string::npos);
        const Json& first = out["cells"][0]["settings"];
        REQUIRE(made.cells[0].settings);
        const Speed feed = made.cells[0].settings->feed.value;
        CHECK(first[units == UnitSystem::inch ? "feed_in_min" : "feed_mm_min"]["value"] ==
              feed.in(units == UnitSystem::inch ? in_min : mm_min));
    }
    const Length gauge[] = {Length{0.0359, inch}};
    CHECK(chart_csv(chart(shop, Metal::mild_steel, gauge), UnitSystem::inch).find("\n0.0359,") != std::string::npos);
    CHECK(chart_csv(Chart{}, UnitSystem::metric).find("feed_mm_min") != std::string::npos);
}
