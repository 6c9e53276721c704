// Work that cannot be read is never replaced without the user's word; what is refused is said before the first edit.
#include <catch2/catch_test_macros.hpp>

#include <string>

#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

std::string with_unknown_key(unsigned counter) {
    Workbook book;
    book.job.name = "Bracket";
    std::string json = document::write_workbook(book);
    json.insert(json.find("\"shop\""), "\"colour\": 3,\n  ");
    return document::pack_record(json, counter);
}

bool says(const Person& person, const char* words) {
    return person.text().find(words) != std::string::npos;
}

} // namespace

TEST_CASE("edits on an empty sheet over unreadable work are not kept over it") {
    for (const std::string& bytes :
         {std::string("no record"), with_unknown_key(8), document::pack_record("{\"torchside\": 99}", 8)}) {
        browser() = {};
        browser().kept = {{0, bytes}, {1, bytes}};
        Person person;
        person.app().set("job.quantity", 9, "Pieces"sv);
        person.look();
        person.hide();
        CHECK(browser().kept[0] == bytes);
        CHECK(browser().kept[1] == bytes);
        const bool newer = bytes.find("{\"torchside\": 99}") != std::string::npos;
        CHECK(says(person, newer ? "from a newer Torchside and is left alone" : "can't be read"));
        CHECK_FALSE(says(person, "shown, not overwritten"));
        person.touch_id("notice/storage");
        person.touch("Save what is there as a file");
        REQUIRE(browser().downloaded.size() == 1);
        CHECK(browser().downloaded[0].text == bytes + bytes);
        CHECK((person.named("Start without it") == nullptr) == newer);
    }
}

TEST_CASE("what can be read of it is shown, taken over, kept as the newest, and comes back") {
    browser() = {};
    browser().kept = {{0, with_unknown_key(8)}, {1, with_unknown_key(7)}};
    {
        Person person;
        person.touch_id("notice/storage");
        person.touch("See what can be read");
        CHECK(says(person, "1 entry could not be read"));
        CHECK(browser().kept[1] == with_unknown_key(7));
        person.touch("Use what was read");
        CHECK(person.app().book().job.name == "Bracket");
        CHECK_FALSE(says(person, "can't be read"));
        person.hide();
    }
    Person again;
    CHECK(again.app().book().job.name == "Bracket");
    CHECK_FALSE(says(again, "can't be read"));
}

TEST_CASE("starting without it asks once more, and then keeps") {
    browser() = {};
    browser().kept = {{0, "no record"}, {1, "nor this"}};
    Person person;
    person.touch_id("notice/storage");
    person.touch("Start without it");
    CHECK(browser().kept[0] == "no record");
    person.touch("Leave it as it is");
    CHECK(person.named("Replace it") == nullptr);
    person.touch("Start without it");
    person.touch("Replace it");
    person.app().set("job.quantity", 9, "Pieces"sv);
    person.hide();
    Person again;
    CHECK(again.app().book().job.quantity == 9);
}

TEST_CASE("that nothing is kept is said before the first edit, and an update never hides it") {
    browser() = {};
    Person person;
    person.app().notice("storage-refused", "");
    person.app().notice("update-ready", "");
    person.look();
    CHECK(says(person, "This browser saves nothing"));
    CHECK(person.node("notice/update") != nullptr);
    CHECK(says(person, "Save a backup file first"));
    person.touch_id("notice/storage");
    person.touch("Save a backup file");
    CHECK(browser().downloaded.size() == 1);
}

TEST_CASE("a browser that promised nothing is told as it is") {
    browser() = {};
    Person person;
    person.app().open("kept");
    person.look();
    CHECK_FALSE(says(person, "has not promised"));
    person.app().notice("may-be-cleared", "");
    person.look();
    CHECK(says(person, "has not promised"));
}

TEST_CASE("a backup asks, names a seal key that is another one, and takes it only when told to") {
    const std::string own(64, 'a'), foreign(64, 'b');
    for (const bool chosen : {false, true}) {
        browser() = {};
        keep_shop();
        Person person;
        person.app().set_beside("shop.seal_key", std::string_view(own));
        Workbook backup = person.app().book();
        backup.job.quantity = 9;
        backup.shop.seal_key = foreign;
        person.app().open_file(document::write_workbook(backup));
        person.look();
        CHECK(says(person, "9, now 24"));
        CHECK(person.app().book().job.quantity == 24);
        CHECK(says(person, "Use its seal key "));
        if (chosen) {
            person.touch_id("incoming/key");
        }
        person.touch("Use this backup");
        CHECK(person.app().book().job.quantity == 9);
        CHECK(person.app().book().shop.seal_key == (chosen ? foreign : own));
        person.touch("Undo");
        CHECK(person.app().book().job.quantity == 24);
        CHECK(person.app().book().shop.seal_key == own);
    }
}

TEST_CASE("a file of any size is refused in words") {
    browser() = {};
    Person person;
    for (const std::size_t size : {0U, 1U << 20U, (1U << 20U) + 1U, 8U << 20U}) {
        person.app().open_file(std::string(size, ' '));
        person.look();
        CHECK(says(person, "Nothing was changed."));
    }
}
