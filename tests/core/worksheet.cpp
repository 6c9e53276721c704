// The worksheet of the default shop and of shops changed one thing at a time.
#include <algorithm>
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/worksheet/chart.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/core/said.hpp"

using namespace torchside;

namespace {

Workbook job(double t_mm, double i_a, Metal metal = Metal::mild_steel) {
    Workbook w;
    w.job.material = metal;
    w.job.thickness = Length{t_mm, mm};
    w.job.current = Current{i_a, ampere};
    return w;
}

const Message* find(const Worksheet& sheet, std::string_view code) {
    for (const Message& warning : sheet.warnings) {
        if (warning.code == code) {
            return &warning;
        }
    }
    return nullptr;
}

bool has(const Worksheet& sheet, std::string_view code, Severity severity) {
    const Message* warning = find(sheet, code);
    return warning && warning->severity == severity;
}

} // namespace

TEST_CASE("A tip that rides on the plate is cut with at no height") {
    Workbook w;
    w.job.thickness = Length{2, mm};
    w.job.current = Current{30, ampere};
    w.job.torch = TorchHold::hand_drag;
    CHECK(evaluate(w).settings->cut_height.value == Length{});
    w.job.current = Current{45, ampere}; // too much to drag: a standoff guide
    CHECK(evaluate(w).settings->cut_height.value > Length{1, mm});
}

TEST_CASE("A shop whose nozzles are all too large for its machine is told so") {
    Workbook w;
    w.shop.machine.max_current = Current{30, ampere};
    w.shop.machine.nozzles = {{Current{100, ampere}, {}}};
    w.job.current = Current{30, ampere};
    int told = 0;
    for (double t = 4.0; t < 12.0; t += 0.25) {
        w.job.thickness = Length{t, mm};
        const cut::Capacity c = evaluate(w).capacity;
        CHECK(test::said(c.reason).find("large enough") == std::string::npos);
        told += test::said(c.reason).find("too large for this machine's 30 A") != std::string::npos ? 1 : 0;
        CHECK((c.suggested_current || test::said(c.reason).find("smallest here") == std::string::npos));
    }
    CHECK(told > 0);
}

TEST_CASE("The highest current that a circuit holds holds when it is set, last digit and all") {
    Workbook w;
    w.shop.circuit.line = Voltage{240, volt};
    w.shop.circuit.breaker = Current{32, ampere};
    w.shop.circuit.breaker_rule = supply::BreakerRule::iec60898b;
    w.shop.circuit.run_awg = 8;
    w.shop.circuit.run = Length{100, metre};
    w.shop.circuit.cord_awg = 6;
    w.shop.circuit.cord = Length{15, metre};
    w.shop.circuit.generator = ApparentPower{8000, volt_ampere};
    w.shop.machine.efficiency = 0.85;
    w.shop.machine.power_factor = 0.95;
    for (const double thickness : {2.0, 6.0, 10.0}) {
        w.job.thickness = Length{thickness, mm};
        w.job.current = Current{45, ampere};
        const auto highest = evaluate(w).circuit.highest_current;
        REQUIRE(highest);
        w.job.current = *highest;
        CAPTURE(thickness, highest->in(ampere));
        CHECK(evaluate(w).circuit.verdict == supply::CircuitVerdict::holds);
    }
}

TEST_CASE("6 mm mild steel at 45 A in the default shop", "[worksheet]") {
    const Worksheet sheet = evaluate(Workbook{});
    REQUIRE(sheet.settings);
    const cut::Settings& s = *sheet.settings;
    // Common practice, no source: about 1700 mm/min; 125..140 V at the torch.
    CHECK(s.feed.value >= Speed{1300, mm_min});
    CHECK(s.feed.value <= Speed{2100, mm_min});
    CHECK(s.feed.low <= Speed{1700, mm_min});
    CHECK(s.feed.high >= Speed{1700, mm_min});
    CHECK(s.arc.value >= Voltage{125, volt});
    CHECK(s.arc.value <= Voltage{140, volt});
    CHECK(s.controller == s.arc.value); // a raw tap
    CHECK_FALSE(s.feed_capped);
    CHECK(s.feed.basis.physics);
    CHECK(s.feed.basis.practice);
    CHECK(s.feed.basis.tests == 0);
    REQUIRE(s.pierce_delay);
    CHECK(s.pierce_delay->value > Duration{0.2, second});
    CHECK(s.pierce_delay->value < Duration{1.0, second});
    CHECK(sheet.capacity.verdict == cut::Reach::clean);
    CHECK(sheet.capacity.suggested_current == Current{45, ampere});
    REQUIRE(sheet.by_hand);
    CHECK(sheet.by_hand->per_100_mm / travel_time(Length{100, mm}, s.feed.value) == 1.0);
    REQUIRE(sheet.trail);
    CHECK(sheet.trail->own.value == s.feed.value);
}

