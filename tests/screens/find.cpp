// Find: all that can be opened is found by its name, and what is found opens.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <set>

#include "tests/screens/person.hpp"
#include "tests/screens/shops.hpp"
#include "web/screens/find/find_index.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

/// The first of what is found.
std::string first(Person& person, std::string_view typed) {
    const auto found = find(person.app(), typed);
    return found.empty() ? "" : found.front().name;
}

bool finds(Person& person, std::string_view typed, std::string_view name) {
    const auto found = find(person.app(), typed);
    return std::any_of(found.begin(), found.end(), [&](const Findable& one) { return one.name == name; });
}

bool has_prefix(Person& person, const std::string& id) {
    const auto& nodes = person.app().ui().tree().nodes();
    return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) { return n.id.starts_with(id); });
}

} // namespace

TEST_CASE("what is typed finds places, panels, figures, metals, plates, checks, jobs and settings") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().set("job.name", std::string_view("Gate hinge"), "Test"sv);
    person.look();
    CHECK(first(person, "tune") == "Tune");
    CHECK(first(person, "pierce d") == "Pierce delay");
    CHECK(first(person, "stainl") == "Stainless");
    CHECK(first(person, "8 mm") == "8 mm");
    CHECK(first(person, "gate") == "Gate hinge");
    CHECK(first(person, "hinge ga") == "Gate hinge"); // words in any order
    CHECK(finds(person, "hose", "Length of the air hose"));
    CHECK(finds(person, "corner tol", "Corner tolerance"));
    CHECK(finds(person, "log", "The log"));
    CHECK(finds(person, "circuit", "Circuit, panel to torch"));
    CHECK(finds(person, "back", "Save a backup file"));
    CHECK(finds(person, "print", "Print the job card"));
    CHECK(find(person.app(), "zzz").empty());
    CHECK(find(person.app(), "").size() >= 5);           // what can be done, and the places
    CHECK_FALSE(finds(person, "ierce", "Pierce delay")); // words by their beginning
}

TEST_CASE("every panel with a title and every section of the shop is found, each entry once") {
    browser() = {};
    keep_shop();
    Person person;
    std::set<std::string> ids;
    std::set<std::string> opened;
    for (const Findable& one : all_findable(person.app())) {
        INFO(one.id() << ' ' << one.name);
        CHECK_FALSE(one.name.empty());
        CHECK(ids.insert(one.id()).second);
        opened.insert(one.panel);
    }
    for (const PanelRow& row : panels()) {
        if (row.title != Word{}) {
            CHECK(opened.contains(std::string(row.name)));
        }
    }
    CHECK(ids.size() > 120);
}

TEST_CASE("what people call a thing finds it, too") {
    browser() = {};
    Person person;
    CHECK(first(person, "dross") == "Read a cut");
    CHECK(finds(person, "gauge", "Stock"));
    CHECK(finds(person, "swirl", "Nozzle and electrode"));
    browser().words["es"] = word_file("es");
    browser().language = "es";
    Person spanish;
    CHECK(finds(spanish, "escoria", "Leer un corte"));
}

TEST_CASE("what is found opens, and a field is there to be typed in") {
    browser() = {};
    keep_shop();
    Person person;
    int fields = 0;
    for (const Findable& one : all_findable(person.app())) {
        if (one.kind == Findable::Kind::metal || one.kind == Findable::Kind::plate ||
            one.kind > Findable::Kind::plate) {
            continue;
        }
        INFO(one.id() << ' ' << one.name);
        open_found(person.app(), one);
        person.look();
        CHECK(person.app().page() == one.page);
        CHECK(person.app().open_panel() == one.panel);
        if (one.kind == Findable::Kind::field) {
            CHECK(has_prefix(person, "field/" + one.target));
            ++fields;
        }
        if (!one.panel.empty()) {
            CHECK(person.named("Close") != nullptr);
        }
    }
    CHECK(fields > 70);
    CHECK(person.app().change() == nullptr); // looking changes nothing
}

TEST_CASE("Find by touch: typed, entered, opened; a metal and a plate are set and can be undone") {
    browser() = {};
    keep_shop();
    Person person;
    person.touch("Find");
    REQUIRE(person.app().open_panel() == "find");
    REQUIRE(person.app().ui().editing("find/text"));
    CHECK(person.node("keypad") == nullptr); // words are not typed on a number pad
    person.app().ui().enter("find/text", "copp", false);
    person.look();
    REQUIRE(person.node("find/metal/copper") != nullptr);
    person.app().ui().enter("find/text", "copp", true);
    person.look();
    CHECK(person.app().book().job.material == Metal::copper);
    CHECK(person.app().open_panel().empty());
    person.touch("Undo");
    CHECK(person.app().book().job.material == Metal::mild_steel);
    person.app().notice("find", "");
    person.look();
    person.app().ui().enter("find/text", "qqq", true);
    person.look();
    CHECK(person.app().open_panel() == "find");
    CHECK(person.text().find("Nothing is called that.") != std::string::npos);
    person.app().drop_draft("find/text"); // Escape
    person.look();
    CHECK(person.app().open_panel().empty());
}

TEST_CASE("in Spanish things are found without their accents") {
    browser() = {};
    keep_shop();
    browser().words["es"] = word_file("es");
    browser().language = "es";
    Person person;
    CHECK(first(person, "sangria") == "Sangría");
    CHECK(finds(person, "presion aire", "Presión aire"));
}
