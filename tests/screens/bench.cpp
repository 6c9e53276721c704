// At the table: one touch away, figures that are large and black enough, cards that log, a swipe that water does not make, countdowns
// that draw a frame a second and speak twice, and a screen that says whether it stays on.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <initializer_list>
#include <set>
#include <string>
#include <vector>

#include "core/supply/load.hpp"
#include "tests/screens/person.hpp"
#include "web/kit/theme.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

/// WCAG 2: the relative luminance of a colour, and the contrast of two.
double luminance(Colour c) {
    const auto linear = [](unsigned channel) {
        const double v = channel / 255.0;
        return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(c.rgb >> 16 & 0xFF) + 0.7152 * linear(c.rgb >> 8 & 0xFF) + 0.0722 * linear(c.rgb & 0xFF);
}
double contrast(Colour a, Colour b) {
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

/// A shop of one's own, at the table.
struct AtTable {
    Person person;

    explicit AtTable(float width = 360, float height = 740) : person((browser() = {}, keep_shop(), width), height) {
        person.touch("At the table");
    }
    [[nodiscard]] const Workbook& book() { return person.app().book(); }
    [[nodiscard]] std::string says(std::string_view id) {
        const Node* node = person.node(id);
        return node == nullptr ? "-" : node->role == Role::status ? node->name : node->value;
    }
    [[nodiscard]] double mm_thick() { return book().job.thickness.in(mm); }

    /// A finger seen at these places, so many ms apart.
    void finger(std::initializer_list<Point> places, double apart) {
        App& app = person.app();
        double now = 10'000;
        app.pointer_down(*places.begin(), now);
        Point last{};
        for (const Point p : places) {
            app.pointer_move(p, now);
            now += apart;
            last = p;
        }
        app.pointer_up(last, now - apart);
        person.look();
    }
    /// The page's own timer, once.
    void sleep() {
        REQUIRE(browser().wake_ms >= 0);
        person.wait(browser().wake_ms);
        person.look();
    }
};

constexpr Point sizes[] = {{360, 740}, {740, 360}, {360, 225}, {768, 1024}, {1440, 900}, {1024, 600}};

} // namespace

TEST_CASE("the table is one touch from Cut, shows Cut's figures, and every way out leads back") {
    for (const Point size : sizes) {
        INFO(size.x << " x " << size.y);
        browser() = {};
        keep_shop();
        Person person(size.x, size.y);
        const std::string feed = person.reads("Feed");
        const std::string height = person.reads("Cut height");
        CHECK_FALSE(browser().awake);
        person.touch("At the table");
        CHECK(browser().fragment == "#/cut/bench");
        CHECK(browser().awake);
        CHECK(person.node("place/cut") == nullptr);
        REQUIRE(person.node("bench/feed") != nullptr);
        CHECK(feed.starts_with(person.node("bench/feed")->value));
        CHECK(height.starts_with(person.node("bench/height")->value));
        CHECK(person.node("bench/volts")->value == "2.54 V");
        CHECK(person.node("bench/pierce")->value == "0.5 s");
        person.touch("Close");
        CHECK(browser().fragment == "#/cut");
        CHECK_FALSE(browser().awake);
        person.touch("At the table");
        person.back();
        CHECK(person.app().open_panel().empty());
        CHECK_FALSE(browser().awake);
    }
}

TEST_CASE("figures are read a meter away: large, and at 12:1 or more in both themes, counting or not") {
    for (const char* theme : {"paper", "night"}) {
        for (const Point size : sizes) {
            AtTable table(size.x, size.y);
            table.person.app().set("shop.display.theme", theme, "Theme"sv);
            table.person.look();
            for (const bool counting : {false, true}) {
                if (counting) {
                    table.person.touch_id("bench/pierce");
                    table.person.touch_id("bench/arc");
                }
                INFO(theme << ' ' << size.x << " x " << size.y << (counting ? " counting" : ""));
                const Tokens& t = table.person.app().tokens();
                CHECK(std::string(t.name) == theme);
                int figures = 0;
                for (const Written& line : table.person.written()) {
                    if (line.type == Type::figure || line.type == Type::second) {
                        ++figures;
                        INFO(line.text);
                        CHECK(std::min(contrast(line.colour, t.ground), contrast(line.colour, t.fill)) >= 12);
                    }
                }
                CHECK(figures == 5); // feed, volts, height, delay, arc time: none of them fell back to small type
                CHECK(size_of(Type::figure) >= 118);
                CHECK(size_of(Type::second) >= 56);
            }
        }
    }
    browser() = {};
    Person elsewhere;
    CHECK(size_of(Type::figure) == 60);
}

TEST_CASE("a card logs the cut just made at the feed on the screen, and one touch takes it back") {
    struct Card {
        const char* name;
        tune::Verdict verdict;
    };
    for (const Card card : {Card{"Too slow", tune::Verdict::too_slow}, Card{"Clean", tune::Verdict::clean},
                            Card{"Too fast", tune::Verdict::too_fast}}) {
        AtTable table;
        const std::size_t before = table.book().shop.tests.size();
        const std::string feed = table.says("bench/feed");
        table.person.touch(card.name);
        REQUIRE(table.book().shop.tests.size() == before + 1);
        const tune::TestCut& cut = table.book().shop.tests.back();
        CHECK(cut.verdict == card.verdict);
        CHECK(cut.thickness.in(mm) == 6);
        CHECK(std::to_string(std::lround(cut.feed->in(mm_min))) + " mm/min" == feed);
        CHECK(table.person.app().open_panel() == "bench");
        CHECK(table.says("live").starts_with(std::string(card.name).substr(0, 5))); // spoken, with the feed it gives
        table.person.touch("Undo");
        CHECK(table.book().shop.tests.size() == before);
        CHECK(table.says("bench/feed") == feed);
    }
}

TEST_CASE("a swipe leads to the plates of the log, newest first, and round to the job's own") {
    AtTable table;
    CHECK(table.says("bench/next") == "Mild steel 10 mm, 45 A");
    CHECK(table.says("bench/previous") == "Mild steel 3 mm, 45 A");
    const std::string feed = table.says("bench/feed");
    table.finger({{300, 300}, {250, 301}, {200, 303}, {150, 305}}, 40);
    CHECK(table.mm_thick() == 10);
    CHECK(table.says("bench/feed") != feed);
    CHECK(table.person.node("bench/place")->name == "2 of 4");
    table.finger({{100, 300}, {150, 301}, {200, 303}, {250, 305}}, 40);
    CHECK(table.mm_thick() == 6);
    CHECK(table.says("bench/feed") == feed);
    table.person.touch("Next plate");
    table.person.touch("Next plate");
    CHECK(table.book().job.material == Metal::stainless);
    table.person.touch("Undo");
    CHECK(table.mm_thick() == 10);
    table.person.touch("Next plate");
    table.person.touch("Next plate");
    table.person.touch("Next plate");
    CHECK(table.mm_thick() == 6);
    table.person.back();
    CHECK(table.person.reads("Thickness").starts_with("6 mm"));
}

TEST_CASE("water, a thumb that scrolls and a hand that rests swipe nothing") {
    AtTable table;
    table.finger({{300, 300}, {260, 300}, {220, 300}, {210, 300}}, 40); // too short
    CHECK(table.mm_thick() == 6);
    table.finger({{300, 300}, {100, 300}}, 100); // here and then there
    CHECK(table.mm_thick() == 6);
    table.finger({{300, 300}, {250, 350}, {200, 400}, {150, 450}}, 40); // aslant
    CHECK(table.mm_thick() == 6);
    table.finger({{300, 300}, {250, 300}, {200, 300}, {150, 300}}, 700); // a hand on the glass
    CHECK(table.mm_thick() == 6);
    table.finger({{300, 300}, {250, 300}, {200, 300}, {150, 300}}, 10); // a splash
    CHECK(table.mm_thick() == 6);
    App& app = table.person.app();
    app.pointer_down({300, 300}, 1000); // a drop beside the finger
    app.pinch({300, 300}, {40, 500});
    app.pointer_move({200, 300}, 1100);
    app.pointer_move({120, 300}, 1200);
    app.pointer_up({120, 300}, 1200);
    table.person.look();
    CHECK(table.mm_thick() == 6);
    table.person.back(); // and on another screen a swipe is none
    table.finger({{300, 300}, {250, 301}, {200, 303}, {150, 305}}, 40);
    CHECK(table.mm_thick() == 6);
}

TEST_CASE("a shop with no other plate in its log says how plates come here") {
    browser() = {};
    Person person;
    person.touch("At the table");
    CHECK(person.named("Next plate") == nullptr);
    CHECK(person.text().find("Log a cut on another plate to swipe to it") != std::string::npos);
}

TEST_CASE("the pierce is counted: a bell at each end, one frame, two sentences") {
    AtTable table;
    const double delay = table.person.app().worksheet().settings->pierce_delay->value.in(second);
    const int delay_ms = static_cast<int>(std::lround(delay * 1000));
    CHECK(browser().wake_ms < 0);
    table.person.touch("Count down the pierce");
    REQUIRE(browser().bells.size() == 2);
    CHECK(browser().bells[0].after_ms == 0);
    CHECK(browser().bells[1].after_ms == delay_ms);
    CHECK((browser().bells[1].sound && browser().bells[1].vibration && browser().bells[1].last));
    CHECK(table.says("bench/said") == "Pierce: 0.5 s.");
    CHECK(table.says("bench/pierce") == "0.5 s"); // what the control says does not change while it counts
    CHECK(std::abs(browser().wake_ms - delay_ms) <= 1);
    table.sleep();
    CHECK(table.says("bench/said") == "Pierce over. Move.");
    CHECK(browser().wake_ms < 0);
    table.person.touch("Count down the pierce");
    table.person.touch("Stop counting");
    CHECK(browser().bells.back().after_ms < 0);
    CHECK(browser().wake_ms < 0);
    table.person.touch("Count down the pierce");
    table.person.back(); // nothing rings where nobody looks
    CHECK(browser().bells.back().after_ms < 0);
    CHECK(browser().wake_ms < 0);
}

TEST_CASE("arc time and rest are counted in whole seconds, and spoken at start and end alone") {
    AtTable table;
    table.person.app().set("job.current_a", 50, "Current"sv); // where this machine is rated 60 %
    table.person.look();
    CHECK(table.says("bench/left") == "6:00");
    table.person.touch("The arc starts");
    CHECK(table.says("bench/said") == "Arc on. 6:00 of arc left.");
    CHECK(browser().bells.back().after_ms == 360'000);
    std::set<std::string> spoken;
    int frames = 0;
    for (; browser().wake_ms >= 0; ++frames) {
        CHECK(browser().wake_ms <= 1001);
        spoken.insert(table.says("bench/said"));
        if (frames == 60) {
            CHECK(table.says("bench/left") == "5:00");
        }
        table.sleep();
    }
    CHECK(frames == 360);
    CHECK(spoken.size() == 1);
    CHECK(table.says("bench/said") == "Arc time used up. Stop the arc and let it cool.");
    CHECK(table.says("bench/left") == "0:00");
    table.person.touch("The arc stops");
    CHECK(table.says("bench/said") == "Arc off. Cooling 4:00.");
    for (frames = 0; browser().wake_ms >= 0; ++frames) {
        CHECK(browser().wake_ms <= 1001);
        table.sleep();
    }
    CHECK(frames >= 239);
    CHECK(frames <= 241);
    CHECK(table.says("bench/said") == "Cooled. 6:00 of arc.");
}

TEST_CASE("a smaller current gives a counted arc more time; a machine of 100 % asks for no count") {
    AtTable table;
    table.person.app().set("job.current_a", 50, "Current"sv);
    table.person.look();
    table.person.touch("The arc starts");
    table.person.app().set("job.current_a", 45, "Current"sv);
    table.person.look();
    const double allowed = table.person.app().worksheet().circuit.arc_per_10_min.in(second);
    REQUIRE(allowed > 361);
    REQUIRE(allowed < supply::duty_period_s);
    CHECK(std::abs(browser().bells.back().after_ms - allowed * 1000) < 40);
    table.person.app().set("shop.machine.duty_cycle", 1, "Duty"sv);
    table.person.look();
    CHECK(table.person.named("The arc stops") == nullptr);
    CHECK(table.person.text().find("No cooling needed") != std::string::npos);
    CHECK(browser().wake_ms < 0);
}

TEST_CASE("sound and vibration can each be turned off in Shop, Screen") {
    AtTable table;
    table.person.back();
    table.person.touch("Shop");
    table.person.touch("Screen");
    table.person.touch("Countdown beeps");
    CHECK_FALSE(table.book().shop.display.sound);
    table.person.app().go(Page::cut);
    table.person.look();
    table.person.touch("At the table");
    table.person.touch("Count down the pierce");
    CHECK_FALSE(browser().bells.back().sound);
    CHECK(browser().bells.back().vibration);
    table.person.app().set("shop.display.vibration", false, "Buzz"sv);
    table.person.touch("Stop counting");
    table.person.touch("Count down the pierce");
    CHECK_FALSE(browser().bells.back().vibration);
}

TEST_CASE("the screen says whether it stays on") {
    AtTable table;
    CHECK(table.person.node("bench/awake") == nullptr); // nobody has answered
    const auto told = [&](std::string_view how) {
        table.person.app().notice("awake", how);
        table.person.look();
        return table.person.node("bench/awake")->name;
    };
    CHECK(told("on") == "Screen stays on");
    CHECK(told("refused") == "The screen may go dark");
    CHECK(told("none") == "This browser can't keep the screen on");
}

TEST_CASE("in gloves every control is 76 px or more each way, and all can be brought into view") {
    for (const Point size : sizes) {
        AtTable table(size.x, size.y);
        table.person.app().set("shop.display.glove", true, "Gloves"sv);
        table.person.look();
        table.person.touch("Clean"); // so that the bar with the way back stands there too
        int controls = 0;
        for (const Node& node : table.person.app().ui().tree().nodes()) {
            if (is_control(node.role)) {
                ++controls;
                INFO(size.x << " x " << size.y << ' ' << node.id << ' ' << node.place.w << " x " << node.place.h);
                CHECK(node.place.w >= 76);
                CHECK(node.place.h >= 76);
                CHECK((node.region >= 0 ||
                       (node.place.x >= 0 && node.place.right() <= size.x + 1 && node.place.bottom() <= size.y + 1)));
            }
        }
        CHECK(controls >= 9); // close, undo, two plates, two counts, three cards
    }
}

TEST_CASE("keys work the table: arrows for the plates, 1 to 3 for the cards, 4 and 5 for the counts") {
    AtTable table;
    const auto key_of = [&](std::string_view id) { return table.person.node(id)->state; };
    CHECK(key_of("bench/next") == "key-ArrowRight");
    CHECK(key_of("bench/previous") == "key-ArrowLeft");
    CHECK(key_of("bench/slow") == "key-1");
    CHECK(key_of("bench/clean") == "key-2");
    CHECK(key_of("bench/fast") == "key-3");
    CHECK(key_of("bench/pierce") == "key-4");
    CHECK(key_of("bench/arc") == "key-5");
    table.person.app().set("shop.display.number_keys", false, "Keys"sv);
    table.person.look();
    CHECK(key_of("bench/clean").empty());
    CHECK(key_of("bench/next") == "key-ArrowRight");
}

TEST_CASE("a plate past reach has its reason at the table, and the next plate is a swipe away") {
    AtTable table;
    table.person.app().set("job.thickness_mm", 60, "Thickness"sv);
    table.person.look();
    CHECK(table.person.named("Clean") == nullptr);
    CHECK(table.person.text().find("No settings for this plate") != std::string::npos);
    table.person.touch("Next plate");
    CHECK(table.mm_thick() == 6);
    CHECK(table.person.named("Clean") != nullptr);
}

TEST_CASE("what a card logs brings a bar that moves nothing, least of all Undo under the thumb") {
    for (const auto& [width, height] : {std::pair{360.0F, 740.0F}, {768.0F, 1024.0F}, {1440.0F, 900.0F}}) {
        AtTable at(width, height);
        for (const char* card : {"bench/fast", "bench/clean", "bench/slow"}) {
            REQUIRE(at.person.node(card) != nullptr);
            const Rect before = at.person.node(card)->place;
            at.person.touch_id(card);
            INFO(width << ' ' << card);
            CHECK(at.person.node(card)->place.y == before.y);
            REQUIRE(at.person.node("change/undo") != nullptr);
            const Rect undo = at.person.node("change/undo")->place;
            CHECK((undo.y >= before.bottom() || undo.bottom() <= before.y || undo.x >= before.right()));
        }
    }
}
