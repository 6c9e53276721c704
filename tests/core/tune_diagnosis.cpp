// Reading a cut: one knob at a time, the right way, in the machine's units.
#include <cmath>
#include <initializer_list>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/diagnosis.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinAbs;

namespace {

const Machine machine;
const HeightControl control{.divider_ratio = 50, .input_limit = Voltage{10, volt}, .gradient = {}};
const Table table;

struct Fixture {
    MadeCut made{};
    MeasuredCut measured{};
    std::vector<TestCut> log{};

    Fixture() {
        made.plate.thickness = Length{6, mm};
        made.plate.current = Current{45, ampere};
        made.feed = Speed{1400, mm_min};
    }
    Outcome<CutDiagnosis> read(std::initializer_list<Sign> marks) const {
        Signs signs;
        for (const Sign s : marks) {
            signs.mark(s);
        }
        return read_cut(signs, measured, made, {machine, control, table, log});
    }
};

} // namespace

TEST_CASE("Feed signs: which way, and logged as a verdict") {
    const Fixture f;
    const CutDiagnosis slow = f.read({Sign::dross_easy, Sign::sparks_below}).value();
    CHECK(slow.advice.cause == Cause::too_slow);
    CHECK(slow.advice.knob == Knob::feed);
    CHECK(slow.advice.feed_to.value() > f.made.feed);
    CHECK(slow.row.verdict == Verdict::too_slow);
    CHECK(slow.row.feed == f.made.feed);
    const CutDiagnosis fast = f.read({Sign::dross_hard, Sign::lag_long}).value();
    CHECK(fast.advice.cause == Cause::too_fast);
    CHECK(fast.advice.feed_to.value() < f.made.feed);
    CHECK(fast.row.verdict == Verdict::too_fast);
    const CutDiagnosis through = f.read({Sign::sparks_back}).value();
    CHECK(through.advice.cause == Cause::too_fast);
    const CutDiagnosis good = f.read({Sign::dross_none, Sign::sparks_below, Sign::square}).value();
    CHECK(good.advice.cause == Cause::right);
    CHECK(good.advice.knob == Knob::none);
    CHECK(good.row.verdict == Verdict::clean);
    CHECK(good.advice.why != Word{});
}

TEST_CASE("Dross at corners only is not the feed's fault") {
    const CutDiagnosis r = Fixture().read({Sign::dross_easy, Sign::corners_only}).value();
    CHECK(r.advice.cause == Cause::corners);
    CHECK(r.advice.knob == Knob::corner_speed);
    CHECK_FALSE(r.advice.feed_to);
    CHECK(r.row.verdict == Verdict::clean);
}

TEST_CASE("Taper of both faces is height, of one face tilt or swirl") {
    Fixture f;
    const CutDiagnosis both = f.read({Sign::narrow_top_both, Sign::dross_none, Sign::top_rounded}).value();
    CHECK(both.advice.cause == Cause::too_high);
    CHECK_THAT(both.advice.height_by.value().in(mm), WithinAbs(-0.3, 1e-12));
    CHECK_THAT(both.advice.arc_by.value().in(volt), WithinAbs(-0.3 * 5, 1e-9));
    CHECK_THAT(both.advice.controller_by.value().in(volt), WithinAbs(-0.3 * 5 / 50, 1e-9));
    CHECK(both.row.verdict == Verdict::clean);
    const CutDiagnosis one = f.read({Sign::narrow_top_one, Sign::dross_none}).value();
    CHECK(one.advice.cause == Cause::leaning);
    CHECK(one.advice.knob == Knob::direction);
    f.measured.left_deg = 4;
    f.measured.right_deg = 0;
    const CutDiagnosis measured = f.read({Sign::dross_none}).value();
    CHECK(measured.advice.cause == Cause::leaning);
    CHECK(measured.advice.knob == Knob::tilt);
    CHECK_THAT(measured.advice.tilt_by_deg.value(), WithinAbs(-2, 1e-12));
    f.measured.left_deg = 0;
    f.measured.right_deg = 4; // the other way round: the top goes to the left of travel
    CHECK_THAT(f.read({Sign::dross_none}).value().advice.tilt_by_deg.value(), WithinAbs(2, 1e-12));
}

