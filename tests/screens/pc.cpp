// A desk: a mouse and keys, a wide window.
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"
#include "web/kit/pen.hpp"

using namespace std::string_view_literals;
using namespace torchside::web;

TEST_CASE("the app's own keypad is for fingers") {
    for (const bool mouse : {false, true}) {
        for (const float width : {360.0F, 768.0F, 1440.0F}) {
            INFO(mouse << " at " << width);
            browser() = {};
            keep_shop();
            browser().fine_pointer = mouse;
            Person person(width, 800);
            person.touch("Thickness");
            REQUIRE(person.app().ui().edit().has_value());
            CHECK((person.node("keypad") == nullptr) == mouse);
            const Node* field = person.node("stock/thickness");
            REQUIRE(field != nullptr);
            CHECK((field->state.find("mode-keypad") == std::string::npos) == mouse);
            CHECK((person.node("place/cut") != nullptr) ==
                  (mouse || width >= 700)); // the places give way to a keypad alone
        }
    }
}

TEST_CASE("the settings are copied as text, all of them, in the user's units") {
    for (const char* units : {"metric", "inch"}) {
        browser() = {};
        keep_shop();
        Person person(1440, 900);
        person.app().set("shop.display.units", units, "Test"sv);
        person.look();
        person.touch("Copy settings as text");
        REQUIRE(browser().copied.size() == 1);
        const std::string& text = browser().copied[0];
        CHECK(text.find("Dwell in a program: ") != std::string::npos);
        for (const char* figure : {"Feed", "Pierce height", "Pierce delay", "Kerf", "Lead-in", "Smallest hole"}) {
            const std::string value = person.reads(figure);
            INFO(text << figure << ' ' << value);
            REQUIRE_FALSE(value.empty());
            CHECK(text.find(std::string(figure) + ": " + value.substr(0, value.find(','))) != std::string::npos);
        }
        CHECK(text.find(person.reads("Metal")) == 0);
        CHECK((text.find(" mm") == std::string::npos) == (std::string(units) == "inch"));
    }
}

TEST_CASE("where nothing can be cut there is nothing to copy") {
    browser() = {};
    keep_shop();
    Person person(360, 740);
    person.app().set("job.thickness_mm", 120.0, "Test"sv);
    person.look();
    CHECK(person.named("Copy settings as text") == nullptr);
}

TEST_CASE("beside the quote stands what the customer will see, as it is now") {
    browser() = {};
    keep_shop();
    browser().fragment = "#/quote";
    Person person(1440, 900);
    const auto customer = [&](const char* key) {
        const Node* node = person.node(std::string("customer/") + key);
        return node == nullptr ? std::string() : node->name + " " + node->value;
    };
    person.app().set("job.quantity", 7.0, "Test"sv);
    person.app().set("shop.name", std::string_view("Fence and Gate"), "Test"sv);
    person.app().set("job.quote.tax", nullptr, "Test"sv);
    person.look();
    CHECK(customer("shop").find("Fence and Gate") == 0);
    CHECK(customer("price/1").find("7 parts, before tax") == 0);
    CHECK(customer("price/2").empty());
    REQUIRE(person.app().set("job.quote.tax", 0.25, "Test"sv));
    person.look();
    CHECK(customer("price/2").find("Tax, 25") == 0);
    CHECK_FALSE(customer("price/3").empty());
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (node.id.starts_with("customer/")) {
            for (const char* secret : {"argin", "ost each", "hour", "arkup"}) {
                CHECK((node.name + node.value + node.about).find(secret) == std::string::npos);
            }
        }
    }
    person.touch("Tune");
    CHECK(person.node("customer") == nullptr);
}

TEST_CASE("no line of text is longer than 75 signs, however wide the window") {
    int long_ones = 0;
    for (const char* route :
         {"#/cut/safety", "#/tune/figure/feed", "#/quote/figure/arc", "#/shop/circuit", "#/shop/air", "#/quote/send"}) {
        browser() = {};
        keep_shop();
        browser().fragment = route;
        Person person(1920, 1000);
        for (const Node& node : person.app().ui().tree().nodes()) {
            if (node.role == Role::text && node.value.empty() && node.name.size() > 75 &&
                !node.id.starts_with("chart/")) {
                INFO(route << ' ' << node.id << ": " << node.name);
                const float lines = node.place.h / Pen::line_height(Type::label);
                CHECK(lines > static_cast<float>(node.name.size()) / 80.0F); // some signs are more than one byte
                ++long_ones;
            }
        }
    }
    CHECK(long_ones > 8);
}

TEST_CASE("a wide window is filled: no sheet is stretched, and a picture takes what is left") {
    for (const char* route : {"#/tune", "#/quote", "#/shop"}) {
        browser() = {};
        keep_shop();
        browser().fragment = route;
        Person person(1920, 1000);
        float right = 0;
        for (const Node& node : person.app().ui().tree().nodes()) {
            INFO(route << ' ' << node.id);
            right = std::max(right, node.place.right());
            if (node.role == Role::textbox) {
                CHECK(node.place.w <= 640);
            }
        }
        CHECK(right >= 1900);
        const bool quote = std::string_view(route) == "#/quote";
        CHECK(person.node(quote ? "part/picture" : "chart") != nullptr);
    }
}
