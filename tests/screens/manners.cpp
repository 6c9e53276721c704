// What a phone and a desk expect: hold to copy, pull for what is new, recent stocks, vibration, share, install, edges, pasted rows.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

Point middle_of(const Person& person, std::string_view id) {
    const Node* node = person.node(id);
    REQUIRE(node != nullptr);
    return node->seen.centre();
}

void press(Person& person, Point at, double ms) {
    person.app().pointer_down(at, 5000);
    person.app().pointer_up(at, 5000 + ms);
    person.look();
}

void pull(Person& person, float from, float by, float aside = 0) {
    person.app().pointer_down({180, from}, 5000);
    for (int i = 1; i <= 10; ++i) {
        const auto part = static_cast<float>(i) / 10;
        person.app().pointer_move({180 + aside * part, from + by * part}, 5000 + 20 * i);
    }
    person.look();
}

void paste(Person& person, std::string_view text) {
    person.app().notice("pasted", text);
    person.look();
}

} // namespace

TEST_CASE("a figure that is held is copied and says so; a tap opens it as before") {
    browser() = {};
    keep_shop();
    Person person;
    const std::string feed = person.reads("Feed");
    press(person, middle_of(person, "cut/feed"), 700);
    REQUIRE(browser().copied.size() == 1);
    CHECK(browser().copied[0] == feed);
    CHECK(person.app().open_panel().empty());
    person.app().notice("copied", "");
    person.look();
    REQUIRE(person.node("said") != nullptr);
    CHECK(person.node("said")->name == "Copied: Feed " + feed);
    press(person, middle_of(person, "cut/kerf"), 700);
    CHECK(browser().copied.size() == 2);
    press(person, middle_of(person, "title/metal"), 700); // no figure: a slow touch is a touch
    CHECK(person.app().open_panel() == "stock");
    person.app().close();
    person.look();
    press(person, middle_of(person, "cut/feed"), 200);
    CHECK(person.app().open_panel() == "figure/feed");
    person.touch("Copy this figure"); // the same without holding
    CHECK(browser().copied.size() == 3);
    CHECK(browser().copied[2] == feed);
}

TEST_CASE(
    "pulled down at the top, the page shows what is new; a short pull, a slanted one or one in a panel does not") {
    browser() = {};
    keep_shop();
    Person person;
    const auto let_go = [&](Point at) {
        person.app().pointer_up(at, 6000);
        person.look();
        const bool open = person.app().open_panel() == "news";
        person.app().close();
        person.look();
        return open;
    };
    pull(person, 200, 60);
    CHECK_FALSE(let_go({180, 260}));
    pull(person, 200, 160);
    CHECK(let_go({180, 360}));
    pull(person, 200, 160, 140);
    CHECK_FALSE(let_go({320, 360}));
    person.app().open("circuit");
    person.look();
    pull(person, 300, 160);
    CHECK_FALSE(let_go({180, 460}));
    person.app().pointer_down({180, 500}, 7000); // scrolled on, the top is not what is pulled
    for (int i = 1; i <= 10; ++i) {
        person.app().pointer_move({180, 500.0F - 20.0F * static_cast<float>(i)}, 7000 + 50 * i);
    }
    person.app().pointer_up({180, 300}, 7800);
    person.look();
    pull(person, 200, 160);
    CHECK_FALSE(let_go({180, 360}));
    browser().fine_pointer = true; // a mouse drags no page down
    Person desk;
    pull(desk, 200, 160);
    desk.app().pointer_up({180, 360}, 6000);
    desk.look();
    CHECK(desk.app().open_panel().empty());
}

TEST_CASE("what is new: the waiting version's own words, and the way to it") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().notice("update-ready", "");
    person.look();
    REQUIRE(person.node("notice/update") != nullptr);
    person.app().notice("update-ready", "One thing. Another thing.");
    person.look();
    CHECK(person.node("notice/update")->about.find("One thing. Another thing.") == 0);
    person.app().open("news");
    person.look();
    CHECK(person.text().find("One thing. Another thing.") != std::string::npos);
    CHECK(person.node("news/update") != nullptr);
    CHECK(person.node("news/first") != nullptr);
}