TEST_CASE("A measured taper gives the step of the height, the angle and the range") {
    Fixture f;
    f.measured.kerf_top = Length{1.8, mm};
    f.measured.kerf_bottom = Length{1.4, mm};
    const CutDiagnosis r = f.read({Sign::dross_none, Sign::sparks_below}).value();
    CHECK(r.advice.cause == Cause::too_high);
    CHECK_THAT(r.advice.height_by.value().in(mm), WithinAbs(-0.5, 1e-12)); // 1.27 asked, one step is 0.5
    REQUIRE(r.squareness);
    CHECK_THAT(r.squareness->angle_deg, WithinAbs(1.909, 5e-4));
    CHECK_THAT(r.squareness->u.in(mm), WithinAbs(0.18, 0.001)); // (6 - 2 x 0.3) tan 1.909
    CHECK(r.squareness->range == 2);
    CHECK_THAT(r.squareness->limit.value().in(mm), WithinAbs(0.192, 1e-9));
    CHECK(r.row.kerf_top == f.measured.kerf_top);
    f.made.plate.height = Length{0.9, mm};
    CHECK_THAT(f.read({Sign::dross_none, Sign::sparks_below}).value().advice.height_by.value().in(mm),
               WithinAbs(-0.1, 1e-9));
}

TEST_CASE("Uneven all around is a worn nozzle, and such a cut does not teach") {
    const CutDiagnosis r = Fixture().read({Sign::uneven_round}).value();
    CHECK(r.advice.cause == Cause::worn);
    CHECK(r.advice.knob == Knob::consumables);
    CHECK(r.row.worn);
}

TEST_CASE("Near the limit some dross is unavoidable; far from it the same signs are not excused") {
    Fixture f;
    f.made.plate.thickness = Length{12, mm};
    f.made.feed = Speed{500, mm_min};
    const CutDiagnosis thick = f.read({Sign::dross_easy, Sign::lag_long, Sign::sparks_below}).value();
    CHECK(thick.advice.cause == Cause::near_limit);
    CHECK(thick.advice.knob == Knob::none);
    f.made.plate.thickness = Length{3, mm};
    CHECK(f.read({Sign::dross_easy, Sign::lag_long, Sign::sparks_below}).value().advice.cause != Cause::near_limit);
}

TEST_CASE("A weak sign turns no knob and logs no verdict") {
    const CutDiagnosis r = Fixture().read({Sign::lag_good}).value();
    CHECK(r.advice.chance < 0.4);
    CHECK(r.advice.knob == Knob::none);
    CHECK_FALSE(r.row.verdict);
    double sum = 0;
    for (const double c : r.causes) {
        sum += c;
    }
    CHECK_THAT(sum, WithinAbs(1, 1e-12));
}

TEST_CASE("What cannot be is refused by name") {
    Fixture f;
    CHECK(f.read({}).fault().field == "signs");
    const Fault both = f.read({Sign::dross_none, Sign::dross_hard}).fault();
    CHECK(both.field == "signs");
    CHECK(test::said(both.text).find("No dross") != std::string::npos);
    CHECK(test::said(both.text).find("Dross, must be ground off") != std::string::npos);
    f.measured.kerf_top = Length{0, mm};
    CHECK(f.read({Sign::square}).fault().field == "kerf_mm");
    f.measured.kerf_top.reset();
    f.measured.left_deg = 80;
    CHECK(f.read({Sign::square}).fault().field == "angle_deg");
    f.measured.left_deg = 2; // one face alone, with a sign and without
    CHECK(test::said(f.read({Sign::dross_none}).fault().text).find("the other face") != std::string::npos);
    CHECK(f.read({}).fault().field == "angle_deg");
    f.measured.right_deg = 44;
    CHECK(f.read({}).ok());
    f.measured.right_deg = -45;
    CHECK(test::said(f.read({}).fault().text).find("−45 to 45°") != std::string::npos);
    f.measured.right_deg.reset();
    f.measured.left_deg.reset();
    f.made.feed = Speed{0, mm_min};
    CHECK(f.read({Sign::square}).fault().field == "feed_mm_min");
    f.made.feed = Speed{1000, mm_min};
    f.made.plate.thickness = Length{500, mm};
    CHECK(f.read({Sign::square}).fault().field == "job.thickness_mm");
}

TEST_CASE("Every sign has its words, and some cause that it speaks for") {
    for (std::size_t i = 0; i < sign_count; ++i) {
        const auto sign = static_cast<Sign>(i);
        CHECK_FALSE(test::said(tune::name(sign)).empty());
        const auto before = causes({}, false).value();
        const auto after = causes(Signs().mark(sign), false).value();
        double most = 0;
        for (std::size_t c = 0; c < cause_count; ++c) {
            most = std::fmax(most, after[c] / before[c]);
        }
        CHECK(most > 1.2);
    }
}
