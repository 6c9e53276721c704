// Pictures where people would rather look: what they show is what the worksheet says, and what they show is also in words.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <imgui.h>
#include <set>
#include <string>
#include <vector>

#include "core/part/shapes.hpp"
#include "core/quantity/print.hpp"
#include "tests/screens/person.hpp"
#include "web/kit/canvas.hpp"
#include "web/kit/marks.hpp"
#include "web/screens/show.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

/// A finger takes a grip along, in so many moves, and leaves or stays.
void drag(Person& person, std::string_view id, float dx, float dy, bool leaves = true) {
    const Node* node = person.node(id);
    REQUIRE(node != nullptr);
    const Point from = node->seen.centre();
    App& app = person.app();
    constexpr int moves = 6;
    app.pointer_down(from, 1000);
    for (int i = 1; i <= moves; ++i) {
        const float share = static_cast<float>(i) / moves;
        app.pointer_move({from.x + dx * share, from.y + dy * share}, 1000 + 20.0 * i);
        person.look();
    }
    if (leaves) {
        app.pointer_up({from.x + dx, from.y + dy}, 1200);
        person.look();
    }
}

double length_mm(Person& person) {
    return person.app().book().job.part.length.in(mm);
}

/// Steps of the trade: of half a millimetre, or of a sixteenth.
bool is_step(double value, double step) {
    return std::abs(value / step - std::round(value / step)) < 1e-6;
}

void open_shape(Person& person, const char* shape) {
    person.app().go(Page::part);
    person.app().open("shape");
    person.look();
    person.touch_id(std::string("shape/") + shape);
}

std::vector<const Node*> children(Person& person, std::string_view parent) {
    std::vector<const Node*> out;
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (node.parent == parent) {
            out.push_back(&node);
        }
    }
    return out;
}

} // namespace

TEST_CASE("a size is dragged in the picture of the shape, in steps, as one change that is undone") {
    for (const float width : {360.0F, 768.0F, 1440.0F}) {
        for (const bool in_inches : {false, true}) {
            browser() = {};
            Person person(width, 800);
            person.app().set("shop.display.units", in_inches ? "inch" : "metric", "Units"sv);
            open_shape(person, "plate");
            const double before = length_mm(person);
            INFO(width << (in_inches ? " inch" : " metric"));
            drag(person, "shape/grip/length_mm", 30, 0);
            const double after = length_mm(person);
            CHECK(after > before + 5);
            CHECK(is_step(after, in_inches ? 25.4 / 16 : 0.5));
            REQUIRE(person.app().change() != nullptr);
            CHECK(person.app().change()->name.find(show_text(Length{before, mm}, person.app().units()).substr(0, 3)) !=
                  std::string::npos);
            CHECK(person.node("shape/grip/length_mm")->value ==
                  show_field(after, FieldUnit::mm, "USD", person.app().units()));
            person.touch_id("change/undo");
            CHECK(length_mm(person) == before);
        }
    }
}

TEST_CASE("the field says what the picture says while a finger has the size") {
    browser() = {};
    Person person(360, 800);
    open_shape(person, "plate");
    drag(person, "shape/grip/length_mm", -25, 0, false);
    CHECK(length_mm(person) < 100);
    CHECK(person.node("field/job.part.length_mm")->value == person.node("shape/grip/length_mm")->value);
    CHECK(person.node("shape/lit")->name.find("Length") != std::string::npos);
}

TEST_CASE("a size is dragged no further than the part is still one") {
    browser() = {};
    Person person(360, 800);
    open_shape(person, "plate"); // its four holes need room
    drag(person, "shape/grip/length_mm", -400, 0);
    const part::PartSpec& small = person.app().book().job.part;
    CHECK(part::make_outline(small).ok());
    CHECK(small.length.in(mm) < 60);
    CHECK_FALSE(person.app().worksheet().part->fault);
    CHECK(person.app().refusal().empty());
}

TEST_CASE("the size that is typed is lit, and a touch on its end types it") {
    for (const char* shape : {"plate", "ring", "flange", "gusset", "slotted_plate", "bracket"}) {
        browser() = {};
        Person person(360, 800);
        open_shape(person, shape);
        std::vector<std::string> fields;
        for (const Node& node : person.app().ui().tree().nodes()) {
            if (node.id.starts_with("field/job.part.") && node.id.ends_with("_mm")) {
                fields.push_back(node.id);
            }
        }
        CHECK(fields.size() >= 2);
        for (const std::string& field : fields) {
            person.touch_id(field);
            const std::string grip = "shape/grip/" + field.substr(std::string("field/job.part.").size());
            INFO(shape << ": " << field);
            if (field.ends_with("corner_mm") && !person.node(grip)) {
                continue; // none yet
            }
            REQUIRE(person.node(grip) != nullptr);
            CHECK(person.node(grip)->value == person.node(field)->value);
            person.back(); // out of the field
            CHECK_FALSE(person.app().ui().edit());
            person.touch_id(grip);
            REQUIRE(person.app().ui().edit());
            CHECK(person.app().ui().edit()->id == field);
            person.back();
        }
    }
}

