// A phone in a hand, gloves on or off, upright or lying down; and a page zoomed in: what a thumb scrolls, what stays in view.
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "tests/screens/person.hpp"
#include "web/kit/gesture.hpp"

using namespace std::string_view_literals;
using namespace torchside::web;

namespace {

/// A list of 5000 px in a window of 500, and what a thumb does to it.
struct List {
    Tree tree;
    std::vector<Region> regions{Region{"list", {0, 0, 360, 500}, {360, 5000}}};
    Gesture gesture;

    [[nodiscard]] float offset() const { return regions[0].offset.y; }
    /// Frames of this length until it rests; true when it ever glided.
    bool rest(double from, double frame_ms) {
        double now = from;
        bool moved = false;
        while (gesture.glide(now += frame_ms, regions)) {
            moved = true;
        }
        return moved;
    }
};

struct Throw {
    std::vector<double> seen_at; // when the finger was seen, as it moves 1 px a millisecond
    double up_at;
};

float thrown_by(const Throw& swipe, double frame_ms) {
    List list;
    list.gesture.down({100, 450}, 0, list.tree, list.regions);
    for (const double t : swipe.seen_at) {
        list.gesture.move({100, 450 - static_cast<float>(t)}, t, list.regions);
    }
    const double last = swipe.seen_at.empty() ? swipe.up_at : swipe.seen_at.back();
    (void)list.gesture.up({100, 450 - static_cast<float>(last)}, swipe.up_at, list.tree, list.regions, true);
    const float dragged = list.offset();
    CHECK(std::abs(dragged - (static_cast<float>(last) - Gesture::slop)) < 0.5F);
    list.rest(swipe.up_at, frame_ms);
    return list.offset() - dragged;
}

} // namespace

TEST_CASE("a list is thrown as fast as the thumb went, however seldom the page heard of it") {
    const float reach = Gesture::decay_ms * 1.0F; // at 1 px/ms
    const std::vector<double> often{16, 32, 48, 64, 80, 96, 112, 128};
    for (const Throw& swipe :
         {Throw{often, 136}, Throw{often, 160}, Throw{{64, 128}, 136}, Throw{{128}, 136}, Throw{{}, 130}}) {
        for (const double frame_ms : {8.0, 16.0, 150.0}) {
            INFO(swipe.seen_at.size() << " moves, frames of " << frame_ms << " ms");
            CHECK(std::abs(thrown_by(swipe, frame_ms) - reach) < 0.1F * reach);
        }
    }
}

TEST_CASE("a thumb that rests before it leaves throws nothing") {
    CHECK(thrown_by({{16, 32, 48, 64, 80, 96}, 300}, 16) == 0);
}

// --- what stays in view

namespace {

/// All of it can be seen: inside the window, and not scrolled away.
bool in_view(const Person& person, std::string_view id) {
    const Node* node = person.node(id);
    return node != nullptr && node->seen.w >= node->place.w - 1 && node->seen.h >= node->place.h - 1;
}

/// The row of the field under edit with what is said below it, by its box: 36 px, and the words 43 px below the row's top.
bool field_in_view(Person& person) {
    const Ui& ui = person.app().ui();
    const Node* field = ui.edit() ? ui.tree().find(ui.edit()->id) : nullptr;
    if (field == nullptr || field->region < 0) {
        return false;
    }
    const Rect view = ui.regions[static_cast<std::size_t>(field->region)].view;
    return field->place.y >= view.y && field->place.bottom() + 18 <= view.bottom();
}

bool keys_in_view(Person& person, Rect window) {
    int keys = 0;
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (node.parent == "keypad") {
            ++keys;
            const Rect seen = overlap(node.place, window);
            if (seen.w < node.place.w - 0.1F || seen.h < node.place.h - 0.1F || node.place.w < 47.5F ||
                node.place.h < 47.5F) {
                UNSCOPED_INFO(node.id << ": " << node.place.w << " by " << node.place.h << " at " << node.place.y);
                return false;
            }
        }
    }
    return keys >= 13;
}

struct Window {
    float w, h;
};
constexpr Window low_windows[] = {{740, 360}, {667, 375}, {640, 400}, {360, 225}, {480, 320}};

} // namespace

