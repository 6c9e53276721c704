// What people come for, from the first screen with nothing stored, with the touches it may take.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/thumb.hpp"

using namespace torchside::web;

namespace {

struct Phone {
    Person person;
    Thumb thumb{person};

    enum class Shop { none, own };
    explicit Phone(Shop shop = Shop::none) : person(width_with(shop), 740.0F) {}
    static float width_with(Shop shop) {
        browser() = {};
        if (shop == Shop::own) {
            keep_shop();
        }
        return 360;
    }
    [[nodiscard]] bool in_view(std::string_view id) const {
        const Node* node = person.node(id);
        return node != nullptr && node->seen.h >= std::min(24.0F, node->place.h);
    }
};

} // namespace

TEST_CASE("task 2: 10 gauge mild steel at 40 A takes five touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap_id("title/thickness");
    thumb.tap("10 ga");
    thumb.tap("40 A");
    thumb.tap("Close");
    for (const char* figure : {"cut/feed", "cut/arc", "cut/pierce_height", "cut/pierce_delay"}) {
        INFO(figure);
        CHECK(phone.in_view(figure));
    }
    CHECK(thumb.touches() <= 5);
}

TEST_CASE("task 3: on site, 120 V 20 A: does it hold, and what can be cut there, in six touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    const torchside::supply::Circuit before = phone.person.app().book().shop.circuit;
    thumb.tap_id("cut/verdict/circuit");
    thumb.tap("120 V");
    thumb.tap("20 A, 12 AWG");
    thumb.read("on a 20 A breaker");
    CHECK(phone.in_view("circuit/there"));
    CHECK(thumb.touches() <= 6);
    const int there = thumb.touches();
    thumb.tap("Undo"); // back to the shop's supply
    CHECK(phone.person.app().book().shop.circuit == before);
    CHECK(thumb.touches() - there == 1);
}

TEST_CASE("task 4: narrower at the top on both sides and hard dross: what to turn, in four touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap("Tune");
    thumb.tap("Read a cut");
    thumb.tap("Part narrower at top, both sides");
    thumb.tap("Dross, must be ground off");
    CHECK(phone.in_view("read/what"));
    CHECK(phone.in_view("read/turn"));
    CHECK(thumb.touches() <= 4);
}

TEST_CASE("task 5: three test cuts are three touches on Tune") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap("Tune");
    const std::size_t before = phone.person.app().book().shop.tests.size();
    for (const char* showed : {"Too fast", "Too slow", "Clean"}) {
        thumb.tap(showed);
    }
    CHECK(phone.person.app().book().shop.tests.size() == before + 3);
    CHECK(thumb.touches() <= 1 + 3); // the place, and one a cut
    const int logged = thumb.touches();
    thumb.tap("Undo");
    CHECK(phone.person.app().book().shop.tests.size() == before + 2);
    CHECK(thumb.touches() - logged == 1);
}

TEST_CASE("task 6: the compressor on a humid day, in two touches") {
    Phone phone(Phone::Shop::own); // "my compressor": it has been entered
    Thumb& thumb = phone.thumb;
    thumb.tap_id("cut/verdict/air");
    thumb.tap("Humid 85 %");
    CHECK(phone.person.app().book().shop.air.humidity == 0.85);
    CHECK(phone.in_view("air/summary"));
    CHECK(thumb.touches() <= 2);
}

TEST_CASE("task 8: a feed ladder off the phone, in three touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap("Tune");
    thumb.tap("Test coupons");
    thumb.tap("Save the program");
    REQUIRE(browser().downloaded.size() == 1);
    CHECK(browser().downloaded[0].name.starts_with("ladder-"));
    CHECK(thumb.touches() <= 3);
}

TEST_CASE("task 9: a bracket in 3/8 in with two holes: good, time for 40, sheets of 4 x 8, in 25 touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap_id("title/thickness");
    thumb.tap("3/8");
    thumb.tap("Part");
    thumb.tap("Shape and sizes");
    thumb.tap("Bracket");
    thumb.tap("Length");
    for (const char* size : {"80", "120", "2", "14"}) {
        thumb.keys(size);
        thumb.tap("Next");
    }
    thumb.keys("40");
    thumb.tap("Close");
    thumb.tap("Parts per sheet");
    thumb.tap("4 × 8 ft");
    thumb.read("Sheets for 40");
    CHECK(phone.person.node("plate/sheets")->value == "1");
    thumb.tap("Close");
    thumb.read("Whole batch");
    thumb.read("Holes 14 mm: good (smallest ");
    const torchside::part::PartSpec& part = phone.person.app().book().job.part;
    CHECK(part.length == torchside::Length{80, torchside::mm});
    CHECK(part.width == torchside::Length{120, torchside::mm});
    CHECK(part.holes == 2);
    CHECK(part.hole == torchside::Length{14, torchside::mm});
    CHECK(phone.person.app().book().job.quantity == 40);
    CHECK(thumb.touches() <= 25);
}

TEST_CASE("task 10: priced with my rates and sent, in 20 touches") {
    Phone phone;
    Thumb& thumb = phone.thumb;
    thumb.tap("Quote");
    thumb.tap("What you charge");
    thumb.tap_id("field/shop.rates.labour_per_h");
    for (const char* rate : {"55", "60", "1.8"}) {
        thumb.keys(rate);
        thumb.tap("Next");
    }
    thumb.keys("35");
    thumb.tap("Close");
    thumb.tap("Send to the customer");
    thumb.tap("Copy the link");
    const torchside::Workbook& book = phone.person.app().book();
    CHECK(book.shop.rates.labour_per_h == 55);
    CHECK(book.shop.rates.machine_per_h == 60);
    CHECK(book.job.price.material_per_kg == 1.8);
    REQUIRE(browser().copied.size() == 1);
    CHECK(thumb.touches() <= 20);
}
