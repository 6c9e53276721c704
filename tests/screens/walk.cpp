// Every place from every other, every panel that a place offers, at every width: each builds, says something and can be left.
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace torchside::web;

namespace {

constexpr const char* places[] = {"place/cut", "place/tune", "place/part", "place/quote", "place/shop"};
constexpr float widths[] = {360, 768, 1024, 1100, 1440, 1920};

} // namespace

TEST_CASE("every place is reached from every other, at every width") {
    for (const float width : widths) {
        browser() = {};
        Person person(width, 800);
        for (const char* from : places) {
            for (const char* to : places) {
                person.touch_id(from);
                person.touch_id(to);
                INFO(width << ": " << from << " to " << to);
                CHECK(person.node(to)->state.find("current") != std::string::npos);
                CHECK(person.app().ui().tree().nodes().size() > 20);
            }
        }
    }
}
