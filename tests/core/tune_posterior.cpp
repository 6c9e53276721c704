// What the log does to the numbers of a cut.
#include <algorithm>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/posterior.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinRel;

namespace {

const Machine machine;

TestCut judged(double thickness_mm, double feed, Verdict verdict) {
    TestCut cut;
    cut.thickness = Length{thickness_mm, mm};
    cut.feed = Speed{feed, mm_min};
    cut.verdict = verdict;
    return cut;
}

cut::CutSetup plate(double thickness_mm, double current_a = 45, Metal metal = Metal::mild_steel) {
    cut::CutSetup p;
    p.metal = metal;
    p.thickness = Length{thickness_mm, mm};
    p.current = Current{current_a, ampere};
    return p;
}

double value(const std::vector<TestCut>& cuts, const cut::CutSetup& p) {
    return feed(learn(cuts, machine), p).value.in(mm_min);
}

// Of clean cuts, six with a new set and six with a worn one.
std::vector<Speed> feeds_of_wear() {
    std::vector<Speed> feeds;
    for (int i = 0; i < 12; ++i) {
        feeds.emplace_back((i < 6 ? 1600.0 : 1450.0) + 10.0 * i, mm_min);
    }
    return feeds;
}

double width(const Estimate<Speed>& e) {
    return e.high / e.low;
}

} // namespace

TEST_CASE("With no cuts the numbers rest on physics and practice") {
    const Posterior none = learn({}, machine);
    const Estimate<Speed> v = feed(none, plate(6));
    CHECK(v.low.in(mm_min) < 1700);
    CHECK(v.high.in(mm_min) > 1700);
    CHECK(v.value.in(mm_min) > 1300);
    CHECK(v.value.in(mm_min) < 2100);
    CHECK(v.basis.physics);
    CHECK(v.basis.practice);
    CHECK(v.basis.tests == 0);
    const Estimate<Voltage> u = arc(none, plate(6));
    CHECK(u.value.in(volt) > 125);
    CHECK(u.value.in(volt) < 140);
    CHECK(none.notes.empty());
}

TEST_CASE("A verdict moves the feed the way it points and narrows the band") {
    const Posterior none = learn({}, machine);
    const double before = feed(none, plate(6)).value.in(mm_min);
    CHECK(value({judged(6, before, Verdict::too_fast)}, plate(6)) < before);
    CHECK(value({judged(6, before, Verdict::too_slow)}, plate(6)) > before);
    const std::vector<TestCut> clean{judged(6, before, Verdict::clean)};
    CHECK_THAT(value(clean, plate(6)), WithinRel(before, 0.01));
    CHECK(width(feed(learn(clean, machine), plate(6))) < 1.25);
    CHECK(width(feed(none, plate(6))) > 1.8);
    CHECK(feed(learn(clean, machine), plate(6)).basis.tests == 1);
}

TEST_CASE("A cut bears on other thicknesses, currents and metals, less the further they are") {
    const double before = value({}, plate(6));
    const std::vector<TestCut> cuts{judged(6, 1.3 * before, Verdict::clean)};
    const auto moved = [&](const cut::CutSetup& p) { return value(cuts, p) / value({}, p); };
    CHECK(moved(plate(6)) > moved(plate(8)));
    CHECK(moved(plate(8)) > moved(plate(6, 45, Metal::stainless)));
    CHECK(moved(plate(6, 45, Metal::stainless)) > 1.1);
    CHECK_THAT(moved(plate(6, 45, Metal::galvanised)), WithinRel(moved(plate(6)), 1e-12));
    const Posterior p = learn(cuts, machine);
    CHECK(width(feed(p, plate(6))) < width(feed(p, plate(6, 30))));
}

TEST_CASE("The order of rows does not matter, and a row taken out leaves nothing behind") {
    std::vector<TestCut> cuts;
    for (int i = 0; i < 12; ++i) {
        TestCut cut = judged(3 + i % 4, 900 + 150 * i, static_cast<Verdict>(i % 3));
        cut.kerf_top = Length{1.4 + 0.02 * i, mm};
        cut.arc = Voltage{125.0 + i, volt};
        cut.pierce_delay = Duration{0.3 + 0.05 * i, second};
        cut.pierce = static_cast<PierceVerdict>(i % 3);
        cuts.push_back(cut);
    }
    const auto numbers = [](const std::vector<TestCut>& rows) {
        const Posterior p = learn(rows, machine);
        std::vector<double> all;
        for (const double t : {3.0, 5.0, 9.0}) {
            all.insert(all.end(), {feed(p, plate(t)).value.in(mm_min), feed(p, plate(t)).low.in(mm_min),
                                   kerf(p, plate(t)).value.in(mm), arc(p, plate(t)).value.in(volt),
                                   pierce_delay(p, plate(t)).value.in(second)});
        }
        return all;
    };
    const std::vector<double> before = numbers(cuts);
    std::vector<TestCut> turned = cuts;
    std::reverse(turned.begin(), turned.end());
    std::rotate(turned.begin(), turned.begin() + 5, turned.end());
    CHECK(numbers(turned) == before);
    std::vector<TestCut> more = cuts;
    more.insert(more.begin() + 4, judged(6, 1900, Verdict::too_slow));
    CHECK(numbers(more) != before);
    more.erase(more.begin() + 4);
    CHECK(numbers(more) == before);
}

TEST_CASE("Worn rows are kept but do not teach") {
    TestCut worn = judged(6, 2000, Verdict::clean);
    worn.worn = true;
    const Posterior p = learn(std::vector{worn}, machine);
    CHECK(feed(p, plate(6)).value == feed(learn({}, machine), plate(6)).value);
    REQUIRE(p.notes.size() == 1);
    CHECK(p.notes[0].why == RowNote::Why::worn);
    CHECK(p.notes[0].text != Word{});
}

TEST_CASE("A row without a count of starts was cut with the set of the row before it") {
    std::vector<TestCut> all;
    for (const Speed v : feeds_of_wear()) {
        TestCut cut = judged(6, v.in(mm_min), Verdict::clean);
        cut.starts = all.size() < 6 ? 20 : 280;
        all.push_back(cut);
    }
    std::vector<TestCut> some = all;
    for (const std::size_t blank : {0U, 1U, 4U, 7U, 8U, 11U}) {
        some[blank].starts.reset();
    }
    for (const double used : {0.0, 0.9}) {
        Posterior counted = learn(all, machine), left_out = learn(some, machine);
        counted.used = left_out.used = used;
        CHECK(feed(left_out, plate(6)).value == feed(counted, plate(6)).value);
        CHECK(feed(left_out, plate(6)).high == feed(counted, plate(6)).high);
    }
}
