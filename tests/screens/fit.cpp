// Every line of text stands whole in its place: nothing is shortened, runs out of the screen or of its view, stands on another
// text, tears a number apart or lacks a sign; at every width, in both units, with gloves and without.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>
#include <imgui_internal.h>
#include <set>

#include "core/store/record.hpp"
#include "generated/language_list.hpp"
#include "generated/words/change.hpp"
#include "tests/screens/shops.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

/// Inside what is dragged sideways or enlarged, a line may go on past the edge.
bool slides(const Ui& ui, const Written& line) {
    return std::any_of(ui.regions.begin(), ui.regions.end(), [&](const Region& r) {
        const bool here = line.clip.x + 1 >= r.view.x && line.clip.right() <= r.view.right() + 1;
        return !r.view.empty() && (r.zooms || r.content.x > r.view.w + 1) && here;
    });
}

bool seen(const Written& line) {
    const Rect both = overlap(line.place, line.clip);
    return !line.text.empty() && line.text != " " && both.h > line.place.h * 0.6F && both.w > 0;
}

/// What of a line box is ink: figures that are read from far have no letters that hang or rise, and stand closer to what is above.
Rect inked(const Written& line) {
    const bool far = size_of(Type::second) >= far_second && line.type >= Type::second;
    return far ? Rect{line.place.x, line.place.y + 0.2F * line.place.h, line.place.w, 0.6F * line.place.h} : line.place;
}

/// Letters reach over two thirds of a line's height: two lines that share less do not touch.
bool collide(const Written& a, const Written& b) {
    const Rect one = inked(a);
    const Rect other = inked(b);
    const Rect both = overlap(one, other);
    return both.w > 2 && both.h > 0.45F * std::min(one.h, other.h);
}

/// What a person wrote may be longer than its field shows.
bool own_words(const Ui& ui, const Written& line) {
    const auto& nodes = ui.tree().nodes();
    return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) {
        return n.role == Role::textbox && n.state.find("mode-text") != std::string::npos && n.value == line.text;
    });
}

/// The size of type has every sign that is written in it; without this, a figure range that lacks "$" prints a dash.
bool has_signs(const Written& line) {
    const ImFont* font = font_atlas().Fonts[static_cast<int>(line.type)];
    const char* at = line.text.data();
    const char* end = at + line.text.size();
    while (at < end) {
        unsigned int sign = 0;
        at += ImTextCharFromUtf8(&sign, at, end);
        if (font->FindGlyphNoFallback(static_cast<ImWchar>(sign)) == nullptr) {
            return false;
        }
    }
    return true;
}

bool torn(const Ui& ui, const Written& first, const Written& second) {
    const float down = second.place.y - first.place.y;
    if (std::abs(second.place.x - first.place.x) > 1 || down < 1 || down > 1.5F * first.place.h) {
        return false; // not two lines of one paragraph
    }
    if (first.text.size() == 1 && second.text.size() == 1) {
        return false; // numbers of legs, one a row
    }
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    if (first.text.empty() || second.text.empty() || !digit(second.text.front()) ||
        (!digit(first.text.back()) && first.text.back() != '.')) {
        return false;
    }
    const std::string whole =
        first.text.substr(first.text.size() - std::min<std::size_t>(8, first.text.size())) + second.text.substr(0, 2);
    const auto& nodes = ui.tree().nodes();
    return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) {
        return n.name.find(whole) != std::string::npos || n.value.find(whole) != std::string::npos ||
               n.about.find(whole) != std::string::npos;
    });
}

std::set<std::string> faults(Person& person, float width) {
    std::set<std::string> out;
    const std::vector<Written>& lines = person.written();
    const Ui& ui = person.app().ui();
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Written& line = lines[i];
        if (!seen(line)) {
            continue;
        }
        if (!has_signs(line)) {
            out.insert("a sign is not in this type: " + line.text);
        }
        if (line.shortened && !own_words(ui, line)) {
            out.insert("shortened: " + line.text);
        }
        const float left = std::max(line.clip.x, 0.0F);
        const float right = std::min(line.clip.right(), width);
        if ((line.place.x < left - 1 || line.place.right() > right + 1) && !slides(ui, line)) {
            out.insert("outside: " + line.text);
        }
        for (std::size_t j = i + 1; j < lines.size(); ++j) {
            if (seen(lines[j]) && collide(line, lines[j]) && !overlap(line.clip, lines[j].clip).empty() &&
                !slides(ui, line)) {
                out.insert("on each other: " + line.text + " | " + lines[j].text);
            }
        }
        if (i + 1 < lines.size() && torn(ui, line, lines[i + 1])) {
            out.insert("torn: " + line.text + " | " + lines[i + 1].text);
        }
    }
    return out;
}

} // namespace

