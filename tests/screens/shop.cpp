// Whose shop is open: an empty one at first, the example while it is looked at, one's own from then on.
#include <catch2/catch_test_macros.hpp>
#include <string>

#include "core/link/link.hpp"
#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

constexpr const char* places[] = {"place/cut", "place/tune", "place/part", "place/quote", "place/shop"};

bool says(const Person& person, std::string_view words) {
    return person.text().find(words) != std::string::npos;
}

/// What is kept once the page has been hidden.
Workbook stored(Person& person) {
    person.hide();
    return document::newest(browser().kept[0], browser().kept[1]).value().workbook;
}

/// Touches, each counted; a number is typed with one touch a key and one to finish.
struct Counting {
    Person& person;
    int touches = 0;
    void touch(std::string_view name) {
        person.touch(name);
        ++touches;
    }
};

/// Task 1, from where "Start my shop" is on screen.
int make_it_mine(Person& person) {
    Counting hand{person};
    hand.touch("Start my shop");
    hand.touch("40 A");
    hand.touch("Next: the supply");
    hand.touch("Next: the air"); // 240 V and 30 A are marked
    hand.touch("12 cfm");
    hand.touch("60 gal");
    hand.touch("Next: the units"); // and so are inches
    hand.touch("Done: show my settings");
    return hand.touches;
}

void is_mine(Person& person) {
    const Workbook book = stored(person);
    const Shop& s = book.shop;
    CHECK(s.machine.max_current == Current{40, ampere});
    CHECK(s.machine.duty_current == Current{40, ampere});
    CHECK(s.machine.duty_cycle == 0.6);
    CHECK(book.job.current == Current{40, ampere});
    CHECK(s.circuit.line == Voltage{240, volt});
    CHECK(s.circuit.breaker == Current{30, ampere});
    CHECK(s.circuit.run_awg == 10);
    CHECK_FALSE(s.circuit.run_mm2.has_value());
    CHECK(s.circuit.run == Length{15, metre});
    CHECK(std::abs(s.air.compressor.in(cfm)-12) < 1e-9);
    CHECK(std::abs(s.air.receiver.in(us_gallon)-60) < 1e-9);
    CHECK(s.display.units == UnitSystem::inch);
    // Nothing of the example is left.
    const Workbook fresh;
    CHECK_FALSE(s.example);
    CHECK(s.name.empty());
    CHECK(s.contact.empty());
    CHECK(s.tests.empty());
    CHECK(s.wear.sets.empty());
    CHECK(s.wear.now.starts == 0);
    CHECK(s.rates.labour_per_h == fresh.shop.rates.labour_per_h);
    CHECK(s.table.acceleration == fresh.shop.table.acceleration);
    CHECK(book.job.quote.note.empty());
    CHECK(book.job.quote.number.empty());
    CHECK(book.job.name.empty());
    for (const char* place : places) {
        person.touch_id(place);
        INFO(place);
        CHECK_FALSE(says(person, "Example shop"));
        CHECK_FALSE(says(person, "Harbour"));
    }
}

} // namespace

TEST_CASE("with nothing stored the shop is empty, and its figures stand on no cut") {
    browser() = {};
    Person person;
    CHECK_FALSE(says(person, "Example shop"));
    CHECK_FALSE(says(person, "cuts of yours"));
    CHECK(person.named("Feed") != nullptr);
    CHECK(person.named("Start my shop") != nullptr);
    CHECK(person.named("See the example shop") != nullptr);
    CHECK((browser().kept[0].empty() && browser().kept[1].empty())); // looking stores nothing
}

TEST_CASE("an empty first open becomes one's own shop in few touches") {
    for (const float width : {360.0F, 1440.0F}) {
        browser() = {};
        Person person(width, 740);
        CHECK(make_it_mine(person) <= 8);
        is_mine(person);
    }
}

