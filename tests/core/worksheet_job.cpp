// From the part to the price: the worksheet's part, time, wear and price, and the intents that log them.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/schema/intent.hpp"
#include "core/wear/assess.hpp"
#include "core/worksheet/job_stages.hpp"
#include "tests/core/said.hpp"
#include "tools/cli/results/worksheet.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

constexpr double pi = std::numbers::pi;

/// 24 base plates of a handrail, 120 x 120 x 6 mm, with four 13 mm holes.
Workbook base_plates() {
    Workbook w;
    w.job.part.length = w.job.part.width = Length{120, mm};
    w.job.part.hole = Length{13, mm};
    w.job.part.hole_edge = Length{18, mm};
    return w;
}

const Message* find(const Worksheet& sheet, std::string_view code) {
    const auto at =
        std::find_if(sheet.warnings.begin(), sheet.warnings.end(), [&](const Message& w) { return w.code == code; });
    return at == sheet.warnings.end() ? nullptr : &*at;
}

cli::Json as_json(const Workbook& w, PartMemo* memo) {
    return cli::worksheet_json(evaluate(w, memo), w);
}

} // namespace

TEST_CASE("24 base plates: part, time, wear and price", "[worksheet][job]") {
    const Workbook w = base_plates();
    const Worksheet sheet = evaluate(w);
    const PartStage& part = *sheet.part;
    CHECK(part.area_mm2 == Approx(120 * 120 - pi * 13 * 13).epsilon(1e-12));
    CHECK(part.cut_mm == Approx(480 + 4 * 13 * pi).epsilon(1e-12));
    CHECK(part.pierces == 5);
    REQUIRE(part.contours.size() == 5);
    CHECK(part.contours[0].area_mm2 == Approx(14400));
    CHECK(part.contours[1].role == part::Role::inner);
    CHECK(part.high.x - part.low.x == Approx(120));
    REQUIRE(sheet.mass);
    CHECK(sheet.mass->in(kg) == Approx(part.area_mm2 * 6e-9 * 7850).epsilon(0.01)); // steel; density of the table

    REQUIRE(sheet.time);
    CHECK(sheet.time->starts == 5);
    // At least the outline at the feed and the holes at 60 % of it; the table's ramps cost little here.
    const double feed = sheet.settings->feed.value.in(mm_s), least = 480 / feed + 4 * 13 * pi / (0.6 * feed);
    CHECK(sheet.time->cutting.value.in(second) > 0.9 * least);
    CHECK(sheet.time->cutting.value.in(second) < 1.3 * least);
    CHECK(sheet.time->piercing.value.in(second) == Approx(5 * sheet.settings->pierce_delay->value.in(second)));

    CHECK(sheet.wear.part_uses.value > 5.0 / 500);
    CHECK(sheet.wear.part_uses.value < 5.0 / 250);
    REQUIRE(sheet.price);
    CHECK(price::line(*sheet.price, price::LineKind::material).each.value == Approx(sheet.mass->in(kg)*1.4 / 0.75));
    CHECK(price::line(*sheet.price, price::LineKind::consumables).each.value == Approx(sheet.wear.cost_each.value));
    CHECK(sheet.price->price_each.value * 24 == Approx(sheet.price->price_total.value).margin(0.13));
}

TEST_CASE("What was learnt reaches the price", "[worksheet][job]") {
    Workbook w = base_plates();
    const Worksheet before = evaluate(w);
    tune::TestCut cut;
    cut.feed = Speed{1000, mm_min};
    cut.verdict = tune::Verdict::clean;
    w.shop.tests = {cut, cut};
    const Worksheet slower = evaluate(w);
    CHECK(slower.time->cutting.value > before.time->cutting.value);
    CHECK(slower.time->cutting.basis.tests == 2);
    CHECK(slower.price->cost_each.value > before.price->cost_each.value);
    CHECK(slower.wear.part_uses.value > before.wear.part_uses.value);
    w.shop.table.acceleration = Acceleration{20, mm_s2};
    const Worksheet weak = evaluate(w);
    CHECK(weak.time->cutting.value > slower.time->cutting.value);
    CHECK(weak.time->slow_share > slower.time->slow_share);
}