TEST_CASE("every text is whole, inside the screen and alone in its place") {
    std::set<std::string> known;
    for (const float width : {360.0F, 768.0F, 1100.0F, 1440.0F}) {
        browser() = {};
        Person person(width, 800);
        for (NamedBook& named : many_books(6)) {
            for (const bool inches : {false, true}) {
                for (const bool glove : {false, true}) {
                    named.book.shop.display.units = inches ? UnitSystem::inch : UnitSystem::metric;
                    named.book.shop.display.glove = glove;
                    look_everywhere(person, named.book, [&](const std::string& where) {
                        for (const std::string& fault : faults(person, width)) {
                            if (known.insert(fault).second) {
                                INFO(width << " px, " << named.name << ", " << where << (glove ? ", gloves" : ""));
                                FAIL_CHECK(fault);
                            }
                        }
                    });
                }
            }
        }
    }
}

TEST_CASE("in other languages, too, every text is whole, inside the screen and alone in its place") {
    std::set<std::string> known;
    for (const std::string_view code : language_words) {
        if (code == english().code) {
            continue; // above
        }
        for (const float width : {360.0F, 768.0F, 1440.0F}) {
            browser() = {};
            browser().words[std::string(code)] = word_file(code);
            Person person(width, 800);
            for (NamedBook& named : many_books(1)) {
                named.book.shop.display.language = code;
                for (const bool glove : {false, true}) {
                    named.book.shop.display.glove = glove;
                    look_everywhere(person, named.book, [&](const std::string& where) {
                        for (const std::string& fault : faults(person, width)) {
                            if (known.insert(fault).second) {
                                INFO(code << ", " << width << " px, " << named.name << ", " << where
                                          << (glove ? ", gloves" : ""));
                                FAIL_CHECK(fault);
                            }
                        }
                    });
                }
            }
        }
    }
}

TEST_CASE("what is said of work that cannot be read or kept is whole at every width") {
    for (const float width : {360.0F, 1100.0F}) {
        for (const std::string kept : {"damaged", "newer", "refused"}) {
            browser() = {};
            browser().refuses_to_keep = kept == "refused";
            if (kept != "refused") {
                browser().kept[0] = kept == "newer" ? document::pack_record("{\"torchside\": 99}", 4) : "no record";
            }
            Person person(width, 800);
            if (kept == "refused") {
                person.app().notice("storage-refused", "");
                person.look();
            }
            REQUIRE(person.node("notice/storage") != nullptr);
            CHECK(faults(person, width) == std::set<std::string>{});
            person.touch_id("notice/storage");
            CHECK(faults(person, width) == std::set<std::string>{});
            if (person.named("Start without it") != nullptr) {
                person.touch("Start without it");
                CHECK(faults(person, width) == std::set<std::string>{});
            }
        }
    }
}

TEST_CASE("at the table every text is whole in every window, language and glove") {
    std::set<std::string> known;
    for (const std::string_view code : language_words) {
        for (const Point size :
             {Point{360, 740}, Point{360, 225}, Point{740, 360}, Point{768, 1024}, Point{1440, 900}}) {
            browser() = {};
            browser().words[std::string(code)] = word_file(code);
            Person person(size.x, size.y);
            for (NamedBook& named : many_books(2)) {
                for (const bool odd : {false, true}) { // gloves, and inches
                    named.book.shop.display.language = code;
                    named.book.shop.display.glove = odd;
                    named.book.shop.display.units = odd ? UnitSystem::inch : UnitSystem::metric;
                    person.app().take(named.book, words::change::inch);
                    person.app().open("bench");
                    person.app().notice("awake", odd ? "none" : "on");
                    person.look();
                    for (const std::string& fault : faults(person, size.x)) {
                        if (known.insert(fault).second) {
                            INFO(code << ", " << size.x << " x " << size.y << " px, " << named.name
                                      << (odd ? ", gloves" : ""));
                            FAIL_CHECK(fault);
                        }
                    }
                    person.app().close();
                }
            }
        }
    }
}
