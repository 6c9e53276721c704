// Cuts that shops give each other, on the log's panel; and how good the numbers are, from a figure's panel and from Shop.
#include <catch2/catch_test_macros.hpp>
#include <string>

#include "core/store/cuts_file.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

Workbook own_book() {
    Workbook book;
    book.shop.name = "Kettle Lane Works";
    book.shop.contact = "telephone 555 0199";
    tune::TestCut cut;
    cut.thickness = Length{6, mm};
    cut.feed = Speed{1500, mm_min};
    cut.verdict = tune::Verdict::clean;
    book.shop.tests.push_back(cut);
    return book;
}

struct AtLog {
    Person person;
    AtLog() : person((browser() = {}, 360.0F), 740.0F) {
        REQUIRE(person.app().take(own_book(), "A book"sv));
        open_log();
    }
    void open_log() {
        person.touch_id("place/tune");
        person.app().open("log");
        person.look();
    }
    [[nodiscard]] bool says(std::string_view words) { return person.text().find(words) != std::string::npos; }
    [[nodiscard]] const std::vector<tune::SharedCut>& others() { return person.app().book().shop.others; }
};

} // namespace

TEST_CASE("what is given away is shown first, and holds no name") {
    AtLog at;
    at.person.touch("Share my cuts");
    CHECK(at.says("1 cut goes into the file"));
    CHECK(at.says("1500 mm/min, clean"));
    CHECK(at.says("bore 1.1 mm"));
    CHECK(browser().downloaded.empty());
    at.person.touch("Save as a file");
    REQUIRE(browser().downloaded.size() == 1);
    const std::string& text = browser().downloaded[0].text;
    CHECK(browser().downloaded[0].name == "torchside-cuts.json");
    CHECK(text.find("Kettle") == std::string::npos);
    CHECK(text.find("555") == std::string::npos);
    CHECK(document::read_cuts(text).ok());
}

TEST_CASE("cuts of others are taken only when told to, count as theirs, and go again") {
    AtLog at;
    const auto given = document::cuts_to_give(own_book().shop.tests, own_book().shop.machine);
    at.person.app().open_file(document::write_cuts(given));
    at.person.look();
    CHECK(at.says("1 cut of another shop"));
    CHECK(at.others().empty());
    at.person.touch("Bring them in");
    REQUIRE(at.others().size() == 1);
    CHECK(at.person.app().book().shop.tests.size() == 1);
    CHECK(at.says("1 from 1 shop"));
    CHECK(at.person.app().worksheet().settings->feed.basis.others == 1);
    at.person.app().open_file(document::write_cuts(given));
    at.person.look();
    at.person.touch("Bring them in");
    CHECK(at.says("These cuts are in already."));
    CHECK(at.others().size() == 1);
    at.person.touch("Leave them");
    at.person.touch("Delete cuts of other shops");
    CHECK(at.others().empty());
    CHECK(at.person.app().worksheet().settings->feed.basis.others == 0);
}

TEST_CASE("what is no file of cuts is refused in a person's words") {
    AtLog at;
    at.person.app().open_file(R"({"torchside_cuts": 1, "cuts": [{"material": "wood"}]})");
    at.person.look();
    CHECK(at.says("This is not a file of test cuts, or it is damaged."));
    CHECK_FALSE(at.says("wood"));
    at.person.app().open_file(R"({"torchside_cuts": 9, "cuts": []})");
    at.person.look();
    CHECK(at.says("A newer Torchside wrote these cuts. Update first."));
    CHECK(at.others().empty());
}

TEST_CASE("the example's cuts are not given away") {
    browser() = {};
    keep_shop(true);
    Person person;
    person.touch_id("place/tune");
    person.app().open("give");
    person.look();
    CHECK(person.named("Save as a file") == nullptr);
}

TEST_CASE("how good the numbers are is said on a sheet that Shop and the figures lead to") {
    browser() = {};
    Person person;
    REQUIRE(person.app().take(own_book(), "A book"sv));
    person.app().open("figure/feed");
    person.look();
    person.touch("How good are the numbers?");
    CHECK(person.app().open_panel() == "evidence");
    CHECK(person.text().find("Every published cut we know") != std::string::npos);
    CHECK(person.text().find("S235U01") != std::string::npos);
    person.app().close();
    person.touch_id("place/shop");
    person.touch("How good are the numbers?");
    CHECK(person.app().open_panel() == "evidence");
}
