// What a control is called, for who cannot see where it stands.
#include <catch2/catch_test_macros.hpp>
#include <map>
#include <set>

#include "tests/screens/person.hpp"

using namespace torchside::web;

namespace {

/// The places and sheets where choices are.
constexpr const char* routes[] = {"#/cut",         "#/cut/stock",    "#/cut/chart",   "#/tune",        "#/tune/read",
                                  "#/tune/log/0",  "#/tune/coupon",  "#/part/shape",  "#/part/plate",  "#/quote/send",
                                  "#/quote/terms", "#/quote/issued", "#/quote/rates", "#/quote/costs", "#/shop/machine",
                                  "#/shop/height", "#/shop/circuit", "#/shop/air",    "#/shop/table",  "#/shop/display",
                                  "#/shop/nozzles"};

} // namespace

TEST_CASE("a choice is called by its question, not by its first answer") {
    int choices = 0;
    for (const char* route : routes) {
        {
            browser() = {};
            keep_shop();
            browser().fragment = route;
            Person person(360, 800);
            std::map<std::string, std::set<std::string>> answers;
            for (const Node& node : person.app().ui().tree().nodes()) {
                if (node.role == Role::radio) {
                    answers[node.parent].insert(node.name);
                }
            }
            for (const auto& [group, names] : answers) {
                const Node* question = person.node(group);
                INFO(route << ": " << group);
                REQUIRE(question != nullptr);
                CHECK(question->role == Role::group);
                CHECK_FALSE(question->name.empty());
                CHECK_FALSE(names.contains(question->name));
                ++choices;
            }
        }
    }
    CHECK(choices > 12);
}

TEST_CASE("what deletes a row of the log says which") {
    for (const float width : {360.0F, 1440.0F}) {
        browser() = {};
        keep_shop();
        browser().fragment = "#/tune/log";
        Person person(width, 800);
        std::set<std::string> said;
        for (const Node& node : person.app().ui().tree().nodes()) {
            if (node.name == "Delete") {
                CHECK_FALSE(node.value.empty());
                CHECK(said.insert(node.value).second);
            }
        }
        REQUIRE(said.size() > 1);
        CHECK(said.size() == person.app().book().shop.tests.size());
    }
}