TEST_CASE("recent stocks stand on the stock sheet, on this device alone, and one touch brings one back") {
    browser() = {};
    keep_shop();
    {
        Person person;
        person.app().open("stock");
        person.look();
        CHECK(person.node("stock/recent") == nullptr); // none yet
        person.app().set("job.thickness_mm", 12.0, "Test"sv);
        person.app().set("job.thickness_mm", 3.0, "Test"sv); // only tried: it was not gone on with
        person.app().close();
        person.look();
        person.app().open("stock");
        person.look();
        REQUIRE(person.node("stock/recent/0") != nullptr);
        CHECK(person.node("stock/recent/0")->name == "Mild steel, 6 mm, 45 A");
        CHECK(person.node("stock/recent/1") == nullptr);
        person.hide();
    }
    Person later;
    later.app().open("stock");
    later.look();
    REQUIRE(later.node("stock/recent/0") != nullptr);
    later.touch_id("stock/recent/0");
    CHECK(later.app().book().job.thickness.in(mm) == 6);
    CHECK(later.app().change()->name == "Mild steel, 6 mm, 45 A");
    for (const double plate : {1.0, 2.0, 4.0, 8.0, 10.0, 12.0}) {
        later.app().set("job.thickness_mm", plate, "Test"sv);
        later.app().close();
    }
    later.app().open("stock");
    later.look();
    CHECK(later.node("stock/recent/3") != nullptr);
    CHECK(later.node("stock/recent/4") == nullptr);
    browser().device["stocks"] = "nonsense\tx\ny\ncopper\t9999\t45\ncopper\t5\t45\n"; // what is kept may be anything
    Person other;
    other.app().open("stock");
    other.look();
    REQUIRE(other.node("stock/recent/0") != nullptr);
    CHECK(other.node("stock/recent/0")->name == "Copper, 5 mm, 45 A");
    CHECK(other.node("stock/recent/1") == nullptr);
}

TEST_CASE("a phone vibrates when a change brings a warning, once, and not when the user turned it off") {
    browser() = {};
    keep_shop();
    Person person;
    REQUIRE(person.app().set("job.thickness_mm", 8.0, "Test"sv));
    person.look();
    const std::size_t before = browser().vibrated.size();
    REQUIRE(person.app().set("job.thickness_mm", 120.0, "Test"sv)); // out of reach
    person.look();
    CHECK(browser().vibrated.size() == before + 1);
    person.look();
    CHECK(browser().vibrated.size() == before + 1);
    REQUIRE(person.app().set("job.quantity", 25.0, "Test"sv)); // no other warning
    person.look();
    CHECK(browser().vibrated.size() == before + 1);
    REQUIRE(person.app().set("job.thickness_mm", 6.0, "Test"sv));
    person.look();
    const std::size_t mended = browser().vibrated.size();
    person.app().go(Page::shop);
    person.app().open("screen");
    person.look();
    person.touch("Vibration");
    REQUIRE(person.app().set("job.thickness_mm", 120.0, "Test"sv));
    person.look();
    CHECK(browser().vibrated.size() == mended);
    CHECK_FALSE(person.app().book().shop.display.vibration);
}

TEST_CASE("a change says that it is saved, and a screen reader hears it once") {
    browser() = {};
    keep_shop();
    Person person;
    REQUIRE(person.app().set("job.quantity", 25.0, "Test"sv));
    person.look();
    CHECK(person.node("change/saved") == nullptr); // not yet
    person.wait(400);
    person.app().ui().stop_edit();
    person.look();
    const Node* sign = person.node("change/saved");
    REQUIRE(sign != nullptr);
    CHECK(sign->name == "Saved");
    REQUIRE(person.app().set("job.quantity", 26.0, "Test"sv));
    person.look();
    person.wait(400);
    person.look();
    REQUIRE(person.node("change/saved") != nullptr);
    CHECK(person.node("change/saved")->role == Role::text);
}

TEST_CASE("settings and the quote's file go to the share sheet where there is one, else they are copied and saved") {
    browser() = {};
    keep_shop();
    Person person;
    CHECK(person.named("Share settings as text") == nullptr);
    CHECK(person.named("Copy settings as text") != nullptr);
    browser().can_share = true;
    person.look();
    person.touch("Share settings as text");
    REQUIRE(browser().shared_texts.size() == 1);
    CHECK(browser().shared_texts[0].find("Feed: ") != std::string::npos);
    person.app().go(Page::quote);
    person.app().open("send");
    person.look();
    person.touch("Share the quote as one file");
    REQUIRE(browser().shared_files.size() == 1);
    CHECK(browser().shared_files[0].ends_with(".html"));
    person.app().notice("shared", "");
    person.look();
    CHECK(person.app().book().shop.issued.size() == 1); // handed out
}

TEST_CASE("the offer to install is a row that comes when the page says so and goes when it is done") {
    browser() = {};
    keep_shop();
    Person person;
    CHECK(person.named("Install on this device") == nullptr);
    person.app().notice("may-install", "");
    person.look();
    person.touch("Install on this device");
    CHECK(browser().installs == 1);
    person.app().notice("installed", "");
    person.look();
    CHECK(person.named("Install on this device") == nullptr);
}

