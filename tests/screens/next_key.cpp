// "Next" on the keypad: takes what was typed and goes on to the number below, so that a row of sizes is typed in one go.
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

std::string field_open(Person& person) {
    return person.app().ui().edit() ? person.app().ui().edit()->id : std::string();
}

void keys(Person& person, std::string_view text) {
    for (const char c : text) {
        person.touch_id(std::string("key/") + c);
    }
}

} // namespace

TEST_CASE("Next goes from size to size and keeps each") {
    browser() = {};
    Person person;
    person.touch_id("place/part");
    person.touch("Shape and sizes");
    person.touch_id("shape/bracket");
    person.touch("Length");
    keys(person, "80");
    person.touch_id("key/next");
    CHECK(field_open(person) == "field/job.part.width_mm");
    keys(person, "120");
    person.touch_id("key/next");
    CHECK(field_open(person) == "field/job.part.holes");
    CHECK(person.app().book().job.part.length == Length{80, mm});
    CHECK(person.app().book().job.part.width == Length{120, mm});
    const Node* open = person.node("field/job.part.holes");
    REQUIRE(open != nullptr);
    CHECK(open->seen.h == open->place.h); // in view, above the keypad
}

TEST_CASE("Next over an optional field leaves it as it is") {
    browser() = {};
    Person person;
    person.touch_id("place/shop");
    person.touch("Machine");
    person.touch("Nameplate I1max");
    person.touch_id("key/next");
    CHECK(field_open(person) == "field/shop.machine.plate_i1eff_a");
    CHECK_FALSE(person.app().book().shop.machine.plate_i1max);
    person.touch_id("key/next");
    CHECK(field_open(person) == "field/shop.machine.low_voltage.max_current_a");
    for (int last = 0; last < 5; ++last) { // four more numbers, and past the last of the sheet
        person.touch_id("key/next");
    }
    CHECK(field_open(person).empty());
    CHECK_FALSE(person.app().book().shop.machine.low_voltage.max_current);
}

TEST_CASE("Next does not leave a number that is refused") {
    browser() = {};
    Person person;
    person.touch_id("place/part");
    person.touch("Shape and sizes");
    const double before = person.app().book().job.part.length.in(mm);
    person.touch("Length");
    keys(person, "99999");
    person.touch_id("key/next");
    CHECK(field_open(person) == "field/job.part.length_mm");
    CHECK(person.node("field/job.part.length_mm")->state.find("invalid") != std::string::npos);
    person.back();
    CHECK(person.app().book().job.part.length.in(mm) <= 10000);
    CHECK(before > 0);
}