TEST_CASE("the example becomes one's own shop in few touches, and that can be taken back") {
    browser() = {};
    Person person;
    person.touch("See the example shop");
    CHECK(make_it_mine(person) + 1 <= 9);
    is_mine(person);
    browser() = {};
    keep_shop(true);
    Person again;
    CHECK(make_it_mine(again) <= 8);
    is_mine(again);
    browser() = {};
    keep_shop(true);
    Person unsure;
    unsure.touch("Start my shop");
    CHECK(stored(unsure).shop.tests.empty());
    unsure.touch("Undo");
    CHECK(says(unsure, "Example shop"));
    CHECK(stored(unsure).shop.tests.size() == 6);
}

TEST_CASE("every screen and sheet of the example says so, before and after the page is opened again") {
    browser() = {};
    Person person;
    person.touch("See the example shop");
    CHECK(stored(person).shop.example);
    Person later;
    for (const char* place : places) {
        later.touch_id(place);
        INFO(place << '\n' << later.text());
        CHECK(says(later, "Example shop"));
        CHECK(later.named("Start my shop") != nullptr);
        CHECK_FALSE(says(later, "of yours"));
    }
    later.touch_id("place/cut");
    CHECK(says(later, "cuts of the example shop"));
    later.touch_id("cut/feed");
    CHECK(says(later, "cuts of the example shop"));
    CHECK_FALSE(says(later, "cuts of yours"));
    later.app().open("stock");
    later.look();
    CHECK(later.named("Start my shop") != nullptr);
    Person wide(1440, 900);
    CHECK(wide.named("Start my shop") != nullptr);
    CHECK_FALSE(says(wide, "of yours"));
}

TEST_CASE("the same cuts in one's own shop are called one's own") {
    browser() = {};
    keep_shop();
    Person person;
    CHECK(says(person, "cuts of yours"));
    CHECK_FALSE(says(person, "xample shop"));
    CHECK(person.named("See the example shop") == nullptr);
}

TEST_CASE("the units and the theme stay when the shop changes") {
    browser() = {};
    Person person;
    person.touch_id("title/units");
    person.touch("See the example shop");
    CHECK(stored(person).shop.display.units == UnitSystem::inch);
    person.touch("Start my shop");
    CHECK(stored(person).shop.display.units == UnitSystem::inch);
}

TEST_CASE("the duty's current follows a typed largest current, and the job's comes down with it") {
    browser() = {};
    Person person;
    person.touch("Start my shop");
    person.touch("Other");
    person.app().ui().enter("field/shop.machine.max_current_a", "20", false); // on the way to more
    person.look();
    CHECK(stored(person).job.current == Current{20, ampere});
    person.app().ui().enter("field/shop.machine.max_current_a", "42", true);
    person.look();
    CHECK(stored(person).shop.machine.max_current == Current{42, ampere});
    CHECK(stored(person).shop.machine.duty_current == Current{42, ampere});
    CHECK(stored(person).job.current == Current{42, ampere});
    person.app().set("shop.machine.duty_current_a", 30.0, "Duty current"sv);
    person.look();
    person.touch("60 A");
    CHECK(stored(person).shop.machine.duty_current == Current{30, ampere});
}

TEST_CASE("a largest current that was typed is taken back whole, with all that hangs on it") {
    browser() = {};
    Person person;
    person.touch("Start my shop");
    const std::string before = document::write_workbook(person.app().book());
    person.touch("Other");
    for (const char* text : {"2", "20", "200"}) { // 20 brings the smallest and the job's current down on the way
        person.app().ui().enter("field/shop.machine.max_current_a", text, false);
        person.look();
    }
    person.app().ui().enter("field/shop.machine.max_current_a", "150", true);
    person.look();
    CHECK(stored(person).shop.machine.min_current == Workbook().shop.machine.min_current);
    CHECK(person.app().change()->name == "Largest current 50 → 150 A");
    person.touch("Undo");
    CHECK(document::write_workbook(person.app().book()) == before);
}

TEST_CASE("a link that brings a job never opens the example") {
    Workbook sent;
    sent.shop.example = true;
    sent.shop.name = "Somebody";
    browser() = {};
    browser().fragment = "#" + document::job_link(sent);
    Person person;
    person.touch("Keep job and shop");
    CHECK(stored(person).shop.name == "Somebody");
    CHECK_FALSE(stored(person).shop.example);
}

