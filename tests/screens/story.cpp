// One state, one story: random workbooks drawn through every place and panel. A figure reads the same wherever it stands,
// a plate that is refused is refused everywhere, and a missing price has one reason.
#include <algorithm>
#include <map>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/worksheet/hindrance.hpp"
#include "tests/core/said.hpp"
#include "tests/property/random_workbook.hpp"
#include "tests/screens/person.hpp"
#include "tools/cli/results/chart.hpp"
#include "web/screens/show.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

constexpr Page places[] = {Page::cut, Page::tune, Page::part, Page::quote, Page::shop};
constexpr const char* panels[] = {"stock",
                                  "circuit",
                                  "air",
                                  "reach",
                                  "shape",
                                  "time",
                                  "safety",
                                  "costs",
                                  "breaks",
                                  "wear",
                                  "rates",
                                  "send",
                                  "plate",
                                  "read",
                                  "coupon",
                                  "log",
                                  "height",
                                  "figure/feed",
                                  "figure/arc",
                                  "figure/pierce_height",
                                  "figure/pierce_delay",
                                  "figure/kerf",
                                  "figure/lead_in",
                                  "figure/min_hole"};

/// All that one workbook says on all screens: nodes by "screen id".
class Story {
public:
    Story(Person& person, Workbook book) : app_(person.app()) {
        book.shop.example = false; // of which nothing can be sent
        REQUIRE(app_.take(std::move(book), "A book"sv));
        app_.scratch.inputs = {};
        for (std::size_t i = 0; i < std::size(places); ++i) {
            app_.go(places[i]);
            person.look();
            keep(std::string(place_names[i]));
        }
        app_.go(Page::cut);
        for (const char* panel : panels) {
            app_.open(panel);
            person.look();
            keep(panel);
        }
        constexpr const char* charts[] = {"chart/feed", "chart/arc", "chart/pierce_delay", "chart/kerf"};
        for (int i = 0; i < 4; ++i) {
            app_.scratch.chart_figure = static_cast<ChartFigure>(i);
            app_.open("chart");
            person.look();
            keep(charts[i]);
        }
        app_.close();
    }

    [[nodiscard]] const Node* find(const std::string& screen, const std::string& id) const {
        const auto at = nodes_.find(screen + ' ' + id);
        return at == nodes_.end() ? nullptr : &at->second;
    }
    /// Its value; "-" when it is not there.
    [[nodiscard]] std::string value(const std::string& screen, const std::string& id) const {
        const Node* node = find(screen, id);
        return node == nullptr ? "-" : node->value;
    }
    [[nodiscard]] std::string name(const std::string& screen, const std::string& id) const {
        const Node* node = find(screen, id);
        return node == nullptr ? "-" : node->name;
    }
    /// Name, value and description of every node, each with its screen.
    [[nodiscard]] std::vector<std::string> texts() const {
        std::vector<std::string> out;
        for (const auto& [key, node] : nodes_) {
            out.push_back(key + ": " + node.name + " | " + node.value + " | " + node.about);
        }
        return out;
    }
    /// The text of the chart's cell of this job, "" when the chart has none.
    [[nodiscard]] std::string chart(const std::string& figure) const {
        for (const auto& [key, node] : nodes_) {
            if (key.starts_with("chart/" + figure + " chart/") && node.state == "selected") {
                return node.value;
            }
        }
        return {};
    }
    [[nodiscard]] bool says(std::string_view words) const {
        const auto all = texts();
        return std::any_of(all.begin(), all.end(),
                           [&](const std::string& text) { return text.find(words) != std::string::npos; });
    }

private:
    void keep(const std::string& screen) {
        for (const Node& node : app_.ui().tree().nodes()) {
            nodes_[screen + ' ' + std::string(node.id)] = node;
        }
    }

    static constexpr const char* place_names[] = {"cut", "tune", "part", "quote", "shop"};
    App& app_;
    std::map<std::string, Node> nodes_;
};

