// What goes to the printer besides the figures: whose shop it is, and that something typed is not in it.
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace torchside::web;

namespace {

bool says(const std::string& page, std::string_view words) {
    return page.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("the printed chart and the job card say that it is the example shop") {
    for (const bool example : {false, true}) {
        browser() = {};
        keep_shop(example);
        Person person;
        const std::string card = person.app().to_print();
        CHECK(says(card, "Job card"));
        CHECK(says(card, "Dwell in a program")); // the delay alone would pierce a start lag too short
        CHECK(says(card, "Example shop: its figures are not yours.") == example);
        person.app().open("chart");
        person.look();
        const std::string chart = person.app().to_print();
        CHECK(says(chart, "every plate"));
        CHECK(says(chart, "Example shop: its figures are not yours.") == example);
        CHECK(says(chart, "Full: your cuts.") != example);
        CHECK(says(chart, "Full: cuts of the example shop.") == example);
    }
}

TEST_CASE("what was typed and not taken stands on the paper too") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().open("stock");
    person.look();
    person.type("Thickness", "9999");
    const std::string words = "Thickness was not changed: it stays 6 mm.";
    CHECK(says(person.app().to_print(), words));
    person.app().open("chart");
    person.look();
    CHECK(says(person.app().to_print(), words));
}