TEST_CASE("a sheet opens at its top every time; the place below it stays where it was") {
    browser() = {};
    Person person;
    Ui& ui = person.app().ui();
    const auto scroll = [&](std::string_view name, float y) {
        for (Region& region : ui.regions) {
            if (region.name == name) {
                region.offset.y = y;
            }
        }
        person.look();
    };
    const auto offset = [&](std::string_view name) {
        for (const Region& region : ui.regions) {
            if (region.name == name) {
                return region.offset.y;
            }
        }
        return -1.0F;
    };
    scroll("cut", 60);
    const float place = offset("cut");
    REQUIRE(place > 10);
    for (const char* panel : {"circuit", "air", "stock", "machine", "reach", "log", "figure/feed", "safety"}) {
        person.app().open(panel);
        person.look();
        const std::string name = std::string_view(panel).starts_with("figure") ? "figure" : panel;
        INFO(panel);
        CHECK(offset(name) == 0);
        scroll(name, 200);
        person.back();
        person.app().open(panel);
        person.look();
        CHECK(offset(name) == 0);
        scroll(name, 200);
        person.back();
        CHECK(offset("cut") == place);
    }
}

TEST_CASE("Circuit and Air show what is entered in the first screen of a phone, and the verdict while it is typed") {
    struct Sheet {
        const char *name, *verdict;
        std::vector<const char*> fields;
    };
    const Sheet panels[] = {{"circuit",
                             "circuit/summary",
                             {"field/shop.circuit.line_v", "field/shop.circuit.breaker_a", "field/shop.circuit.run_m",
                              "field/shop.circuit.run_awg"}},
                            {"air",
                             "air/summary",
                             {"field/shop.air.compressor_l_min", "field/shop.air.receiver_l",
                              "field/shop.air.cut_in_bar", "field/shop.air.cut_out_bar"}}};
    for (const Sheet& panel : panels) {
        browser() = {};
        Person person;
        person.app().open(panel.name);
        person.look();
        CHECK(in_view(person, panel.verdict));
        for (const char* field : panel.fields) {
            const Node* node = person.node(field);
            INFO(field << " ends at " << (node == nullptr ? 0 : node->place.bottom()));
            CHECK(in_view(person, field));
        }
        // Down to the last field of the panel, and still the verdict is there.
        std::vector<std::string> all;
        for (const Node& node : person.app().ui().tree().nodes()) {
            if (node.role == Role::textbox) {
                all.push_back(node.id);
            }
        }
        CHECK(all.size() >= 10);
        for (const std::string& field : all) {
            person.touch_id(field);
            INFO(field);
            CHECK(person.node("keypad") != nullptr);
            CHECK(in_view(person, panel.verdict));
            CHECK(field_in_view(person));
            person.back();
        }
    }
}

TEST_CASE("a touch on a stop of the drawn circuit opens what is entered for it") {
    browser() = {};
    Person person;
    person.app().open("circuit");
    person.look();
    const std::pair<const char*, const char*> stops[] = {{"circuit/chain/panel", "field/shop.circuit.line_v"},
                                                         {"circuit/chain/breaker", "field/shop.circuit.breaker_a"},
                                                         {"circuit/chain/run", "field/shop.circuit.run_m"}};
    for (const auto& [stop, field] : stops) {
        person.touch_id(stop);
        INFO(stop);
        REQUIRE(person.app().ui().edit().has_value());
        CHECK(person.app().ui().edit()->id == field);
        CHECK(field_in_view(person));
        CHECK(in_view(person, "circuit/summary"));
        person.back();
    }
    person.touch_id("circuit/chain/machine");
    CHECK(person.app().open_panel() == "machine");
}

TEST_CASE("in a low window the field that is typed in, its error and all keys are seen at once") {
    for (const Window window : low_windows) {
        for (const char* panel : {"stock", "circuit", "air", "machine", "table", "rates", "shape", "read"}) {
            browser() = {};
            Person person(window.w, window.h);
            person.app().open(panel);
            person.look();
            std::vector<std::string> fields;
            for (const Node& node : person.app().ui().tree().nodes()) {
                if (node.role == Role::textbox && node.state.find("mode-text") == std::string::npos) {
                    fields.push_back(node.id);
                }
            }
            INFO(panel << " at " << window.w << " by " << window.h);
            CHECK(!fields.empty());
            for (const std::string& field : fields) {
                person.touch_id(field);
                person.app().ui().enter(field, "99999999", false);
                person.look();
                INFO(field);
                CHECK(field_in_view(person));
                CHECK(keys_in_view(person, {0, 0, window.w, window.h}));
                person.back();
            }
        }
    }
}

TEST_CASE("in a low window title block and places scroll away") {
    for (const Window window : low_windows) {
        browser() = {};
        Person person(window.w, window.h);
        INFO(window.w << " by " << window.h);
        for (const char* place : {"place/cut", "place/tune", "place/part", "place/quote", "place/shop"}) {
            INFO(place);
            person.touch_id(place);
            CHECK(in_view(person, "title/metal"));
            CHECK(in_view(person, "place/shop"));
            for (Region& region : person.app().ui().regions) {
                region.offset.y = region.on ? 1e6F : region.offset.y;
            }
            person.look();
            const Node* title = person.node("title/metal");
            REQUIRE(title != nullptr);
            if (title->region >= 0 &&
                person.app().ui().regions[static_cast<std::size_t>(title->region)].limit().y > 110) {
                CHECK(title->seen.empty());
                CHECK(person.node("place/cut")->seen.empty());
            }
            for (Region& region : person.app().ui().regions) {
                region.offset = {};
            }
            person.look();
        }
    }
}