void check_settings(const Story& story, const App& app) {
    const cut::Settings& s = *app.worksheet().settings;
    const std::string feed = show_feed(app, s.feed.value).whole();
    const std::string number = show_feed(app, s.feed.value).number;
    CHECK(story.value("cut", "cut/feed").starts_with(feed));
    CHECK(story.name("cut", "live").ends_with("Feed " + feed)); // after what was changed last
    CHECK(story.value("figure/feed", "figure/value") == feed);
    INFO(feed << " on Cut; " << story.value("figure/feed", "trail/table") << "; "
              << story.value("figure/feed", "trail/own"));
    CHECK(story.value("figure/feed", s.feed_capped ? "trail/table" : "trail/own").starts_with(feed + ','));
    const std::string tested = story.value("tune", "tune/next");
    CHECK((tested == "-" || tested == feed ||
           story.name("tune", "tune/cut").starts_with("The Cut tab shows " + feed + ": ")));
    const std::string charted = story.chart("feed");
    CHECK((charted.empty() || charted == number));
    for (const char* key : {"arc", "pierce_height", "kerf", "lead_in", "min_hole", "pierce_delay"}) {
        const std::string there = story.value(std::string("figure/") + key, "figure/value");
        const std::string here = story.value("cut", std::string("cut/") + key);
        INFO(key << ": " << here << " on Cut, " << there << " in its sheet");
        CHECK((here.starts_with(there) || (there == "Edge start: no pierce" && !s.pierce_delay)));
        const std::string cell = story.chart(key);
        CAPTURE(cell);
        CHECK((cell.empty() || here.starts_with(cell)));
    }
    const bool divided = app.book().shop.height_control.divider_ratio > 1;
    const std::string controller = show(s.controller, app.units()).whole();
    CHECK((story.value("figure/arc", "figure/controller") == controller) == divided);
    CHECK(story.name("height", "height/reading").find("torch is at " + show(s.arc.value, app.units()).whole()) !=
          std::string::npos);
    CHECK(story.name("height", "height/reading").find("reads " + controller) != std::string::npos);
}

void check_rows(const Story& story, const App& app) {
    const auto row = [&](const char* id) {
        const Node* node = story.find("cut", std::string("cut/verdict/") + id);
        REQUIRE(node != nullptr);
        return *node;
    };
    const supply::Report& circuit = app.worksheet().circuit;
    CHECK(test::summary(circuit.message, app.book().shop.display.units).starts_with(row("circuit").name));
    CHECK(story.name("circuit", "circuit/summary") == test::summary(circuit.message, app.book().shop.display.units));
    if (circuit.highest_current) {
        const std::string highest = story.value("circuit", "circuit/highest");
        const std::string about = row("circuit").about;
        const bool named = about.find("Use at most ") != std::string::npos ||
                           about.find(" here, but this machine") != std::string::npos;
        INFO(about << " against " << highest);
        CHECK((!named || about.find(highest) != std::string::npos));
    }
    CHECK(test::summary(app.worksheet().air.message, app.book().shop.display.units).starts_with(row("air").name));
    CHECK(story.name("air", "air/summary") ==
          test::summary(app.worksheet().air.message, app.book().shop.display.units));
    const cut::Capacity& c = app.worksheet().capacity;
    const UnitSystem units = app.book().shop.display.units;
    for (const auto& [id, limit] : {std::pair{"reach/recommended", c.recommended}, std::pair{"reach/clean", c.clean},
                                    std::pair{"reach/pierce", c.pierce}, std::pair{"reach/sever", c.sever}}) {
        const std::string there = story.value("reach", id);
        CHECK(there.starts_with(show_limit(limit, units).whole() + " at "));
        CHECK(row("plate").about.find(show_limit(limit, units).number) != std::string::npos);
    }
    // What is shown promises nothing that the verdict takes back.
    const double clean_mm = std::floor(c.clean.in(mm)*10) / 10;
    CHECK((c.verdict <= cut::Reach::edge_start || app.book().job.thickness.in(mm) > clean_mm));
}

