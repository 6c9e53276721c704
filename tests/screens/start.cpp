// The first minute: four questions with a usual answer each, on a phone, in a low window, in gloves, in Spanish.
#include <catch2/catch_test_macros.hpp>
#include <string>

#include "core/store/record.hpp"
#include "tests/screens/shops.hpp"
#include "tests/screens/thumb.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

struct Fresh {
    explicit Fresh(std::string_view locale = "en-US") {
        browser() = {};
        browser().language = locale.substr(0, 2);
        browser().locale = locale;
    }
};

std::string live(const Person& person) {
    return person.node("live")->name;
}

const Shop& shop(Person& person) {
    return person.app().book().shop;
}

/// The one that is marked in a choice.
std::string marked(Person& person, const std::string& group) {
    std::string found;
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (node.parent == group && node.state == "checked") {
            found += node.name;
        }
    }
    return found;
}

constexpr const char* next[] = {"Next: the supply", "Next: the air", "Next: the units", "Done: show my settings"};

} // namespace

TEST_CASE("first own figures: five touches, with every answer marked already") {
    const Fresh first;
    Person person;
    Thumb thumb(person);
    CHECK(person.node("cut/feed") != nullptr); // figures stand from the first moment
    thumb.tap("Start my shop");
    CHECK(marked(person, "start/shop.machine.max_current_a") == "50 A");
    CHECK(marked(person, "start/voltages") == "One voltage");
    thumb.tap(next[0]);
    CHECK(marked(person, "start/shop.circuit.line_v") == "240 V");
    CHECK(marked(person, "start/shop.circuit.breaker_a") == "30 A");
    thumb.tap(next[1]);
    CHECK(marked(person, "start/shop.air.compressor_l_min") == "5 cfm");
    CHECK(marked(person, "start/shop.air.receiver_l") == "30 gal");
    thumb.tap(next[2]);
    CHECK(marked(person, "choice/shop.display.units") == "inch");
    CHECK(marked(person, "start/shop.rates.currency") == "USD");
    thumb.tap(next[3]);
    CHECK(thumb.touches() == 5);
    CHECK(person.app().page() == Page::cut);
    CHECK(person.node("cut/feed")->value.find("in/min") != std::string::npos);
    CHECK(person.node("cut/feed")->about.find(" to ") != std::string::npos);
    CHECK(person.named("Start my shop") == nullptr);
    CHECK(person.named("See the example shop") == nullptr);
    CHECK(person.node("first/log")->name == "Log your first cut and this narrows");
}

TEST_CASE("whoever comes back with stored work sees neither the questions nor the way to them on Cut") {
    const Fresh first;
    {
        Person person;
        person.touch("Start my shop");
        for (const char* on : next) {
            person.touch(on);
        }
        person.hide();
    }
    Person later;
    CHECK(later.named("Start my shop") == nullptr);
    CHECK(later.node("first/log") != nullptr);
    later.touch_id("first/log");
    CHECK(later.app().page() == Page::tune);
    later.touch("Clean");
    later.touch_id("place/cut");
    CHECK(later.node("first/log") == nullptr);

    browser() = {};
    {
        Person person;
        person.touch_id("title/units"); // no word of the shop
        person.hide();
    }
    Person other;
    CHECK(other.named("Start my shop") == nullptr);
    other.touch_id("place/shop");
    other.touch("Start my shop"); // still one touch away
    CHECK(other.node("start/question") != nullptr);
}

TEST_CASE("each question can be skipped, says what it assumes then, and takes back what was touched there") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    const Workbook usual = person.app().book();
    const struct {
        const char* other;
        const char* says;
    } steps[] = {{"80 A", "Skip and assume 50 A on one voltage."},
                 {"120 V", "Skip and assume 240 V, 30 A."},
                 {"18 cfm", "Skip and assume 5 cfm with 30 gal."},
                 {"EUR", "Skip and assume inch and USD."}};
    for (const auto& step : steps) {
        INFO(step.says);
        person.touch(step.other);
        CHECK(person.node("start/skip")->name.starts_with(step.says));
        person.touch_id("start/skip");
    }
    CHECK(person.app().page() == Page::cut);
    CHECK(person.app().open_panel().empty());
    CHECK(shop(person).machine.max_current == usual.shop.machine.max_current);
    CHECK(shop(person).circuit == usual.shop.circuit);
    CHECK(shop(person).air.compressor == usual.shop.air.compressor);
    CHECK(shop(person).rates.currency == "USD");
    CHECK(shop(person).country == Country::us);
}

TEST_CASE("all of it can be left at once") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    person.touch("Close");
    CHECK(person.app().page() == Page::cut);
    CHECK(person.node("cut/feed") != nullptr);
}

TEST_CASE("Back goes one question back and keeps the answers; before the first it leaves") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    person.touch("60 A");
    person.touch(next[0]);
    person.touch(next[1]);
    CHECK(person.app().open_panel() == "start/3");
    person.touch_id("start/back");
    CHECK(person.app().open_panel() == "start/2");
    person.back(); // the browser's
    CHECK(person.node("start/question")->name == "How strong is your machine?");
    CHECK(marked(person, "start/shop.machine.max_current_a") == "60 A");
    person.back();
    CHECK(person.app().open_panel().empty());
    CHECK(shop(person).machine.max_current == Current{60, ampere});
}