TEST_CASE("nothing of the example can be sent, by whichever way") {
    browser() = {};
    keep_shop(true);
    Person person;
    person.touch_id("place/quote");
    person.touch("Send to the customer");
    CHECK(says(person, "Nothing of the example shop can be sent. Start your own shop first."));
    person.touch_id("place/shop");
    person.touch("My other devices");
    CHECK(says(person, "Nothing of the example shop can be sent. Start your own shop first."));
    for (const char* name : {"Copy the link", "Share", "Show a QR code", "Save the quote as one file",
                             "Open the customer's page, to print"}) {
        INFO(name);
        CHECK(person.named(name) == nullptr);
    }
    Links links;
    CHECK(links.quote(person.app().book(), person.app().worksheet()).empty());
    CHECK(links.job(person.app().book()).empty());
}

TEST_CASE("the whole job is sent from the shop, not to the customer") {
    browser() = {};
    keep_shop();
    Person person;
    person.touch_id("place/quote");
    person.touch("Send to the customer");
    CHECK_FALSE(says(person, "The whole job"));
    person.touch("Copy the link");
    CHECK(browser().copied.back().find("#q=") != std::string::npos);
    person.touch_id("place/shop");
    person.touch("My other devices");
    person.touch("Copy the link");
    CHECK(browser().copied.back().find("#j=") != std::string::npos);
}

TEST_CASE("a customer is sent to the shop's public address; without one the page says that its link leads nowhere") {
    constexpr const char* caution = "Your customer can't open this link";
    browser() = {};
    keep_shop();
    browser().address = "http://localhost:8080/";
    Person person;
    person.app().open("send");
    person.look();
    CHECK(says(person, caution));
    person.type("Public address", "https://shop.example/torchside/#/quote");
    CHECK_FALSE(says(person, caution));
    person.touch("Copy the link");
    CHECK(browser().copied.back().starts_with("https://shop.example/torchside/#q="));
    person.type("Public address", "shop.example");
    CHECK(stored(person).shop.public_url == "https://shop.example/torchside/#/quote");
    person.app().ui().stop_edit();
    person.look();
    person.type("Public address", "https://localhost/");
    CHECK(says(person, caution));
    person.type("Public address", "");
    CHECK(says(person, caution));
    browser().address = "https://shop.example/";
    person.look();
    CHECK_FALSE(says(person, caution));
}

TEST_CASE("the quote as one file is a page of its own, named by its number") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().open("send");
    person.look();
    person.touch("Save the quote as one file");
    REQUIRE(browser().downloaded.size() == 1);
    const auto& file = browser().downloaded.front();
    CHECK(file.name == "quote-Q-118.html");
    CHECK(file.type == "text/html");
    CHECK(file.text.starts_with("<!doctype html>"));
    CHECK(file.text.find("Harbour Gate and Rail") != std::string::npos);
    CHECK(file.text.find("<script") == std::string::npos);
    for (const char* own : {"argin", "abour,", "per hour"}) {
        INFO(own);
        CHECK(file.text.find(own) == std::string::npos);
    }
    person.app().set("job.quote.number", "12/b <x>", "Number"sv);
    person.look();
    person.touch("Save the quote as one file");
    CHECK(browser().downloaded.back().name == "quote-12-b--x-.html");
}

TEST_CASE("what was done is said, seen and spoken, and only when it was done") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().open("send");
    person.look();
    person.touch("Copy the link");
    CHECK(person.node("said") == nullptr); // the browser has not answered yet
    person.app().notice("not-copied", "");
    person.look();
    REQUIRE(person.node("said") != nullptr);
    CHECK(person.node("said")->name.starts_with("Not copied"));
    person.app().notice("copied", "");
    person.look();
    CHECK(person.node("said")->role == Role::status);
    CHECK(person.node("said")->name.starts_with("Copied."));
    person.touch_id("place/tune");
    CHECK(person.node("said") == nullptr);
    person.touch("Clean");
    CHECK(person.node("change/what")->name == "Clean cut logged");
}
