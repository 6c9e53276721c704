// The safety panel and its two rows on Cut, without a browser: which hazards are said, in which units, whether all is read.
#include <algorithm>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

struct Stand {
    Person person{360, 740};

    Stand() { browser() = {}; }
    App& app() { return person.app(); }
    void job(Metal metal, Country country, UnitSystem units = UnitSystem::metric) {
        Workbook book = app().book();
        book.job.material = metal;
        book.job.thickness = Length{3, mm};
        book.shop.country = country;
        book.shop.display.units = units;
        REQUIRE(app().take(std::move(book), "A job"sv));
        person.look();
    }
    /// The codes of the hazard rows on Cut, in their order.
    std::string rows() {
        app().close();
        app().go(Page::cut);
        person.look();
        std::string out;
        for (const Node& node : app().ui().tree().nodes()) {
            for (const safety::Caution& c : app().worksheet().safety.cautions) {
                if (node.id == "cut/verdict/" + std::string(c.code)) {
                    out += (out.empty() ? "" : " ") + std::string(c.code);
                }
            }
        }
        return out;
    }
    std::string panel() {
        app().open("safety");
        person.look();
        return person.text();
    }
};

bool says(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("Cut shows the two worst hazards, and a touch on one opens the sheet", "[safety]") {
    Stand b;
    b.job(Metal::mild_steel, Country::us);
    CHECK(b.rows() == "shock steel_fume");
    b.job(Metal::stainless, Country::us);
    CHECK(b.rows() == "chromium_fume shock");
    b.job(Metal::aluminium, Country::eu);
    CHECK(b.rows() == "hydrogen shock");
    b.person.touch_id("cut/verdict/shock");
    CHECK(b.app().open_panel() == "safety");
    b.app().close();
    b.person.look();
    b.person.touch_id("cut/verdict/safety");
    CHECK(b.app().open_panel() == "safety");
}

TEST_CASE("The sheet says all of them under their drawings, local rules last", "[safety]") {
    Stand b;
    for (const Metal metal : all_metals) {
        b.job(metal, Country::us);
        const std::string text = b.panel();
        for (const char* group :
             {"Shock", "Eyes and skin", "Fume and gas", "Fire", "Ears", "Moving and hot parts", "People nearby"}) {
            INFO(group);
            CHECK(says(text, group));
        }
        const auto& nodes = b.app().ui().tree().nodes();
        const auto place = [&](const std::string& id) {
            const auto at = std::find_if(nodes.begin(), nodes.end(), [&](const Node& n) { return n.id == id; });
            REQUIRE(at != nodes.end());
            return at->place.y;
        };
        const float last = place("safety/local_rules");
        for (const safety::Caution& c : b.app().worksheet().safety.cautions) {
            INFO(c.code);
            const float y = place("safety/" + std::string(c.code));
            CHECK(y <= last);
            if (c.group != safety::Group::last) { // below its own heading, above the next group's
                const int group = static_cast<int>(c.group);
                CHECK(y > place("safety/group/" + std::to_string(group)));
                if (group + 1 < static_cast<int>(safety::Group::last)) {
                    CHECK(y < place("safety/group/" + std::to_string(group + 1)));
                }
            }
        }
        CHECK(says(text, "licensed electrician decide"));
    }
}

TEST_CASE("Country and units of the sheet", "[safety]") {
    Stand b;
    b.job(Metal::stainless, Country::us, UnitSystem::inch);
    const std::string us = b.panel();
    CHECK(says(us, "Shade 8 or darker, the US minimum"));
    CHECK(says(us, "OSHA 5 µg/m³ over 8 h"));
    CHECK_FALSE(says(us, "UK 10 µg/m³"));
    CHECK(says(us, "35 ft"));
    CHECK_FALSE(says(us, "11 m"));
    b.job(Metal::stainless, Country::uk);
    const std::string uk = b.panel();
    CHECK(says(uk, "UK 10 µg/m³ over 8 h"));
    CHECK(says(uk, "80 dBA"));
    CHECK_FALSE(says(uk, "OSHA: hearing program"));
    CHECK(says(uk, "11 m"));
    CHECK_FALSE(says(uk, "35 ft"));
}