TEST_CASE("The same worksheet with and without a memo, and the part is built once", "[worksheet][job]") {
    PartMemo memo;
    Workbook w = base_plates();
    CHECK(as_json(w, &memo) == as_json(w, nullptr));
    const PartStage* first = memo.stage.get();
    // What the part does not depend on.
    w.job.quantity = 7;
    w.shop.rates.labour_per_h = 99;
    w.shop.wear.now = {200, Duration{40, minute}};
    CHECK(as_json(w, &memo) == as_json(w, nullptr));
    CHECK(memo.stage.get() == first);
    // And what it does.
    const auto moved = [&](auto change) {
        const PartStage* last = memo.stage.get();
        change();
        CHECK(as_json(w, &memo) == as_json(w, nullptr));
        CHECK(memo.stage.get() != last);
    };
    moved([&] { w.job.part.hole = Length{20, mm}; });
    moved([&] { w.job.thickness = Length{8, mm}; });
    moved([&] { w.shop.machine.nozzles[0].bore = Length{1.4, mm}; });
    moved([&] { w.shop.machine.clockwise_swirl = false; });
    moved([&] { w.job.part.shape = part::Shape::drawing; });
    moved([&] {
        part::Outline square;
        square.contours.push_back({{{{0, 0}, 0}, {{50, 0}, 0}, {{50, 50}, 0}, {{0, 50}, 0}}, part::Role::outer});
        w.job.part.drawing = std::make_shared<const part::Outline>(square);
    });
    CHECK(evaluate(w).part->area_mm2 == Approx(2500));
}

TEST_CASE("A refused plate has an outline and no path; a part that cannot be made says why", "[worksheet][job]") {
    Workbook w = base_plates();
    w.job.thickness = Length{60, mm};
    Worksheet sheet = evaluate(w);
    CHECK(sheet.part->area_mm2 > 0.0);
    CHECK(sheet.part->path.runs.empty());
    CHECK(sheet.mass);
    CHECK_FALSE(sheet.time);
    CHECK_FALSE(sheet.price);
    CHECK(sheet.wear.starts_left.value > 0.0);
    w = base_plates();
    w.job.part.hole_edge = Length{2, mm};
    sheet = evaluate(w);
    REQUIRE(sheet.part->fault);
    CHECK(sheet.part->fault->field.starts_with("job.part."));
    CHECK_FALSE(sheet.mass);
    CHECK_FALSE(sheet.time);
    REQUIRE(find(sheet, "part_not_possible"));
    CHECK(find(sheet, "part_not_possible")->severity == Severity::stop);
    w.job.part.shape = part::Shape::drawing;
    CHECK(evaluate(w).part->fault->field == "job.part.drawing");
}

TEST_CASE("Problems of the part are warned of, each kind once", "[worksheet][job]") {
    Workbook w = base_plates();
    CHECK(evaluate(w).part->problems.empty());
    w.job.part.hole = Length{5, mm}; // in 6 mm plate
    const Worksheet small = evaluate(w);
    CHECK(small.part->problems.size() >= 4);
    REQUIRE(find(small, "small_hole"));
    CHECK(test::said(*find(small, "small_hole")).starts_with("4 places: "));
    CHECK(std::count_if(small.warnings.begin(), small.warnings.end(),
                        [](const Message& x) { return x.code == "small_hole"; }) == 1);
    w.job.thickness = Length{2, mm}; // now the kerf decides: three of them are more than 4.5 mm
    w.job.part.hole = Length{4, mm};
    const Worksheet thin = evaluate(w);
    CHECK_FALSE(find(thin, "small_hole"));
    REQUIRE(find(thin, "hole_below_least"));
    CHECK(test::said(*find(thin, "hole_below_least")).starts_with("4 holes are narrower than "));
}