TEST_CASE("a drag that begins on a grip scrolls nothing, one beside it does") {
    browser() = {};
    Person person(360, 740);
    open_shape(person, "bracket");
    const auto scrolled = [&] {
        float sum = 0;
        for (const Region& region : person.app().ui().regions) {
            sum += region.on ? region.offset.y : 0;
        }
        return sum;
    };
    drag(person, "shape/grip/length_mm", 0, -60);
    CHECK(scrolled() == 0);
    drag(person, "shape/ring", 0, -60);
    CHECK(scrolled() > 20);
}

TEST_CASE("the tank empties step by step as the air sheet reckons") {
    for (const double litres : {60.0, 400.0}) {
        for (const double delivers : {60.0, 150.0, 400.0}) {
            browser() = {};
            Person person(360, 740);
            person.app().set("shop.air.compressor_l_min", delivers, "Compressor"sv);
            person.app().set("shop.air.receiver_l", litres, "Tank"sv);
            person.app().open("air");
            person.look();
            const auto& cycle = person.app().worksheet().air.cycle;
            const auto tanks = children(person, "air/tank");
            REQUIRE(tanks.size() == std::min<std::size_t>(cycle.size(), 4));
            for (std::size_t i = 0; i < tanks.size(); ++i) {
                CHECK(tanks[i]->value.starts_with(print(cycle[i].tank, person.app().units()).text()));
                CHECK_FALSE(tanks[i]->name.empty());
            }
            CHECK(tanks.front()->name == "Full, arc on");
        }
    }
}

TEST_CASE("the picture of the volts marks what the controller reads") {
    const struct {
        double off;
        std::size_t marked;
    } rows[] = {{-8, 0}, {0, 1}, {8, 2}};
    for (const double ratio : {1.0, 50.0}) {
        for (const auto& row : rows) {
            browser() = {};
            Person person(360, 740);
            person.app().set("shop.height_control.divider_ratio", ratio, "Divider"sv);
            person.app().open("figure/arc");
            person.look();
            REQUIRE(children(person, "arc/picture").size() == 3);
            const double arc = std::round(person.app().worksheet().settings->arc.value.in(volt));
            person.app().scratch.inputs.reading_v = (arc + row.off) / ratio;
            person.look();
            const auto cases = children(person, "arc/picture");
            REQUIRE(cases.size() == 3);
            for (std::size_t i = 0; i < 3; ++i) {
                INFO(ratio << ":1, " << row.off << " V, picture " << i);
                CHECK((cases[i]->value.find("Your reading") != std::string::npos) == (i == row.marked));
            }
        }
    }
}

TEST_CASE("the pierce is five pictures with the figures of this cut") {
    for (const float width : {360.0F, 1440.0F}) {
        for (const char* panel : {"figure/pierce_delay", "figure/pierce_height"}) {
            browser() = {};
            Person person(width, 800);
            person.app().open(panel);
            person.look();
            const cut::Settings& s = *person.app().worksheet().settings;
            const Units units = person.app().units();
            const auto steps = children(person, "pierce/steps");
            REQUIRE(steps.size() == 5);
            CHECK(steps[1]->name.find(show(s.pierce_height.value, units).whole()) != std::string::npos);
            CHECK(steps[2]->name.find(show(s.pierce_delay->value, units).whole()) != std::string::npos);
            CHECK(steps[3]->name.find(show(s.cut_height.value, units).whole()) != std::string::npos);
            CHECK(steps[4]->name.find(show_feed(person.app(), s.feed.value).whole()) != std::string::npos);
        }
    }
    browser() = {};
    Person person(360, 740);
    person.app().set("job.thickness_mm", 14, "Thickness"sv); // starts at an edge
    REQUIRE(person.app().worksheet().settings);
    REQUIRE_FALSE(person.app().worksheet().settings->pierce_delay);
    person.app().open("figure/pierce_delay");
    person.look();
    CHECK(person.node("pierce/steps") == nullptr);
}

TEST_CASE("a height ladder shows every leg's height, the lowest leg first") {
    browser() = {};
    Person person(360, 740);
    person.app().go(Page::tune);
    person.app().scratch.inputs.coupon = tune::CouponKind::heights;
    person.app().open("coupon");
    person.look();
    const auto& coupon = person.app().coupon();
    REQUIRE(coupon.ok());
    const auto shown = children(person, "coupon/high");
    REQUIRE(shown.size() == coupon.value().legs.size());
    std::multiset<std::string> wanted;
    std::multiset<std::string> said;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        wanted.insert(show(coupon.value().legs[i].cut_height, person.app().units()).whole());
        said.insert(shown[i]->value);
    }
    CHECK(wanted == said);
    person.app().scratch.inputs.coupon = tune::CouponKind::ladder;
    person.look();
    CHECK(person.node("coupon/high") == nullptr);
}

