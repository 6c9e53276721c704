// Feeds are asked for the set of consumables as it is worn now, and everything says the same.
#include <algorithm>
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/worksheet/chart.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/set_wear.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/core/said.hpp"
#include "tests/core/worn_log.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

const Message* slows(const Worksheet& sheet) {
    const auto at = std::find_if(sheet.warnings.begin(), sheet.warnings.end(),
                                 [](const Message& m) { return m.code == "set_slows"; });
    return at == sheet.warnings.end() ? nullptr : &*at;
}

} // namespace

TEST_CASE("A worn set is asked for less feed, where the log has seen that") {
    const Workbook fresh = test::worn_shop(0), worn = test::worn_shop(280);
    const Worksheet now = evaluate(worn), before = evaluate(fresh);
    const double share = now.settings->feed.value / before.settings->feed.value;
    CHECK(share < 0.93); // 0.9 of a new set's by its end
    CHECK(share > 0.88);
    CHECK(now.trail->new_set.value == before.settings->feed.value);
    CHECK(now.trail->for_wear() == Approx(share - 1.0));
    CHECK(before.trail->for_wear() == 0.0);
    CHECK(before.trail->new_set.value == before.trail->own.value);
}

TEST_CASE("Worksheet, chart, next test and coupon speak of the same set") {
    for (const int starts : {0, 150, 280, 5000}) {
        const Workbook book = test::worn_shop(starts);
        const Worksheet sheet = evaluate(book);
        const Length rows[] = {book.job.thickness};
        const Chart sheet_chart = chart(book.shop, book.job.material, rows);
        for (std::size_t c = 0; c < sheet_chart.columns.size(); ++c) {
            if (sheet_chart.columns[c].current == book.job.current) {
                CHECK(sheet_chart.at(0, c).settings->feed.value == sheet.settings->feed.value);
            }
        }
        const Outcome<Tuning> next = tuning(book);
        CHECK(next.value().outlook.feed.value == sheet.settings->feed.value);
        CHECK(std::abs(std::log(next.value().outlook.best / sheet.settings->feed.value)) < 0.03);
    }
    // Past two usual sets nothing more is taken off.
    CHECK(evaluate(test::worn_shop(600)).settings->feed.value == evaluate(test::worn_shop(5000)).settings->feed.value);
}

TEST_CASE("What the wear takes off is said where it shows, and only there") {
    const Worksheet fresh = evaluate(test::worn_shop(0)), hardly = evaluate(test::worn_shop(10)),
                    worn = evaluate(test::worn_shop(280));
    CHECK(slows(fresh) == nullptr);
    CHECK(slows(hardly) == nullptr);
    const Message* said = slows(worn);
    REQUIRE(said != nullptr);
    CHECK(said->severity == Severity::note);
    CHECK(test::said(said->detail).find("280 starts") != std::string::npos);
    Workbook table = test::worn_shop(280);
    table.shop.table.max_feed = Speed{900, mm_min}; // slower than either
    const Worksheet slow_table = evaluate(table);
    CHECK(slows(slow_table) == nullptr);
    Workbook uncounted = test::worn_shop(280);
    for (tune::TestCut& cut : uncounted.shop.tests) {
        cut.starts.reset();
    }
    const Worksheet not_told = evaluate(uncounted);
    CHECK(slows(not_told) == nullptr); // nothing in the log tells a worn set from a new one
}

TEST_CASE("A counter that goes up asks the same fit again") {
    const Workbook worn = test::worn_shop(280);
    const ShopModel before{test::worn_shop(0).shop};
    CHECK_FALSE(before.holds_for(worn.shop));
    const ShopModel now = before.fitted_to(worn.shop);
    CHECK(now.holds_for(worn.shop));
    CHECK(evaluate(worn, nullptr, before).settings->feed.value == evaluate(worn).settings->feed.value);
}

TEST_CASE("A new row has the count of the set in use, 0 of a new one; none where no starts are counted") {
    Shop shop;
    CHECK_FALSE(starts_now(shop).has_value());
    shop.wear.sets.push_back({0, Duration{60, minute}, wear::Ended::worn}); // by its minutes alone
    CHECK_FALSE(starts_now(shop).has_value());
    shop.wear.now.starts = 12;
    CHECK(starts_now(shop) == 12.0);
    shop.wear.sets.push_back({300, Duration{60, minute}, wear::Ended::worn});
    shop.wear.now.starts = 0;
    CHECK(starts_now(shop) == 0.0);
}
