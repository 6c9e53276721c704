// What two tabs, or a tab and one that was closed, changed is put together before a person's eyes, and asked where both changed the same.
#include <catch2/catch_test_macros.hpp>

#include "core/store/merge.hpp"
#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

/// Two tabs, of which the second kept a change that the first has not seen; the first then makes its own.
template <class Change>
void meet(Person& one, Person& other, Change change) {
    change(other.app(), true);
    other.hide();
    browser().saves = [](int, std::string_view) { return platform::Saved::answers; };
    change(one.app(), false);
    one.hide();
    one.app().notice("behind", "");
    one.look();
    one.app().notice("kept", "");
}

} // namespace

TEST_CASE("what two tabs changed in different places is put together, and undo takes back the own change alone") {
    browser() = {};
    keep_shop();
    Person one, other;
    meet(one, other, [](App& app, bool first) {
        first ? app.set("job.name", "Bracket", "Part"sv) : app.set("job.quantity", 7, "Pieces"sv);
    });
    const auto& tab = one.app();
    CHECK(tab.book().job.name == "Bracket");
    CHECK(tab.book().job.quantity == 7);
    CHECK_FALSE(tab.clash.has_value());
    CHECK(document::write_workbook(tab.store().theirs()) == document::write_workbook(tab.book()));
    one.app().undo();
    CHECK(tab.book().job.name == "Bracket");
    CHECK(tab.book().job.quantity == 24);
}

TEST_CASE("what two tabs changed in the same place is asked, and both are shown") {
    for (const bool mine : {true, false}) {
        browser() = {};
        keep_shop();
        Person one, other;
        meet(one, other, [](App& app, bool first) { app.set("job.quantity", first ? 7 : 9, "Pieces"sv); });
        CHECK(one.app().book().job.quantity == 7);
        CHECK(one.text().find("The same entry was changed in another tab") != std::string::npos);
        one.touch_id("notice/storage");
        CHECK(one.text().find("The other tab | 7") != std::string::npos);
        CHECK(one.text().find("This tab | 9") != std::string::npos);
        one.touch(mine ? "Use this tab's" : "Use the other tab's");
        CHECK(one.app().book().job.quantity == (mine ? 9 : 7));
        CHECK(one.text().find("changed in another tab") == std::string::npos);
    }
}

TEST_CASE("what a closed page left behind is put together with what was kept since, and what both changed is asked") {
    for (const bool both : {false, true}) {
        browser() = {};
        keep_shop();
        const std::string base = browser().kept[0];
        Workbook closed = document::newest(base, {}).value().workbook;
        closed.job.quantity = 7;
        Person tab;
        both ? tab.app().set("job.quantity", 9, "Pieces"sv) : tab.app().set("job.name", "Bracket", "Part"sv);
        tab.hide();
        tab.app().notice("late", base + '\f' + document::pack_record(document::write_workbook(closed), 2) + '\f' +
                                     browser().kept[0] + '\f' + browser().kept[1]);
        tab.app().notice("other-tab", ""); // the page looks once it is written
        tab.look();
        const Workbook kept = document::newest(browser().kept[0], browser().kept[1]).value().workbook;
        CHECK(kept.job.quantity == 7);
        CHECK((kept.job.name == "Bracket") == !both);
        CHECK(tab.app().book().job.quantity == 7);
        CHECK((tab.text().find("The same entry was changed in another tab") != std::string::npos) == both);
    }
}

TEST_CASE("what a closed page left behind and nobody can read changes nothing") {
    browser() = {};
    keep_shop();
    const std::string record = browser().kept[0];
    Person tab;
    const std::string before = document::write_workbook(tab.app().book());
    for (const std::string& left :
         {std::string("null"), '\f' + record.substr(0, record.size() / 2), std::string("\ftorchside-record ")}) {
        tab.app().notice("late", left);
        tab.look();
        CHECK(document::write_workbook(tab.app().book()) == before);
        CHECK(browser().writes == 0);
    }
}

TEST_CASE("another tab's work waits while a field is typed in, and comes when it is left") {
    browser() = {};
    keep_shop();
    Person one, other;
    one.touch_id("place/quote");
    one.app().open("stock");
    one.look();
    one.touch_id("stock/current");
    REQUIRE(one.app().ui().edit().has_value());
    other.app().set("job.name", "Bracket", "Part"sv);
    other.hide();
    one.app().notice("other-tab", "");
    one.look();
    CHECK(one.app().book().job.name != "Bracket");
    one.back();
    one.look();
    CHECK(one.app().book().job.name == "Bracket");
}