TEST_CASE("Warnings of time, wear and price", "[worksheet][job]") {
    Workbook w = base_plates();
    CHECK_FALSE(find(evaluate(w), "slow_places"));
    w.shop.table.acceleration = Acceleration{20, mm_s2};
    REQUIRE(find(evaluate(w), "slow_places"));
    CHECK(test::said(*find(evaluate(w), "slow_places")).find("Freeze the height control there") != std::string::npos);
    w.job.torch = TorchHold::hand_standoff; // no table in the hand
    CHECK_FALSE(find(evaluate(w), "slow_places"));

    w = base_plates();
    w.shop.machine.duty_cycle = 0.2;
    w.shop.height_control.touch_off = Duration{0, second};
    w.job.quantity = 200;
    CHECK(find(evaluate(w), "duty_rests"));

    w = base_plates();
    CHECK_FALSE(find(evaluate(w), "consumables_change"));
    w.job.quantity = 100;
    REQUIRE(find(evaluate(w), "consumables_change"));
    CHECK(test::said(*find(evaluate(w), "consumables_change")).find("guess") != std::string::npos);
    w.shop.wear.now = {390, Duration{80, minute}};
    w.shop.wear.sets = {{300, Duration{60, minute}, wear::Ended::worn}};
    REQUIRE(find(evaluate(w), "consumables_due"));
    CHECK(test::said(*find(evaluate(w), "consumables_due")).find("guess") == std::string::npos);

    w = base_plates();
    w.shop.rates.minimum_charge = 5000;
    CHECK(find(evaluate(w), "minimum_charge"));
    w.job.price.outside_quote_each = 0.5;
    CHECK(find(evaluate(w), "buying_costs_less"));
}

TEST_CASE("Gaps and run-offs reach the consumables", "[worksheet][job]") {
    Workbook w = base_plates();
    const Worksheet plain = evaluate(w);
    w.job.gaps_per_m = 40;
    const Worksheet grating = evaluate(w);
    CHECK(grating.time->starts > plain.time->starts + 20);
    CHECK(grating.wear.part_uses.value > 3 * plain.wear.part_uses.value);
    CHECK(grating.price->cost_each.value > plain.price->cost_each.value);
    w.job.gaps_per_m = 0;
    w.job.run_offs = 2;
    CHECK(evaluate(w).wear.part_uses.value > plain.wear.part_uses.value);
}

TEST_CASE("The plate's openings give the restarts, and less metal to pay for", "[worksheet][job]") {
    Workbook w = base_plates();
    const Worksheet plain = evaluate(w);
    CHECK(plain.gaps.per_m == 0);
    CHECK_FALSE(find(plain, "open_plate"));
    w.job.mesh = {
        part::MeshKind::grating, {40, mm}, {30, mm}, {100, mm}, {70, mm}}; // 50 / pi gaps a metre, 52.5 % open
    const Worksheet grating = evaluate(w);
    CHECK(grating.gaps.per_m == Approx(50 / std::numbers::pi));
    CHECK(grating.gaps.basis.physics);
    const int restarts = static_cast<int>(std::floor(grating.time->cut.in(metre)*50 / std::numbers::pi + 0.5));
    CHECK(restarts >= 10);
    CHECK(grating.time->restarts == restarts);
    CHECK(grating.time->starts == plain.time->starts + restarts);
    CHECK((grating.time->piercing.value - plain.time->piercing.value).in(second) ==
          Approx(restarts * plain.settings->pierce_delay->value.in(second)));
    CHECK(grating.wear.part_uses.value > plain.wear.part_uses.value);
    CHECK(grating.mass->in(kg) == Approx(0.475 * plain.mass->in(kg)));
    CHECK(grating.part->sheet.sheet.in(kg) == Approx(0.475 * plain.part->sheet.sheet.in(kg)));
    REQUIRE(find(grating, "open_plate"));
    CHECK(test::said(*find(grating, "open_plate")).find("About 16 times in a meter") != std::string::npos);
    CHECK(test::said(*find(grating, "open_plate")).find("height control") != std::string::npos);
    w.job.torch = TorchHold::hand_drag;
    CHECK(test::said(*find(evaluate(w), "open_plate")).find("height control") == std::string::npos);

    w.job.torch = TorchHold::table;
    w.job.gaps_per_m = 40; // counted: it goes before what the sizes say
    const Worksheet counted = evaluate(w);
    CHECK(counted.gaps.per_m == 40);
    CHECK(counted.gaps.basis.entered);
    CHECK_FALSE(counted.gaps.basis.physics);
    CHECK(counted.mass->in(kg) == grating.mass->in(kg));

    w.job.gaps_per_m = 0;
    w.job.mesh.opening = Length{41, mm};
    const Worksheet wrong = evaluate(w);
    REQUIRE(find(wrong, "mesh_not_possible"));
    CHECK(find(wrong, "mesh_not_possible")->field == "job.mesh.opening_mm");
    CHECK(find(wrong, "mesh_not_possible")->severity == Severity::stop);
    CHECK(wrong.gaps.per_m == 0);
    CHECK(wrong.time->starts == plain.time->starts);
}