void check_price(const Story& story, const App& app) {
    const price::Report& price = *app.worksheet().price;
    const std::string total = price::print(price.total, price.decimals);
    CHECK(story.value("quote", "quote/total").starts_with(total));
    CHECK(story.value("costs", "costs/total") == with_currency(total, app.book().shop.rates.currency));
    CHECK(story.value("breaks", "breaks/" + std::to_string(app.book().job.quantity)) == total);
    CHECK(story.value("quote", "quote/hold").starts_with(story.value("wear", "wear/hold")));
    CHECK(story.name("rates", "rates/margin") == app.say(price.margin_text));
    CHECK(story.value("part", "part/time").starts_with(story.value("time", "time/total")));
    CHECK(story.value("part", "part/batch").starts_with(story.value("time", "time/batch")));
    CHECK(story.value("part", "part/starts").starts_with(story.value("time", "time/starts")));
    const std::string slow = story.value("part", "part/slow");
    const std::string about = story.name("time", "time/slow");
    CHECK((about.find("Expect dross") == std::string::npos) == slow.starts_with("0 "));
    CHECK((slow.starts_with("0 ") || about.starts_with(slow)));
    const wear::Report& wear = app.worksheet().wear;
    const bool through = story.find("quote", "quote/verdict/wear") != nullptr;
    CHECK(through == (story.value("wear", "wear/change") == "Not in this batch" && !wear.outlived));
}

/// Nothing can be cut: no screen acts as if.
void check_nothing(const Story& story, const App& app) {
    const std::string reason = app.say(hindrance(app.book(), app.worksheet())->reason);
    INFO("the reason is " << reason);
    CHECK(story.name("quote", "quote/none") == "No price: " + reason);
    for (const char* screen : {"costs", "breaks"}) {
        CHECK(story.name(screen, std::string(screen) + "/none") == "No price: " + reason + '.');
    }
    CHECK(story.name("send", "send/none") == "No price: " + reason + '.');
    CHECK(story.name("time", "time/none") == "No time: " + reason + '.');
    const Node* row = story.find("part", "part/verdict/hindrance");
    REQUIRE(row != nullptr);
    CHECK(row->about.starts_with("stop"));
    CHECK(story.name("wear", "wear/none").find(reason) != std::string::npos);
    for (const char* claim : {"can be cut as drawn", "will last the batch", "This job is cut", "good (smallest",
                              "nothing to cut", "Chance of a clean cut"}) {
        INFO("claims: " << claim);
        const bool tune = std::string_view(claim) == "Chance of a clean cut" && app.worksheet().settings;
        CHECK((tune || !story.says(claim)));
    }
    for (const char* id : {"quote/total", "quote/hold"}) {
        CHECK(story.find("quote", id) == nullptr);
    }
    CHECK(story.find("wear", "wear/cut") == nullptr);
    CHECK(story.find("wear", "wear/job") == nullptr);
    CHECK(story.find("part", "part/time") == nullptr);
}

void check_refused(const Story& story, const App& app) {
    CHECK(story.find("cut", "cut/feed") == nullptr);
    const Node* row = story.find("cut", "cut/verdict/plate");
    REQUIRE(row != nullptr);
    CHECK(row->name == app.say(hindrance(app.book(), app.worksheet())->reason));
    CHECK(story.find("tune", "tune/next") == nullptr);
    CHECK(story.find("tune", "tune/clean") == nullptr);
    const Node* log = story.find("read", "read/log");
    CHECK((log == nullptr || log->state.find("disabled") != std::string::npos));
    CHECK(story.find("coupon", "coupon/save") == nullptr);
    CHECK(story.chart("feed").find_first_of("0123456789") == std::string::npos);
    CHECK_FALSE(story.says("to measure"));
}

} // namespace

TEST_CASE("two hundred workbooks tell one story on every screen") {
    browser() = {};
    Person person;
    test::Rng rng(2026);
    int priced = 0;
    int refused = 0;
    int nothing = 0;
    for (int i = 0; i < 200; ++i) {
        const Workbook book = test::random_workbook(rng);
        const Story story(person, book);
        const App& app = person.app();
        INFO("workbook " << i);
        check_rows(story, app);
        if (app.worksheet().settings) {
            check_settings(story, app);
        } else {
            check_refused(story, app);
            ++refused;
        }
        if (app.worksheet().price) {
            check_price(story, app);
            ++priced;
        } else {
            check_nothing(story, app);
            ++nothing;
        }
    }
    CHECK(priced > 20);
    CHECK(refused > 20);
    CHECK(nothing > refused);
}

