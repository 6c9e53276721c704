// Quotes handed out: a person sends them, changes them, and looks at the list.
#include <catch2/catch_test_macros.hpp>

#include "core/link/link.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

bool says(const Person& person, std::string_view words) {
    return person.text().find(words) != std::string::npos;
}

struct Sender : Person {
    Sender() : Person() {
        app().open("send");
        look();
    }
    void copy() {
        touch("Copy the link");
        app().notice("copied", "");
        look();
    }
    [[nodiscard]] const std::vector<price::IssuedQuote>& issued() { return app().book().shop.issued; }
};

} // namespace

TEST_CASE("a quote is listed once it was really handed out, and once only") {
    browser() = {};
    keep_shop();
    Sender p;
    p.touch("Copy the link");
    CHECK(p.issued().empty()); // the browser has not answered yet
    p.app().notice("not-copied", "");
    p.app().notice("copied", ""); // of something else
    CHECK(p.issued().empty());
    p.copy();
    p.touch("Save the quote as one file");
    p.app().notice("saved", "quote-Q-118.html");
    p.look();
    CHECK(p.issued().size() == 1);
    CHECK(p.issued()[0].number == "Q-118");
    CHECK(p.issued()[0].issued_day == 20786);
    CHECK(says(p, "Q-118 went out on 29 Nov 2026. Nothing has changed since."));
    CHECK(document::open_quote_link(browser().copied[0]).value().revision == 0);
    p.touch("Copy the link");
    CHECK(browser().copied.front() == browser().copied.back());
}

TEST_CASE("the whole job's link and a QR code that is too long list nothing") {
    browser() = {};
    keep_shop();
    Sender p;
    p.touch("Show a QR code");
    p.app().notice("qr", "");
    CHECK(p.issued().empty());
    p.app().open("devices");
    p.look();
    p.copy();
    p.touch("Show a QR code");
    p.app().notice("qr", "1011");
    CHECK(p.issued().empty());
    p.app().open("send");
    p.look();
    CHECK(p.named("Hide the QR code") == nullptr); // what is shown to a customer was asked for
    p.touch("Show a QR code");
    p.app().notice("qr", "1011");
    CHECK(p.issued().size() == 1);
}

TEST_CASE("a changed quote is the next revision, and the sheet says so before it goes out") {
    browser() = {};
    keep_shop();
    Sender p;
    p.copy();
    REQUIRE(p.app().set("job.quote.note", "Painted", "Note"sv));
    p.look();
    CHECK(says(p, "Q-118 went out on 29 Nov 2026 and has changed since: this goes out as revision B."));
    p.copy();
    CHECK(document::open_quote_link(browser().copied.back()).value().revision == 1);
    REQUIRE(p.issued().size() == 2);
    CHECK(p.issued()[1].revision == 1);
    CHECK(says(p, "Q-118 revision B went out on 29 Nov 2026. Nothing has changed since."));
    p.app().open("issued");
    p.look();
    CHECK(says(p, "Q-118 revision B"));
    CHECK(says(p, "replaced by revision B"));
}

TEST_CASE("a number used for another part is said, and the next free one is a touch away") {
    browser() = {};
    keep_shop();
    Sender p;
    p.copy();
    REQUIRE(p.app().set("job.name", "Gusset", "Name"sv));
    p.look();
    CHECK(says(p,
               "Number used twice: Q-118 went out on 29 Nov 2026 for Handrail base plate. Take the next free number, "
               "or this goes out as revision B."));
    p.touch("Use number Q-119");
    CHECK(p.app().book().job.quote.number == "Q-119");
    CHECK_FALSE(says(p, "Number used twice"));
    p.copy();
    CHECK(p.issued().back().number == "Q-119");
    CHECK(p.issued().back().revision == 0);
}

TEST_CASE("a quote that ran out goes out as a revision of today") {
    browser() = {};
    keep_shop();
    Sender p;
    p.copy();
    Workbook old = p.app().book();
    old.shop.issued[0].issued_day -= 400;
    REQUIRE(p.app().take(old, "A year ago"sv));
    p.look();
    CHECK(says(p, "Q-118 went out on 25 Oct 2025 and has expired: this goes out as revision B."));
    p.app().open("issued");
    p.look();
    CHECK(says(p, "expired on 24 Nov 2025"));
}

TEST_CASE("undo, another shop and a job from a link leave the list and the keys alone; a backup carries them") {
    browser() = {};
    keep_shop();
    Sender p;
    REQUIRE(p.app().set("job.quantity", 5, "Quantity"sv));
    p.app().set_beside("shop.seal_key", std::string_view(std::string(64, 'b')));
    p.look();
    p.copy();
    p.app().undo();
    p.look();
    CHECK(p.issued().size() == 1);
    p.app().undo();
    p.look();
    CHECK(p.issued().size() == 1);
    Workbook sent;
    sent.shop.name = "Somebody";
    p.app().notice("route", "#" + document::job_link(sent));
    p.look();
    p.touch("Keep job and shop");
    CHECK(p.app().book().shop.name == "Somebody");
    CHECK(p.issued().size() == 1);
    CHECK(p.app().book().shop.seal_key == std::string(64, 'b'));
    CHECK(document::open_job_link(document::job_link(p.app().book())).value().shop.issued.empty());
}

TEST_CASE("the list of an empty shop and of the example") {
    browser() = {};
    keep_shop();
    Person p;
    p.touch_id("place/quote");
    p.touch_id("quote/open/issued");
    CHECK(says(p, "None yet."));
    CHECK(p.named("Make a new seal key") == nullptr); // there is none yet
    browser() = {};
    keep_shop(true);
    Person q;
    q.touch_id("place/quote");
    q.touch_id("quote/open/issued");
    CHECK(says(q, "Nothing of the example shop can be sent."));
}

TEST_CASE("a new key is made after a question, and undone") {
    browser() = {};
    keep_shop();
    browser().can_seal = true;
    Person p;
    p.app().set_beside("shop.seal_key", std::string_view(std::string(64, 'b')));
    p.app().open("issued");
    p.look();
    p.touch("Make a new seal key");
    CHECK(p.app().book().shop.old_keys.empty());
    p.touch("Keep this key");
    CHECK(p.app().book().shop.seal_key == std::string(64, 'b'));
    p.touch("Make a new seal key");
    p.touch("Make the new key");
    CHECK(p.app().book().shop.seal_key == std::string(64, 'a'));
    REQUIRE(p.app().book().shop.old_keys.size() == 1);
    CHECK(p.app().book().shop.old_keys[0].seal_key == std::string(64, 'b'));
    CHECK(says(p, "One older key can still check what it sealed."));
    CHECK(p.app().change()->name == "New seal key");
    p.touch("Undo");
    CHECK(p.app().book().shop.seal_key == std::string(64, 'b'));
}

TEST_CASE("a long list is shown in part") {
    browser() = {};
    keep_shop();
    Person p;
    Workbook book = p.app().book();
    for (int i = 0; i < 500; ++i) {
        book.shop.issued.push_back({"Q-" + std::to_string(i), 0,
                                    "A part with quite a long name, of 60 letters and no more at all", 1e12, "USD",
                                    20786, 30, "abcdefgh", ""});
    }
    for (price::IssuedQuote& row : book.shop.issued) {
        row.part_name.resize(60);
    }
    REQUIRE(p.app().take(book, "Many"sv));
    p.app().open("issued");
    p.look();
    CHECK(says(p, "Q-499"));
    CHECK(says(p, "450 older ones are kept too."));
    CHECK_FALSE(says(p, "Q-449\n"));
}
