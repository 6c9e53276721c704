// A next test that is not where the curve is highest says why; one that is says nothing of it.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <optional>

#include "tests/core/worn_log.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

double off_top(const tune::Outlook& o) {
    const auto less = [](const tune::CurvePoint& a, const tune::CurvePoint& b) { return a.density < b.density; };
    const Speed top = std::max_element(o.curve.begin(), o.curve.end(), less)->feed;
    return std::abs(std::log((o.stop ? o.best : o.next) / top));
}

} // namespace

// 54 states: three stocks, three currents, six logs; and a slow table besides.
TEST_CASE("Cut and Tune show one feed, or Tune says what Cut shows") {
    int same = 0;
    int told = 0;
    const auto look_at = [&](const Workbook& book, int cuts) {
        browser() = {};
        Person person;
        REQUIRE(person.app().take(book, "A book"sv));
        person.touch_id("place/tune");
        for (int i = 0; i < cuts; ++i) {
            person.touch(i % 3 == 0 ? "Too fast" : i % 3 == 1 ? "Too slow" : "Clean");
        }
        const std::string tune = person.node("tune/next")->value;
        const Node* why = person.node("tune/cut");
        const std::string said = why == nullptr ? std::string() : why->name;
        person.touch_id("place/cut");
        std::string cut = person.node("cut/feed")->value;
        cut.resize(cut.find("/min") + 4);
        INFO(book.job.thickness.in(mm) << " mm, " << book.job.current.in(ampere) << " A, " << cuts << " cuts: " << cut
                                       << " on Cut, " << tune << " on Tune; " << said);
        CHECK((tune == cut ? said.empty() : said.starts_with("The Cut tab shows " + cut + ": ")));
        (tune == cut ? same : told) += 1;
    };
    for (const auto& [metal, thickness] :
         {std::pair{Metal::mild_steel, 3.0}, {Metal::stainless, 6.0}, {Metal::aluminium, 3.0}}) {
        for (const double amps : {30.0, 45.0, 65.0}) {
            Workbook book;
            book.job.material = metal;
            book.job.thickness = {thickness, mm};
            book.job.current = {amps, ampere};
            book.shop.machine.max_current = {65, ampere};
            for (int cuts = 0; cuts < 6; ++cuts) {
                look_at(book, cuts);
            }
        }
    }
    CHECK(same > 30);
    CHECK(told > 0);
    Workbook slow;
    slow.job.thickness = {3, mm};
    slow.shop.table.max_feed = {1500, mm_min};
    const int before = same;
    look_at(slow, 0);
    CHECK(same == before + 1); // the table's fastest on both
}

TEST_CASE("a next test off the curve's top says why, one at the top does not") {
    int off = 0;
    int at_top = 0;
    for (const double thickness : {3.0, 6.0, 9.0}) {
        for (const int cuts : {0, 1, 2, 3}) {
            browser() = {};
            Person person;
            Workbook book;
            book.job.thickness = {thickness, mm};
            REQUIRE(person.app().take(book, "A book"sv));
            person.touch_id("place/tune");
            for (int i = 0; i < cuts; ++i) {
                person.touch(i % 2 == 0 ? "Too fast" : "Too slow");
            }
            REQUIRE(person.app().tuning().ok());
            const double away = off_top(person.app().tuning().value().outlook);
            const bool says = person.text().find("The curve peaks at") != std::string::npos;
            INFO(thickness << " mm, " << cuts << " cuts, " << away << " off");
            CHECK(says == (away >= 0.015));
            (says ? off : at_top) += 1;
        }
    }
    CHECK(off > 0);
    CHECK(at_top > 0);
}

TEST_CASE("A worn set: Cut, Tune and the way to the figure tell one story") {
    browser() = {};
    Person person;
    REQUIRE(person.app().take(torchside::test::worn_shop(280), "A book"sv));
    person.touch_id("place/cut");
    CHECK(person.text().find("The set is worn: feed") != std::string::npos);
    const std::string cut = person.node("cut/feed")->value;
    person.touch_id("cut/feed");
    REQUIRE(person.node("trail/new_set") != nullptr);
    CHECK(person.node("trail/new_set")->value != person.node("trail/own")->value);
    CHECK(cut.starts_with(person.node("trail/own")->value.substr(0, 4)));
    person.touch_id("place/tune");
    REQUIRE(person.node("tune/worn") != nullptr);
    CHECK(person.node("tune/worn")->name.starts_with("280 starts on this set: "));
    const Node* why = person.node("tune/cut");
    const std::string next = person.node("tune/next")->value;
    CHECK((cut.starts_with(next) ||
           (why != nullptr && why->name.find(cut.substr(0, cut.find("/min"))) != std::string::npos)));
    REQUIRE(person.app().take(torchside::test::worn_shop(0), "A new set"sv));
    person.look();
    CHECK(person.node("tune/worn") == nullptr);
}

TEST_CASE("the three verdicts stay where they are, whatever a cut makes the page say") {
    for (const float width : {360.0F, 768.0F, 1440.0F}) {
        browser() = {};
        Person person(width, width < 400 ? 740.0F : 1000.0F);
        REQUIRE(person.app().take(Workbook{}, "A book"sv));
        person.touch_id("place/tune");
        std::optional<float> first;
        for (int cut = 0; cut < 8; ++cut) {
            person.touch(cut % 3 == 0 ? "Too fast" : cut % 3 == 1 ? "Too slow" : "Clean");
            const float y = person.node("tune/clean")->place.y;
            INFO(width << " px, after cut " << cut + 1);
            CHECK(y == first.value_or(y));
            first = y;
        }
    }
}