TEST_CASE("a reload keeps the question and its answers") {
    const Fresh first;
    {
        Person person;
        person.touch("Start my shop");
        person.touch(next[0]);
        person.touch("120 V");
        person.hide();
        browser().fragment = "#/cut/start/2";
    }
    Person person;
    CHECK(person.node("start/question")->name == "What is the machine plugged into?");
    CHECK(marked(person, "start/shop.circuit.line_v") == "120 V");
    CHECK(marked(person, "start/shop.circuit.breaker_a") == "20 A");
    person.touch_id("start/skip"); // what stands is what is assumed
    CHECK(shop(person).circuit.line == Voltage{120, volt});
    for (const char* odd : {"#/cut/start/9", "#/cut/start/0", "#/cut/start/x", "#/cut/start/"}) {
        browser().fragment = odd;
        Person there;
        CHECK(there.node("start/question") != nullptr);
    }
}

TEST_CASE("the step is spoken, and each group of answers says its question") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    CHECK(live(person).starts_with("1 of 4: How strong is your machine?"));
    CHECK(person.node("start")->role == Role::dialog);
    CHECK(person.node("start")->name == "Start my shop · 1 of 4");
    CHECK(person.node("start/voltages")->name == "Does it run on about 120 V too?");
    person.touch(next[0]);
    CHECK(live(person).starts_with("2 of 4: What is the machine plugged into?"));
    CHECK(person.node("start") == nullptr); // another sheet, so that the focus comes to it
    CHECK(person.node("start/2")->role == Role::dialog);
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (node.role == Role::radio) {
            INFO(node.id);
            CHECK_FALSE(person.node(node.parent)->name.empty());
        }
    }
}

TEST_CASE("a machine for two voltages gets a rating for the low one") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    person.touch("Two voltages");
    CHECK(shop(person).machine.low_voltage.max_current == Current{25, ampere});
    person.touch_id("start/shop.machine.low_voltage.max_current_a/20 A");
    CHECK(shop(person).machine.low_voltage.max_current == Current{20, ampere});
    CHECK(person.node("start/skip")->name.starts_with("Skip and assume 50 A on one voltage"));
    person.touch("One voltage");
    CHECK_FALSE(shop(person).machine.low_voltage.max_current.has_value());
}

TEST_CASE("any other answer is typed") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    person.touch(next[0]);
    person.touch_id("start/shop.circuit.breaker_a/Other");
    REQUIRE(person.app().ui().edit());
    person.app().ui().enter("field/shop.circuit.breaker_a", "40", true);
    person.look();
    CHECK(shop(person).circuit.breaker == Current{40, ampere});
    CHECK(marked(person, "start/shop.circuit.breaker_a") == "Other");
    CHECK(person.node("field/shop.circuit.breaker_a") != nullptr);
}

TEST_CASE("what is marked goes by the region, and the units are the reader's") {
    const Fresh first("es-ES");
    browser().words["es"] = word_file("es");
    Person person;
    person.touch("Crear mi taller");
    CHECK(live(person).starts_with("1 de 4: "));
    person.touch_id("start/next");
    CHECK(marked(person, "start/shop.circuit.line_v") == "230 V");
    CHECK(marked(person, "start/shop.circuit.breaker_a") == "16 A");
    person.touch_id("start/next");
    CHECK(marked(person, "start/shop.air.compressor_l_min") == "150");
    CHECK(marked(person, "start/shop.air.receiver_l") == "100 L");
    person.touch_id("start/next");
    CHECK(marked(person, "choice/shop.display.units") == "mm");
    CHECK(marked(person, "start/shop.rates.currency") == "EUR");
    person.touch_id("start/next");
    CHECK(person.node("first/log") != nullptr);
}

TEST_CASE("the questions can be answered with one thumb in any window, gloved or not") {
    for (const float height : {225.0F, 360.0F, 740.0F}) {
        for (const bool glove : {false, true}) {
            const Fresh first;
            Person person(360, height);
            person.app().set_beside("shop.display.glove", glove);
            person.look();
            Thumb thumb(person);
            thumb.tap_id("first/start");
            thumb.tap("40 A");
            for (int step = 0; step < 4; ++step) {
                INFO(height << (glove ? " gloved" : "") << ", step " << step + 1);
                CHECK(person.node("start/question") != nullptr);
                thumb.tap_id("start/next");
            }
            CHECK(person.app().page() == Page::cut);
            CHECK(shop(person).machine.max_current == Current{40, ampere});
        }
    }
}

TEST_CASE("in a wide window the questions stand beside the figures that follow from them") {
    for (const float width : {768.0F, 1440.0F}) {
        const Fresh first;
        Person person(width, 900);
        person.touch("Start my shop");
        CHECK(person.node("start/question") != nullptr);
        CHECK(person.node("cut/feed") != nullptr);
        person.touch("30 A");
        CHECK(person.node("title/current")->value.starts_with("30 A"));
    }
}

TEST_CASE("an answer moves nothing: Next stays where the thumb is, and Undo comes elsewhere") {
    const Fresh first;
    Person person;
    person.touch("Start my shop");
    const Rect before = person.node("start/next")->place;
    person.touch("45 A");
    CHECK(person.node("start/next")->place.y == before.y);
    REQUIRE(person.node("change/undo") != nullptr);
    CHECK(person.node("change/undo")->place.y >= before.bottom());
    person.touch("50 A"); // answered anew
    CHECK(person.node("start/next")->place.y == before.y);
    CHECK(shop(person).machine.max_current == Current{50, ampere});
}