TEST_CASE("the signs in the part's picture have a key that is whole in every language") {
    for (const float width : {360.0F, 768.0F, 1440.0F}) {
        browser() = {};
        keep_shop();
        Person person(width, 740);
        person.app().go(Page::part);
        person.look();
        REQUIRE(person.node("part/key") != nullptr);
        int words = 0;
        for (const Written& line : person.written()) {
            for (const char* name : {"Pierce", "Lead", "Direction"}) {
                words += line.text == name ? 1 : 0;
            }
        }
        CHECK(words == 3);
    }
}

TEST_CASE("no two rows of Quote have the same mark") {
    Person person;     // whose fonts are built
    const Fonts fonts; // of which a mark needs none
    std::set<std::vector<float>> seen;
    for (const Mark mark :
         {Mark::send, Mark::rates, Mark::costs, Mark::quantities, Mark::terms, Mark::issued, Mark::nozzle}) {
        Canvas canvas;
        Pen pen(canvas.start(100, 100), fonts, 1);
        draw_mark(pen, mark, {50, 50}, paper.ink);
        const ImDrawData* data = canvas.finish();
        std::vector<float> drawn;
        for (const ImDrawVert& v : data->CmdLists[0]->VtxBuffer) {
            drawn.push_back(v.pos.x);
            drawn.push_back(v.pos.y);
            CHECK(std::abs(v.pos.x - 50) < 16);
            CHECK(std::abs(v.pos.y - 50) < 16);
        }
        CHECK(drawn.size() > 20);
        CHECK(seen.insert(drawn).second);
    }
}

TEST_CASE("a phone shows every plate of the chart at once, the open one ringed, the legend behind a question mark") {
    browser() = {};
    keep_shop();
    Person person(360, 740);
    person.app().open("chart");
    person.look();
    const std::size_t plates = person.app().chart().rows.size();
    std::size_t whole = 0;
    for (std::size_t i = 0; i < plates; ++i) {
        const Node* head = person.node("chart/row/" + std::to_string(i) + "/head");
        REQUIRE(head != nullptr);
        const Rect seen = overlap(head->seen, {0, 0, 360, 740});
        whole += seen.h >= head->place.h - 1 ? 1U : 0U;
    }
    CHECK(plates >= 12);
    CHECK(whole == plates);
    CHECK(person.node("title/metal") == nullptr);
    CHECK(person.node("chart/close") != nullptr);
    CHECK(person.node("chart/print") != nullptr);
    // what the marks mean is always said, and drawn when it is asked for
    REQUIRE(person.node("chart/key") != nullptr);
    CHECK(person.node("chart/key")->place.h < 2);
    person.touch_id("chart/marks");
    CHECK(person.node("chart/key")->place.h > 15);
    CHECK(person.node("chart/marks")->state == "expanded");
}

TEST_CASE("a job between the chart's plates has its ring between them") {
    browser() = {};
    Person person(360, 740);
    person.app().set("job.thickness_mm", 6, "Thickness"sv);
    person.app().open("chart");
    person.look();
    const bool on_a_row = person.node("chart/open") == nullptr;
    CHECK(on_a_row);
    person.app().set("job.thickness_mm", 7.1, "Thickness"sv);
    person.look();
    const Node* ring = person.node("chart/open");
    REQUIRE(ring != nullptr);
    const auto& rows = person.app().chart().rows;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const float middle = person.node("chart/row/" + std::to_string(i) + "/head")->place.centre().y;
        CHECK((rows[i].in(mm) < 7.1) == (middle < ring->place.centre().y));
    }
    CHECK(ring->name.find("7.1 mm") != std::string::npos);
}

TEST_CASE(
    "beside each figure a question mark has two lines and a drawing, and one touch more the formula and the source") {
    for (const bool in_inches : {false, true}) {
        browser() = {};
        Person person(360, 740);
        person.app().set("shop.display.units", in_inches ? "inch" : "metric", "Units"sv);
        for (const Figure& figure : figures()) {
            person.app().open("figure/" + std::string(figure.key));
            person.look();
            INFO(figure.key);
            REQUIRE(person.node("figure/help") != nullptr);
            CHECK(person.node("figure/help")->place.w >= 56);
            CHECK(person.node("help/what") == nullptr);
            person.touch_id("figure/help");
            REQUIRE(person.node("help/what") != nullptr);
            CHECK(person.node("help/why") != nullptr);
            CHECK(person.node("help/drawing") != nullptr);
            CHECK(person.node("help/formula") == nullptr);
            person.touch_id("help/source");
            REQUIRE(person.node("help/formula") != nullptr);
            CHECK(person.node("help/from") != nullptr);
            person.touch_id("figure/help");
            CHECK(person.node("help/what") == nullptr);
            CHECK(person.node("help/formula") == nullptr);
        }
    }
}
