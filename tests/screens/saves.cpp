// A burst of changes is kept by one write, soon; nothing is older than that when the page is hidden, left or killed.
#include <catch2/catch_test_macros.hpp>

#include <string_view>

#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

Workbook stored() {
    return document::newest(browser().kept[0], browser().kept[1]).value().workbook;
}

void type(Person& person, int pieces) {
    REQUIRE(person.app().set("job.quantity", pieces, "Pieces"sv, App::By::typing));
}

} // namespace

TEST_CASE("a burst of changes is kept by one write, 300 ms after the last") {
    browser() = {};
    keep_shop();
    Person person;
    CHECK_FALSE(browser().keep_at.has_value()); // nothing changed: nothing is asked for
    for (const int pieces : {3, 32, 325}) {
        type(person, pieces);
        person.wait(90);
    }
    person.wait(209); // 299 after the last
    CHECK(browser().writes == 0);
    CHECK(stored().job.quantity == 24);
    person.wait(1);
    CHECK(browser().writes == 1);
    CHECK(stored().job.quantity == 325);
    CHECK_FALSE(browser().keep_at.has_value());
    person.wait(5000);
    person.hide();
    CHECK(browser().writes == 1);
}

TEST_CASE("who goes on typing is kept all the same: nothing waits longer than 600 ms") {
    browser() = {};
    keep_shop();
    Person person;
    int oldest = 0; // for how long the workbook has not been what is kept
    for (int i = 0; i < 50; ++i) {
        type(person, 100 + i);
        person.wait(70);
        oldest = stored().job.quantity == person.app().book().job.quantity ? 0 : oldest + 70;
        CHECK(oldest <= 600);
    }
    CHECK(browser().writes >= 3500 / 600);
    CHECK(browser().writes <= 3500 / 600 + 1);
    person.wait(300);
    CHECK(stored().job.quantity == 149);
}

TEST_CASE("a page that is hidden keeps at once, and not once more later") {
    browser() = {};
    keep_shop();
    Person person;
    type(person, 7);
    person.wait(10);
    person.hide();
    CHECK(browser().writes == 1);
    CHECK(stored().job.quantity == 7);
    person.wait(1000);
    CHECK(browser().writes == 1);
    Person again;
    CHECK(again.app().book().job.quantity == 7);
}

TEST_CASE("undone before it was kept, a change is kept as undone, and redone as redone") {
    browser() = {};
    keep_shop();
    Person person;
    type(person, 7);
    person.wait(100);
    person.app().undo();
    person.wait(300);
    CHECK(browser().writes == 1);
    CHECK(stored().job.quantity == 24);
    person.app().undo();
    person.wait(300);
    CHECK(stored().job.quantity == 7);
}

TEST_CASE("what leaves the page is kept before it goes") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().open("kept");
    person.look();
    type(person, 7);
    person.touch("Save a backup file");
    CHECK(stored().job.quantity == 7);
    person.app().open("send");
    person.look();
    person.hide(); // the number that the quote was given
    type(person, 8);
    person.look();
    person.touch("Copy the link");
    CHECK(stored().job.quantity == 8);
    type(person, 9);
    person.look();
    person.touch("Open the customer's page, to print");
    CHECK(stored().job.quantity == 9);
}

TEST_CASE("two changes of another tab that come before one's own is kept drop nothing") {
    browser() = {};
    keep_shop();
    Person one, other;
    type(one, 7);
    one.wait(50);
    other.app().set("job.name", "Bracket", "Part"sv);
    other.hide();
    one.app().notice("other-tab", "");
    CHECK(one.app().book().job.name == "Bracket");
    CHECK(one.app().book().job.quantity == 7);
    CHECK(stored().job.quantity == 7); // what was put together is kept at once
    other.app().notice("other-tab", "");
    one.app().set("shop.contact", "by the gate", "Contact"sv);
    other.app().set("job.name", "Gusset", "Part"sv);
    other.hide();
    one.app().notice("other-tab", "");
    for (const Workbook& book : {one.app().book(), stored()}) {
        CHECK(book.job.name == "Gusset");
        CHECK(book.job.quantity == 7);
        CHECK(book.shop.contact == "by the gate");
    }
    CHECK_FALSE(one.app().clash.has_value());
    one.wait(1000);
    CHECK(stored().shop.contact == "by the gate");
}

TEST_CASE("a change behind a write under way is left behind by a page that goes, as the record that would follow") {
    browser() = {};
    keep_shop();
    Person person;
    browser().saves = [](int, std::string_view) { return platform::Saved::answers; };
    type(person, 7);
    person.wait(300);
    type(person, 8);
    person.hide();
    const auto left = document::open_record(browser().left.record);
    REQUIRE(left.ok());
    CHECK(left.value().counter == 3);
    CHECK(document::read_workbook(left.value().workbook_json).value().job.quantity == 8);
    person.app().notice("kept", ""); // it lives on: the same record is written, and nothing waits any more
    person.app().notice("kept", "");
    person.hide();
    CHECK(browser().left.record.empty());
}

TEST_CASE("what is so already is no change and is not written") {
    browser() = {};
    keep_shop();
    Person person;
    type(person, 24);
    person.app().set("job.name", std::string_view(person.app().book().job.name), "Part"sv);
    person.wait(1000);
    CHECK(browser().writes == 0);
    CHECK(person.app().change() == nullptr);
}