TEST_CASE("Logging a changed set", "[worksheet][job]") {
    Workbook w = base_plates();
    CHECK_FALSE(document::log_change(w, wear::Ended::worn)); // a new set
    w.shop.wear.now = {210, Duration{44, minute}};
    const auto logged = document::log_change(w, wear::Ended::pulled);
    REQUIRE(logged);
    const wear::WearLog& log = logged.value().shop.wear;
    REQUIRE(log.sets.size() == 1);
    CHECK(log.sets[0].starts == 210);
    CHECK(log.sets[0].arc == Duration{44, minute});
    CHECK(log.sets[0].ended == wear::Ended::pulled);
    CHECK(log.now.starts == 0);
    CHECK(log.now.arc == Duration{});
    w.shop.wear.sets.resize(200); // as many as the log holds
    CHECK_FALSE(document::log_change(w, wear::Ended::worn));
}

TEST_CASE("Logging a job that is cut", "[worksheet][job]") {
    Workbook w = base_plates();
    w.shop.wear.now = {10, Duration{2, minute}};
    w.job.run_offs = 1;
    const Worksheet sheet = evaluate(w);
    const auto half = document::log_cut(w, sheet, 12);
    REQUIRE(half);
    const auto all = document::log_cut(half.value(), sheet, 12);
    REQUIRE(all);
    const wear::InUse& now = all.value().shop.wear.now;
    CHECK(now.starts == 10 + 24 * (5 + 3)); // a run-off counts as three more
    CHECK(now.arc.in(minute) == Approx(2 + 24 * sheet.time->arc.value.in(minute)));
    CHECK_FALSE(document::log_cut(w, sheet, 0));
    CHECK_FALSE(document::log_cut(w, sheet, 25));
    w.shop.wear.now.starts = 99999;
    const auto full = document::log_cut(w, sheet, 24);
    REQUIRE_FALSE(full);
    CHECK(full.fault().field == "shop.wear.now.starts");
    w.job.thickness = Length{60, mm};
    CHECK_FALSE(document::log_cut(w, evaluate(w), 1));
}

TEST_CASE("The worksheet file has part, time, wear and price, whatever is missing", "[worksheet][job]") {
    Workbook w = base_plates();
    for (const double t : {6.0, 60.0}) {
        w.job.thickness = Length{t, mm};
        const cli::Json top = as_json(w, nullptr);
        const auto holds = [&](std::string_view key, std::initializer_list<std::string_view> wanted) {
            const cli::Json& object = top.at(std::string(key));
            return std::all_of(wanted.begin(), wanted.end(),
                               [&](std::string_view k) { return object.contains(std::string(k)); });
        };
        CHECK(holds("part", {"area_mm2", "mass_kg", "cut_mm", "pierces", "contours", "compensated", "problems"}));
        CHECK(holds("time", {"cutting_s", "piercing_s", "moving_s", "resting_s", "total_s", "starts", "restarts",
                             "slow_share"}));
        CHECK(holds("gaps", {"per_m", "open_share", "basis"}));
        CHECK(holds("wear", {"life_used", "job_uses", "changes", "sets_to_hold", "starts_left"}));
        CHECK(holds("price", {"material", "machine", "labour", "consumables", "energy", "cost_each", "price_each",
                              "price_total", "make_or_buy"}));
    }
}
