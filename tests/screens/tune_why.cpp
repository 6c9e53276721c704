// A next test that is not where the curve is highest says why; one that is says nothing of it.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "tests/screens/person.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

double off_top(const tune::Outlook& o) {
    const auto less = [](const tune::CurvePoint& a, const tune::CurvePoint& b) { return a.density < b.density; };
    const Speed top = std::max_element(o.curve.begin(), o.curve.end(), less)->feed;
    return std::abs(std::log((o.stop ? o.best : o.next) / top));
}

} // namespace

TEST_CASE("a next test off the curve's top says why, one at the top does not") {
    int off = 0;
    int at_top = 0;
    for (const double thickness : {3.0, 6.0, 9.0}) {
        for (const int cuts : {0, 1, 2, 3}) {
            browser() = {};
            Person person;
            Workbook book;
            book.job.thickness = {thickness, mm};
            REQUIRE(person.app().take(book, "A book"));
            person.touch_id("place/tune");
            for (int i = 0; i < cuts; ++i) {
                person.touch(i % 2 == 0 ? "Too fast" : "Too slow");
            }
            REQUIRE(person.app().tuning().ok());
            const double away = off_top(person.app().tuning().value().outlook);
            const bool says = person.text().find("The curve is highest at") != std::string::npos;
            INFO(thickness << " mm, " << cuts << " cuts, " << away << " off");
            CHECK(says == (away >= 0.015));
            (says ? off : at_top) += 1;
        }
    }
    CHECK(off > 0);
    CHECK(at_top > 0);
}
