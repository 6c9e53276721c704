// What is typed and not taken stays in its field, marked, with what to enter, until it is corrected or dropped; what
// leaves the shop says so. And a share is typed and read back as a percentage.
#include <catch2/catch_test_macros.hpp>

#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace torchside::web;
using torchside::document::write_workbook;

namespace {

constexpr const char* tax = "field/job.quote.tax";

/// A person who has a panel of a place open.
struct At : Person {
    At(const char* place, const char* panel, float width = 360) : Person((browser() = {}, width)) {
        touch_id(place);
        app().open(panel);
        look();
    }
};

bool holds(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

/// Types letter by letter and leaves it at that.
void letters(Person& p, const char* id, std::string_view text) {
    p.touch_id(id);
    for (std::size_t i = 1; i <= text.size(); ++i) {
        p.app().ui().enter(id, text.substr(0, i), false);
        p.look();
    }
}

void leave(Person& p, const char* id, std::string_view text) {
    p.app().ui().leave(id, text);
    p.look();
}

void still_there(const Person& p, const char* id, std::string_view text, std::string_view ask) {
    REQUIRE(p.node(id) != nullptr);
    CHECK(p.node(id)->value == text);
    CHECK(holds(p.node(id)->state, "invalid"));
    CHECK(holds(p.node(id)->about, ask));
}

} // namespace

TEST_CASE("percent: typed as people say it, read back with its digits, kept as a share") {
    At p("place/quote", "terms");
    const struct {
        const char* typed;
        double kept;
        const char* read;
    } rows[] = {{"8.25", 0.0825, "8.25 %"},
                {"30", 0.3, "30 %"},
                {"30 %", 0.3, "30 %"},
                {"0,5 %", 0.005, "0.5 %"},
                {"0.3", 0.003, "0.3 %"}};
    for (const auto& row : rows) {
        p.type("Tax", row.typed);
        INFO(row.typed);
        CHECK(p.app().book().job.quote.tax == row.kept);
        CHECK(p.reads("Tax") == row.read);
    }
    p.touch_id(tax);
    p.app().ui().enter(tax, "0.3", false);
    p.look();
    CHECK(p.node(tax)->about == "0.3 % (for 30 %, type 30)");
}

TEST_CASE("percent: every field that is a share says its range in percent") {
    const struct {
        const char *place, *panel, *label, *ask;
    } rows[] = {{"place/shop", "machine", "Duty cycle", "Enter 5 to 100 %."},
                {"place/shop", "machine", "Efficiency", "Enter 50 to 98 %."},
                {"place/shop", "air", "Humidity", "Enter 0 to 100 %."},
                {"place/shop", "air", "Compressor duty", "Enter 10 to 100 %."},
                {"place/quote", "rates", "Margin", "Enter 0 to 90 %."},
                {"place/quote", "terms", "Tax", "Enter 0 to 50 %. Leave blank to print no tax line."}};
    for (const auto& row : rows) {
        At p(row.place, row.panel);
        p.type(row.label, "400");
        const Node* field = p.named(row.label);
        REQUIRE(field != nullptr);
        CHECK(field->about == row.ask);
        CHECK(holds(field->state, "invalid"));
    }
}

TEST_CASE("a refused field that was left keeps its words, marked, until it is corrected") {
    At p("place/quote", "terms");
    const std::string before = write_workbook(p.app().book());
    letters(p, tax, "8%5");
    leave(p, tax, "8%5");
    CHECK_FALSE(p.app().ui().edit());
    still_there(p, tax, "8%5", "Enter 0 to 50 %");
    CHECK(write_workbook(p.app().book()) == before);
    p.touch("Close");
    CHECK(holds(p.text(), "Tax was not changed"));
    p.touch_id("place/shop");
    CHECK(holds(p.text(), "Tax was not changed"));
    p.touch_id("draft"); // leads to the field, with what was typed
    REQUIRE(p.app().ui().edit());
    CHECK(p.app().ui().edit()->text == "8%5");
    p.app().ui().enter(tax, "8.25", true);
    p.look();
    CHECK(p.reads("Tax") == "8.25 %");
    CHECK_FALSE(holds(p.text(), "was not changed"));
}

TEST_CASE("left by Close, by another field or by another place, without a word to the field") {
    for (const char* way : {"close", "field", "place"}) {
        At p("place/quote", "terms", 800); // no keypad in the way
        letters(p, tax, "99");
        if (std::string_view(way) == "close") {
            p.touch("Close");
        } else if (std::string_view(way) == "field") {
            p.touch_id("field/job.name");
        } else {
            p.touch_id("place/cut");
        }
        p.touch_id("place/quote");
        p.app().open("terms");
        p.look();
        INFO(way);
        still_there(p, tax, "99", "Enter 0 to 50 %");
    }
}

TEST_CASE("what was typed before the refusal does not stand: 999 leaves 6, not 99") {
    At p("place/cut", "stock");
    const std::string before = write_workbook(p.app().book());
    letters(p, "stock/thickness", "999");
    CHECK(write_workbook(p.app().book()) == before);
    leave(p, "stock/thickness", "999");
    still_there(p, "stock/thickness", "999", "Enter 0.3 to 150 mm.");
    p.touch("Put back 6 mm");
    CHECK(p.node("stock/thickness")->value == "6 mm");
    CHECK_FALSE(holds(p.node("stock/thickness")->state, "invalid"));
}

TEST_CASE("a text that is too long stays, and Escape drops it") {
    At p("place/quote", "terms");
    const std::string name(61, 'x');
    const std::string before = write_workbook(p.app().book());
    p.touch_id("field/job.name");
    leave(p, "field/job.name", name);
    still_there(p, "field/job.name", name, "Enter up to 60 letters.");
    p.app().drop_draft("field/job.name");
    p.look();
    CHECK_FALSE(holds(p.node("field/job.name")->state, "invalid"));
    CHECK(write_workbook(p.app().book()) == before);
}

TEST_CASE("the sheet to the customer says what is not taken and what stands, and leads to the field") {
    At p("place/quote", "terms");
    p.type("Tax", "8");
    letters(p, tax, "88");
    leave(p, tax, "88");
    p.touch("Close");
    p.touch("Send to the customer");
    CHECK(holds(p.text(), "Tax was not changed: it stays 8 %."));
    p.touch("Correct it");
    REQUIRE(p.app().ui().edit());
    CHECK(p.app().ui().edit()->id == tax);
    p.app().drop_draft(tax);
    p.app().open("send");
    p.look();
    CHECK_FALSE(holds(p.text(), "was not changed"));
}

TEST_CASE("a value that comes another way drops the draft") {
    At p("place/cut", "stock");
    letters(p, "stock/current", "999");
    leave(p, "stock/current", "999");
    REQUIRE(p.app().drafts.first() != nullptr);
    p.touch("30 A");
    CHECK(p.app().drafts.first() == nullptr);
    CHECK(p.node("stock/current")->value == "30 A");
}

TEST_CASE("a refused value is there after a reload, and says so") {
    const std::string name(61, 'x');
    std::string typed;
    {
        At p("place/quote", "terms");
        p.type("Tax", "8");
        letters(p, tax, "8%5");
        leave(p, tax, "8%5");
        p.touch_id("field/job.name");
        leave(p, "field/job.name", name);
        p.hide();
        typed = browser().left.typed;
    }
    browser().fragment.clear();
    Person again;
    CHECK_FALSE(holds(again.text(), "was not changed"));
    again.app().notice("typed", typed);
    again.look();
    CHECK(holds(again.text(), "Tax was not changed: it stays 8 %."));
    again.touch_id("place/quote");
    again.app().open("terms");
    again.look();
    still_there(again, tax, "8%5", "Enter 0 to 50 %");
    still_there(again, "field/job.name", name, "Enter up to 60 letters.");
    again.touch("Put back 8 %");
    again.app().drop_draft("field/job.name");
    again.hide();
    CHECK(browser().left.typed.empty());
}

TEST_CASE("what a reload brings back of an entry that is no more, or of no known place, is left out") {
    browser() = {};
    Person p;
    for (const char* typed : {"a\x1fTax\x1f"
                              "99\x1fjob.no_such\x1fterms\x1f"
                              "3\x1e",
                              "a\x1fTax\x1f"
                              "99\x1fjob.quote.tax\x1fterms\x1f"
                              "9\x1e",
                              "a", "\x1e\x1f\x1e"}) {
        p.app().notice("typed", typed);
        p.look();
        CHECK(p.app().drafts.all().empty());
    }
}

TEST_CASE("no field is touched by looking at it: done without a letter changes nothing") {
    At p("place/shop", "table");
    const std::string before = write_workbook(p.app().book());
    for (const Node& n : std::vector<Node>(p.app().ui().tree().nodes())) {
        if (n.role == Role::textbox) {
            p.touch_id(n.id);
            p.app().ui().finish_edit();
            p.look();
        }
    }
    CHECK(write_workbook(p.app().book()) == before);
}

TEST_CASE("in a low window several refused entries are said one after the other, and the places stay in reach") {
    At p("place/quote", "terms");
    letters(p, tax, "99");
    leave(p, tax, "99");
    const std::string name(61, 'x');
    p.touch_id("field/job.name");
    leave(p, "field/job.name", name);
    p.app().open("rates");
    p.look();
    for (const char* rate : {"field/job.price.material_per_kg", "field/job.price.handling_min"}) {
        letters(p, rate, "9e9");
        leave(p, rate, "9e9");
    }
    p.touch("Close");
    p.touch_id("place/shop");
    const auto said = [&p](std::string_view part) {
        return holds(p.node("draft")->name + p.node("draft")->about, part);
    };
    REQUIRE(p.node("draft") != nullptr);
    CHECK(said("Tax was not changed"));
    CHECK(said("Part name was not changed"));
    p.resize(360, 225);
    p.look();
    REQUIRE(p.node("draft") != nullptr);
    CHECK(said("Tax was not changed"));
    CHECK(p.node("draft")->name == "Tax was not changed: it stays blank.");
    REQUIRE(p.node("place/cut") != nullptr);
    CHECK(p.node("place/cut")->seen.h > 0.9F * p.node("place/cut")->place.h);
    p.app().drop_draft(tax);
    p.look();
    CHECK(said("Part name was not changed"));
}