TEST_CASE("the chart is legible when a page is zoomed to 360 by 225") {
    browser() = {};
    Person person(360, 225);
    person.app().open("chart");
    person.look();
    Ui& ui = person.app().ui();
    for (Region& region : ui.regions) {
        region.offset.y = region.name == "chart" ? 160.0F : 0.0F;
    }
    person.look();
    int whole = 0;
    for (const Node& node : ui.tree().nodes()) {
        whole += node.id.ends_with("/use") && node.id.starts_with("chart/") && in_view(person, node.id) ? 1 : 0;
    }
    CHECK(whole >= 12); // three plates by four currents
    CHECK(in_view(person, "chart/head/0"));
    CHECK(!in_view(person, "chart/close"));
    CHECK(!in_view(person, "chart/marks"));
}

TEST_CASE("gloves grow width, words, Close and switches, and units stand away from Close") {
    struct Sizes {
        float words, close, tile, units, keys;
    };
    const auto sizes = [](bool glove) {
        browser() = {};
        Person person;
        person.app().set("shop.display.glove", glove, "Gloves"sv);
        person.app().open("stock");
        person.look();
        const auto place = [&](std::string_view id) {
            const Node* node = person.node(id);
            REQUIRE(node != nullptr);
            return node->place;
        };
        const Rect close = place("stock/close");
        const Rect units = place("title/units");
        // Close and units: not beside each other, not above each other.
        CHECK(std::max(close.x - units.right(), units.x - close.right()) > 100);
        const Rect tile = place("stock/amps").inset(0);
        const auto& nodes = person.app().ui().tree().nodes();
        float narrowest = tile.w;
        for (const Node& node : nodes) {
            narrowest = node.parent == "stock/amps" ? std::min(narrowest, node.place.w) : narrowest;
        }
        person.touch_id("stock/thickness");
        return Sizes{size_of(Type::text), std::min(close.w, close.h), narrowest, units.w, place("key/7").h};
    };
    const Sizes bare = sizes(false);
    const Sizes glove = sizes(true);
    CHECK(glove.words >= 1.15F * bare.words);
    CHECK(bare.close >= 55);
    CHECK(glove.close >= 90);
    CHECK(glove.tile >= 90);
    CHECK(glove.units >= 80);
    CHECK(glove.keys >= 80);
    sizes(false); // and the fonts shrink again
    CHECK(size_of(Type::text) == bare.words);
}

TEST_CASE("figures of Tune stand clear of the words above them, with gloves too") {
    for (const bool glove : {false, true}) {
        browser() = {};
        Person person;
        person.app().set("shop.display.glove", glove, "Gloves"sv);
        person.touch_id("place/tune");
        const Node* next = person.node("tune/next");
        REQUIRE(next != nullptr);
        const auto& lines = person.written();
        const auto words =
            std::find_if(lines.begin(), lines.end(), [&](const Written& w) { return w.text == next->name; });
        REQUIRE(words != lines.end());
        const auto figure = std::find_if(words, lines.end(), [](const Written& w) { return w.type == Type::second; });
        REQUIRE(figure != lines.end());
        CHECK(figure->place.y - words->place.bottom() > -3); // lines have some air of their own
    }
}

TEST_CASE("a field that goes with a window that grows narrow is left, and the places are there again") {
    browser() = {};
    Person person(1024, 768);
    person.touch("Shop");
    REQUIRE(person.app().open_panel().empty());
    person.touch_id("field/shop.machine.max_current_a"); // in the panel that stands beside the place
    REQUIRE(person.app().ui().edit());
    person.resize(360, 740);
    person.look();
    CHECK_FALSE(person.app().ui().edit());
    CHECK(person.node("place/cut") != nullptr);
}

TEST_CASE("what is disabled takes no finger, but a keyboard that stands on it is seen") {
    browser() = {};
    Person person(360, 740);
    person.touch_id("title/metal");
    const Node* node = person.node("stock/suggested");
    REQUIRE(node != nullptr);
    if (node->state.empty()) {
        person.touch_id("stock/suggested");
        node = person.node("stock/suggested");
    }
    REQUIRE(node->state == "disabled");
    person.app().ui().focus("stock/suggested");
    person.look();
    node = person.node("stock/suggested");
    CHECK(node->seen.h == node->place.h);
    CHECK(person.app().ui().tree().control_at(node->seen.centre()) != node);
}