TEST_CASE("the edges of columns are dragged and moved by keys, within reason, and remembered") {
    browser() = {};
    keep_shop();
    browser().fine_pointer = true;
    {
        Person person(1440, 900);
        const Point edge = middle_of(person, "edge/first");
        person.app().pointer_down(edge, 100);
        person.app().pointer_move({edge.x + 40, edge.y}, 120);
        person.app().pointer_move({edge.x + 60, edge.y}, 140);
        person.app().pointer_up({edge.x + 60, edge.y}, 160);
        person.look();
        CHECK(person.app().widths().first == 420);
        CHECK(person.node("cut")->place.w == 420);
        person.app().notice("edge", "edge/last -16");
        person.look();
        CHECK(person.app().widths().last == 456);
        person.app().notice("edge", "edge/first 2000");
        person.look();
        CHECK(person.app().widths().first + person.app().widths().last <= 1440 - 290);
        person.app().notice("edge", "edge/first");
        person.look();
        CHECK(person.app().widths().first == 360);
        person.app().notice("edge", "edge/first 25");
    }
    Person again(1440, 900);
    CHECK(again.app().widths().first == 385);
    CHECK(again.app().widths().last == 456);
    again.resize(768, 900);
    CHECK(again.node("edge/last") == nullptr);
    CHECK(again.node("edge/first") != nullptr);
    again.resize(360, 740);
    CHECK(again.node("edge/first") == nullptr);
    browser().fine_pointer = false; // too thin for a finger
    again.resize(1440, 900);
    CHECK(again.node("edge/first") == nullptr);
}

TEST_CASE("rows pasted on the log are logged, said and undone; elsewhere the page says where to paste") {
    browser() = {};
    keep_shop();
    Person person(1440, 900);
    const std::size_t before = person.app().book().shop.tests.size();
    paste(person, "6\t45\t1500\tclean");
    CHECK(person.app().book().shop.tests.size() == before);
    CHECK(person.app().said().find("open the log") != std::string::npos);
    person.touch("Tune");
    paste(person, "6\t45\t1500\tclean\n8\t45\t1000\ttoo fast\n");
    CHECK(person.app().book().shop.tests.size() == before + 2);
    CHECK(person.app().said() == "2 cuts logged. Last: 8 mm, 45 A, 1000 mm/min, too fast");
    paste(person, "6\t45\tx");
    CHECK(person.app().book().shop.tests.size() == before + 2);
    CHECK(person.app().said().find("Row 1, Feed: Enter 10 to ") != std::string::npos);
    person.touch("Undo");
    CHECK(person.app().book().shop.tests.size() == before);
    person.touch("Paste rows from a spreadsheet");
    CHECK(browser().pastes == 1);
    person.app().notice("no-clipboard", "");
    person.look();
    CHECK(person.app().said().find("Ctrl+V") != std::string::npos);
}

TEST_CASE("log, chart and jobs are saved as tables with their units in the heads, and a typed formula runs nowhere") {
    browser() = {};
    keep_shop();
    Person person;
    person.app().set("job.name", std::string_view("=1+1"), "Test"sv);
    const auto saved = [&](const char* name) {
        person.touch("Find");
        person.app().ui().enter("find/text", name, false);
        person.look();
        person.touch(name);
        const auto file = browser().downloaded.back();
        CHECK(file.type.find("text/csv") == 0);
        CHECK(file.text.starts_with("\xEF\xBB\xBF"));
        CHECK(file.text.ends_with("\r\n"));
        return file.text.substr(3);
    };
    const std::string log = saved("Save the log as a table");
    CHECK(log.find("Metal,Thickness (mm),Current (A),Feed (mm/min),The cut was,") == 0);
    CHECK(std::count(log.begin(), log.end(), '\n') == static_cast<long>(person.app().book().shop.tests.size()) + 1);
    const std::string chart = saved("Save the chart as a table");
    CHECK(chart.find("Metal,Plate (mm),Current (A),Nozzle (A),Reach,Feed (mm/min),") == 0);
    const auto& made = person.app().chart();
    CHECK(std::count(chart.begin(), chart.end(), '\n') == static_cast<long>(made.cells.size()) + 1);
    const auto commas = [](const std::string& text, std::size_t from) {
        return std::count(text.begin() + static_cast<long>(from),
                          text.begin() + static_cast<long>(text.find('\n', from)), ',');
    };
    for (std::size_t at = 0; at < chart.size(); at = chart.find('\n', at) + 1) {
        CHECK(commas(chart, at) == commas(chart, 0));
    }
    const std::string jobs = saved("Save jobs and quotes as a table");
    CHECK(jobs.find("\r\n'=1+1,Mild steel,6,45,24,") != std::string::npos);
    person.app().set("shop.display.units", "inch", "Test"sv);
    person.look();
    CHECK(saved("Save the log as a table").find("Metal,Thickness (in),Current (A),Feed (in/min),") == 0);
}