TEST_CASE("12.7 mm at 50 A is within reach, 40 mm is refused with a reason", "[worksheet]") {
    const Worksheet half_inch = evaluate(job(12.7, 50));
    CHECK(half_inch.capacity.sever > Length{12.7, mm});
    CHECK(half_inch.settings);
    CHECK(half_inch.capacity.verdict <= cut::Reach::sever);

    const Worksheet thick = evaluate(job(40, 50));
    CHECK(thick.capacity.verdict == cut::Reach::refused);
    CHECK_FALSE(thick.settings);
    CHECK_FALSE(thick.by_hand);
    CHECK_FALSE(thick.trail);
    REQUIRE(has(thick, "plate_refused", Severity::stop));
    CHECK(std::string(thick.warnings.front().code) == "plate_refused");
    CHECK(test::said(thick.warnings.front().detail).ends_with("This plate is 40 mm."));
    CHECK_FALSE(thick.capacity.reason.empty());
}

TEST_CASE("The three limits at 45 and 50 A are apart and plausible", "[worksheet]") {
    for (const double i_a : {45.0, 50.0}) {
        const cut::Capacity c = evaluate(job(6, i_a)).capacity;
        CHECK((c.clean > Length{10, mm} && c.clean < Length{15, mm}));
        CHECK((c.pierce > Length{8, mm} && c.pierce < Length{11.5, mm}));
        CHECK((c.sever > Length{17, mm} && c.sever < Length{24, mm}));
    }
}

TEST_CASE("Each plate warning has its case", "[worksheet]") {
    CHECK(has(evaluate(job(11, 45)), "plate_edge_start", Severity::caution));
    CHECK_FALSE(evaluate(job(11, 45)).settings->pierce_delay);
    CHECK(has(evaluate(job(16, 45)), "plate_sever_only", Severity::caution));
    CHECK(has(evaluate(job(0.8, 20)), "thin_sheet_unreliable", Severity::caution));
    CHECK_FALSE(find(evaluate(job(1, 20)), "thin_sheet_unreliable"));
    CHECK(has(evaluate(job(6, 50)), "nozzle_over_rating", Severity::caution));
    CHECK_FALSE(find(evaluate(job(6, 45)), "nozzle_over_rating"));
    CHECK(has(evaluate(job(6, 55)), "current_above_machine", Severity::stop));
    CHECK(has(evaluate(job(2, 15)), "current_below_machine", Severity::caution));
    CHECK(has(evaluate(job(1.5, 45)), "feed_capped", Severity::note));
    CHECK(has(evaluate(job(1, 45)), "feed_capped", Severity::caution));

    Workbook large = job(21, 100);
    large.shop.machine.max_current = Current{100, ampere};
    large.shop.machine.nozzles = {{Current{100, ampere}, {}}};
    CHECK(has(evaluate(large), "capacity_optimistic", Severity::caution));
    CHECK(has(evaluate(large), "plate_sever_only", Severity::caution));
    tune::TestCut proof;
    proof.thickness = Length{22, mm};
    proof.current = Current{100, ampere};
    proof.feed = Speed{600, mm_min};
    proof.verdict = tune::Verdict::clean;
    large.shop.tests = {proof};
    CHECK_FALSE(find(evaluate(large), "capacity_optimistic"));
    CHECK(evaluate(large).capacity.verdict <= cut::Reach::edge_start);

    Workbook odd = job(6, 45);
    odd.shop.machine.nozzles = {{Current{45, ampere}, Length{2.5, mm}}};
    CHECK(has(evaluate(odd), "nozzle_bore_doubtful", Severity::note));
}

TEST_CASE("The table holds the feed down and says so", "[worksheet]") {
    Workbook w = job(6, 45);
    w.shop.table.max_feed = Speed{1000, mm_min};
    const Worksheet sheet = evaluate(w);
    CHECK(sheet.settings->feed.value == Speed{1000, mm_min});
    CHECK(sheet.settings->feed.high == Speed{1000, mm_min});
    CHECK(sheet.settings->feed_capped);
    CHECK(has(sheet, "feed_capped", Severity::caution));
    // A hand is no table.
    CHECK(sheet.by_hand->per_100_mm < travel_time(Length{100, mm}, Speed{1300, mm_min}));
    w.job.torch = TorchHold::hand_standoff;
    CHECK_FALSE(find(evaluate(w), "feed_capped"));
}