TEST_CASE("the chart as a file has the feed that Cut shows") {
    browser() = {};
    Person person;
    const std::string csv = cli::chart_csv(person.app().chart(), UnitSystem::metric);
    const std::string feed = show_feed(person.app(), person.app().worksheet().settings->feed.value).number;
    CHECK(csv.find("," + feed + ",") != std::string::npos);
}

TEST_CASE("a plate past reach is refused by every screen") {
    browser() = {};
    Person person;
    Workbook book = person.app().book();
    book.job.thickness = Length{99, mm};
    const Story story(person, book);
    check_refused(story, person.app());
    check_nothing(story, person.app());
    person.app().go(Page::part);
    person.look();
    person.touch("Hole 2"); // its sizes: there is no kerf to say what comes out
    CHECK(person.text().find("No sizes as cut: 45 A does not sever this plate.") != std::string::npos);
}

TEST_CASE("typing 999 leaves the thickness that was there") {
    browser() = {};
    Person person;
    const double before = person.app().book().job.thickness.in(mm);
    person.touch("Thickness");
    for (int i = 0; i < 3; ++i) {
        person.app().ui().type("9");
        person.look();
    }
    CHECK(person.app().book().job.thickness.in(mm) == before);
    person.app().ui().finish_edit();
    person.look();
    CHECK(person.app().book().job.thickness.in(mm) == before);
    CHECK(person.app().ui().edit()); // refused: its words stay
    person.app().ui().type("\b");
    person.look();
    CHECK(person.app().book().job.thickness.in(mm) == 99);
}

TEST_CASE("2.7 V through 50:1 is answered in four touches") {
    browser() = {};
    Person person;
    Workbook book = person.app().book();
    book.shop.height_control.divider_ratio = 50;
    REQUIRE(person.app().take(book, "A book"sv));
    person.look();
    person.touch("Arc volts");
    for (const char* key : {"2", ".", "7"}) {
        person.app().ui().type(key);
        person.look();
    }
    CHECK(person.named("Controller reads") != nullptr);
    CHECK(person.text().find("2.7 V × 50 = 135 V") != std::string::npos);
}

TEST_CASE("an enlarged part never leaves its view") {
    browser() = {};
    Person person;
    person.app().go(Page::part);
    person.look();
    for (int i = 0; i < 6; ++i) {
        person.touch("+");
    }
    Ui& ui = person.app().ui();
    const auto region =
        std::find_if(ui.regions.begin(), ui.regions.end(), [](const Region& r) { return r.name == "part/view"; });
    REQUIRE(region != ui.regions.end());
    for (const Point far : {Point{-1e6F, -1e6F}, Point{1e6F, -1e6F}, Point{1e6F, 1e6F}, Point{-1e6F, 1e6F}}) {
        region->offset = far;
        region->clamp();
        person.look();
        const Node* part = person.node("part/contour/0");
        REQUIRE(part != nullptr);
        const Point middle = region->view.centre();
        CHECK(part->place.inset(-2).holds(middle));
        CHECK(person.node("part/where") != nullptr);
    }
    person.touch("Fit");
    CHECK(person.node("part/where") == nullptr);
}

TEST_CASE("a file that is no backup is refused in plain words, and nothing changes") {
    browser() = {};
    Person person;
    const Workbook before = person.app().book();
    for (const char* text : {"hello", "{\"a\": 1}", "[1]", "{\"torchside\": 1, \"job\": {\"current_a\": -4}}"}) {
        person.app().open_file(text);
        person.look();
        CHECK(person.app().open_panel() == "kept");
        CHECK(person.text().find("Nothing was changed.") != std::string::npos);
        CHECK(person.text().find("schema") == std::string::npos);
        CHECK(person.text().find("job.") == std::string::npos);
        CHECK(test::same(before, person.app().book()));
    }
}
