// A phrase of the table as a sentence: figures in the reader's units, names as they are, texts within texts.
#include <catch2/catch_test_macros.hpp>

#include "core/words/range.hpp"
#include "generated/words/by_hand.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/drawing_fault.hpp"
#include "generated/words/metal.hpp"
#include "generated/words/part.hpp"
#include "generated/words/refusal.hpp"
#include "generated/words/wear.hpp"
#include "tests/core/said.hpp"

using namespace torchside;

TEST_CASE("a phrase's slots are filled with figures in the reader's units", "[words]") {
    const Text load = words::circuit::Load{.breaker = Current{20, ampere}, .load = Current{45.9, ampere}};
    CHECK(test::said(load) == "45.9 A on a 20 A breaker.");
    const Text holes = words::part::SmallHoles{.count = 3, .least = words::size(Length{6.35, mm})};
    CHECK(test::said(holes) == "3 holes are narrower than 6.35 mm");
    CHECK(test::said(holes, UnitSystem::inch) == "3 holes are narrower than 0.25 in");
    CHECK(test::said(words::wear::Have{.sets = 1}) == "Have 1 new set ready for this batch.");
    CHECK(test::said(words::wear::Have{.sets = 2}) == "Have 2 new sets ready for this batch.");
}

TEST_CASE("a phrase may say one thing to a metric reader and another to one in inches", "[words]") {
    CHECK(test::said(words::by_hand::hold).starts_with("Keep the torch about 1.5 mm above the plate."));
    CHECK(test::said(words::by_hand::hold, UnitSystem::inch)
              .starts_with("Keep the torch about 1/16 in above the plate."));
}

TEST_CASE("texts stand within texts, and sentences in a row", "[words]") {
    Text text = words::circuit::NothingHolds{.elsewhere = words::circuit::larger_circuit};
    CHECK(test::said(text) == "You can't cut on this circuit. Use a larger circuit.");
    text += words::circuit::first_plug;
    CHECK(test::said(text) == "You can't cut on this circuit. Use a larger circuit. Do not use this circuit until the "
                              "plug fits the supply and the breaker.");
    const Text wire = words::circuit::Awg{.number = 8};
    CHECK(test::said(words::circuit::UseWire{.wire = Text{words::circuit::OrThicker{.wire = wire}}}) ==
          "Use 8 AWG or thicker.");
}

TEST_CASE("a name may hold any signs and any length", "[words]") {
    const std::string odd = std::string("a\0{b}|\x1f\n", 8) + std::string(70000, 'x');
    CHECK(test::said(words::verbatim(odd)) == odd.substr(0, 0xFFFF));
    CHECK(test::said(words::refusal::TwoSigns{.first = std::string("{second}"), .second = std::string("b")}) ==
          "Mark one of the two: \"{second}\" rules out \"b\".");
}

TEST_CASE("a phrase without slots is had as it stands, for as long as the table", "[words]") {
    const std::string_view first = phrase(words::metal::mild_steel, english());
    CHECK(std::string(first) == "Mild steel");
    CHECK(std::string(phrase(words::metal::wear_plate, english())) == "Wear plate");
    CHECK(std::string(phrase(words::circuit::holds, english())) == test::said(words::circuit::holds));
    CHECK(phrase(words::metal::mild_steel, english()).data() ==
          first.data()); // no copy that a caller would have to keep
}

TEST_CASE("the ends of a range are in the reader's units", "[words]") {
    const Text thickness = words::range(0.3, 150, FieldUnit::mm);
    CHECK(test::said(thickness) == "Enter 0.3 to 150 mm.");
    CHECK(test::said(thickness, UnitSystem::inch) == "Enter 0.0119 to 5.9 in.");
    CHECK(test::said(words::range(0.05, 0.98, FieldUnit::share)) == "Enter 5 to 98 %.");
}

TEST_CASE("nothing is said of nothing", "[words]") {
    CHECK(Text{Word{}}.empty());
    CHECK(test::said(Text{}).empty());
    CHECK(test::said(Message{.code = "a", .title = words::circuit::holds}) == "Circuit holds.");
    CHECK(test::said(Message{.code = "a", .title = words::circuit::holds, .remedy = words::circuit::first_plug}) ==
          "Circuit holds. Do not use this circuit until the plug fits the supply and the breaker.");
    CHECK(Text{words::circuit::holds} == Text{words::circuit::holds});
    CHECK_FALSE(Text{words::circuit::holds} == Text{words::circuit::may_trip});
}

TEST_CASE("the customer's page and the reader of drawings have their own phrases and no others", "[words]") {
    const Speech page(customers_english(), UnitSystem::metric);
    for (const Word own : {words::customer::quote, words::customer::unlisted}) {
        CHECK(say(own, page) == say(own, UnitSystem::metric));
        CHECK_FALSE(say(own, page).empty());
    }
    CHECK(say(words::customer::Pieces{.count = 3}, page) == "3 parts, before tax");
    CHECK(say(words::circuit::holds, page).empty());
    CHECK(phrase(words::circuit::may_trip, page.language).empty());
    CHECK(phrase(words::drawing_fault::no_number, page.language).empty());
    CHECK(std::string(phrase(words::drawing_fault::no_number, readers_english())) ==
          std::string(phrase(words::drawing_fault::no_number, english())));
    CHECK(phrase(words::customer::quote, readers_english()).empty());
}