TEST_CASE("The height control's input", "[worksheet]") {
    Workbook w = job(6, 45);
    CHECK(has(evaluate(w), "raw_tap", Severity::caution));
    w.shop.height_control.divider_ratio = 50;
    const Worksheet divided = evaluate(w);
    CHECK_FALSE(find(divided, "raw_tap"));
    CHECK(divided.settings->controller.in(volt)*50.0 == divided.settings->arc.value.in(volt));
    w.shop.height_control.input_limit = Voltage{2, volt};
    CHECK(has(evaluate(w), "height_input_over_limit", Severity::stop));
    w.job.torch = TorchHold::hand_drag; // no height control in the hand
    CHECK_FALSE(find(evaluate(w), "height_input_over_limit"));
}

TEST_CASE("Circuit, air and metal speak up", "[worksheet]") {
    Workbook w = job(6, 45);
    w.shop.circuit.line = Voltage{120, volt};
    w.shop.circuit.breaker = Current{20, ampere};
    const Worksheet weak = evaluate(w);
    CHECK(std::any_of(weak.warnings.begin(), weak.warnings.end(),
                      [](const Message& x) { return x.code.starts_with("circuit_") && x.severity == Severity::stop; }));
    w = job(6, 45);
    w.shop.air.cut_out = Pressure{3, bar};
    w.shop.air.cut_in = Pressure{2, bar};
    CHECK(has(evaluate(w), "air_pressure", Severity::stop));
    CHECK(has(evaluate(job(1.5, 45, Metal::galvanised)), "zinc_fume", Severity::caution));
    CHECK(has(evaluate(job(3, 45, Metal::stainless)), "chromium_fume", Severity::caution));
    CHECK(has(evaluate(job(3, 45, Metal::aluminium)), "hydrogen", Severity::caution));
    CHECK(has(evaluate(job(2, 45, Metal::copper)), "copper_fume", Severity::caution));
}

TEST_CASE("Warnings come worst first, each with a field and a sentence", "[worksheet]") {
    for (const double t_mm : {0.5, 1.0, 6.0, 12.0, 18.0, 40.0}) {
        for (const Metal metal : all_metals) {
            for (const double i_a : {15.0, 45.0, 60.0}) {
                const Worksheet sheet = evaluate(job(t_mm, i_a, metal));
                CHECK(std::is_sorted(sheet.warnings.begin(), sheet.warnings.end(),
                                     [](const Message& a, const Message& b) { return a.severity > b.severity; }));
                for (const Message& x : sheet.warnings) {
                    const std::string text = test::said(x);
                    CAPTURE(std::string(x.code), text);
                    CHECK_FALSE(x.field.empty());
                    CHECK_FALSE(x.title.empty());
                    CHECK(text.back() == '.');
                    CHECK(text.find("..") == std::string::npos);
                }
            }
        }
    }
}

TEST_CASE("Galvanised takes the settings of mild steel", "[worksheet]") {
    const Worksheet zinc = evaluate(job(3, 45, Metal::galvanised)), plain = evaluate(job(3, 45));
    CHECK(zinc.settings->feed.value == plain.settings->feed.value);
    CHECK(zinc.settings->pierce_delay->value == plain.settings->pierce_delay->value);
}

TEST_CASE("Own cuts move the feed, and the basis says how many", "[worksheet]") {
    Workbook w = job(6, 45);
    const Speed before = evaluate(w).settings->feed.value;
    for (const double feed : {1000.0, 1020.0}) {
        tune::TestCut cut;
        cut.feed = Speed{feed, mm_min};
        cut.verdict = tune::Verdict::clean;
        w.shop.tests.push_back(cut);
    }
    const Worksheet after = evaluate(w);
    CHECK(after.settings->feed.value < before);
    CHECK(after.settings->feed.value > Speed{900, mm_min});
    CHECK(after.settings->feed.value < Speed{1130, mm_min});
    CHECK(after.settings->feed.basis.tests == 2);
    CHECK(after.capacity.clean < evaluate(job(6, 45)).capacity.clean);
}

TEST_CASE("A nozzle whose bore is not known is one bore, whatever the current", "[worksheet]") {
    Workbook w = job(3, 30);
    w.shop.machine.nozzles = {{Current{45, ampere}, {}}};
    Workbook given = w;
    given.shop.machine.nozzles = {
        {Current{45, ampere}, cut::bore(Nozzle{Current{45, ampere}, {}}, cut::small_air_torch(Metal::mild_steel))}};
    CHECK(evaluate(w).settings->feed.value == evaluate(given).settings->feed.value);
    CHECK(evaluate(w).settings->kerf.value == evaluate(given).settings->kerf.value);
}
