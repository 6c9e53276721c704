// Inch mode knows no metric unit, and metric mode none of the inch world's: on no screen, in no field, with no workbook.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <regex>
#include <set>

#include "tests/screens/shops.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

/// Units behind a number, and words that are a unit wherever they stand. V, A, W, kW, kVA, AWG and degrees belong to both.
const std::regex& metric_words() {
    static const std::regex words(
        R"((\d[ \u2009]?(m|g|l|L|bar|C|cm)(?![\w²/]))|(^|[^\w])(mm|mm²|mm2|mm/min|m/min|mm/s²|mm/s2|cm|kg|l/min|L/min|m3|kPa|MPa)(?![\w])|°C|millimet|\b([Mm]et(re|er)s?|[Ll]it(re|er)s?|[Gg]rams?|[Kk]ilogram\w*)\b|/kg|V/mm|(^|\| )(bar|L|m|C)( \||$))",
        std::regex::ECMAScript);
    return words;
}
const std::regex& inch_words() {
    static const std::regex words(
        R"((\d[ \u2009]?(in(?! all| a | ten| 10| the)|ft|ga|lb|oz|F|gal|hp|psi|cfm|")(?![\w]))|(^|[^\w])(in/min|in/s²|in/s2|psi|cfm|gal|lb|fl oz|ipm|kcmil|hp)(?![\w])|°F|[Ii]nches|/lb|V/in|\b(foot|feet|gallons?|pounds?)\b)",
        std::regex::ECMAScript);
    return words;
}

/// Where the other unit stands beside on purpose: the plate in the title block and the feed, and what chooses units.
bool may_say_both(const Node& node) {
    if (node.id == "start/picture") {
        return true; // the question of units shows a ruler of each
    }
    if (node.id == "stock/inches" || node.parent == "stock/inches" || node.id == "plate/size/4 × 8 ft") {
        return true; // a metric shop is handed sheet by gauge and by the foot too
    }
    const std::string_view id = node.id;
    for (const std::string_view known :
         {"title/thickness", "title/units", "cut/feed", "field/shop.display.units", "choice/shop.display.units",
          "choice/shop.controller.units", "field/shop.controller.units", "key/", "keypad"}) {
        if (id.starts_with(known)) {
            return true;
        }
    }
    return false;
}

/// Without what is printed on the terminals of a breaker, and names a column of the code's table.
std::string as_asked(const std::string& text) {
    static const std::regex printed("(60|70|75) °C (mark|column)|(60|70|75) °C[.]?$|^°C (mark|column)");
    return std::regex_replace(text, printed, "");
}

/// A line that was broken off a sentence which is right as a whole: "each, 12.50 in" of "12.50 in all".
bool in_right_words(Person& person, const std::string& line, const std::regex& wrong) {
    const auto& nodes = person.app().ui().tree().nodes();
    return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) {
        const std::string* texts[] = {&n.name, &n.value, &n.about};
        return std::any_of(std::begin(texts), std::end(texts), [&](const std::string* text) {
            return text->size() > line.size() && text->find(line) != std::string::npos &&
                   !std::regex_search(as_asked(*text), wrong);
        });
    });
}

std::set<std::string> wrong_words(Person& person, const std::regex& wrong) {
    std::set<std::string> out;
    std::vector<Rect> both;
    for (const Node& node : person.app().ui().tree().nodes()) {
        if (may_say_both(node)) {
            both.push_back(node.place);
            continue;
        }
        for (const std::string& text : {node.name, node.value, node.about}) {
            if (std::regex_search(as_asked(text), wrong)) {
                out.insert(node.id + ": " + text);
            }
        }
    }
    for (const Written& line : person.written()) {
        const Point middle = line.place.centre();
        const bool beside = std::any_of(both.begin(), both.end(), [&](const Rect& r) { return r.holds(middle); });
        if (!beside && !in_right_words(person, line.text, wrong) && std::regex_search(as_asked(line.text), wrong)) {
            out.insert("drawn: " + line.text);
        }
    }
    return out;
}

void no_word_of(UnitSystem units, const std::regex& wrong, int random) {
    browser() = {};
    Person person(360, 740);
    std::set<std::string> seen;
    for (NamedBook& named : many_books(random)) {
        named.book.shop.display.units = units;
        named.book.shop.controller.units.reset();
        look_everywhere(person, named.book, [&](const std::string& where) {
            for (const std::string& text : wrong_words(person, wrong)) {
                if (seen.insert(text).second) {
                    INFO(named.name << ", " << where);
                    FAIL_CHECK(text);
                }
            }
        });
    }
}

} // namespace

TEST_CASE("what finds a unit finds it") {
    for (const char* text : {"6 mm", "1640 mm/min", "3 g of water", "12 kg at", "100 l", "4.5 bar", "25 °C", "2.5 mm²",
                             "per metre", "1.60/kg", "25 C", "15 m, 10 AWG", "V/mm"}) {
        INFO(text);
        CHECK(std::regex_search(text, metric_words()));
        CHECK_FALSE(std::regex_search(text, inch_words()));
    }
    for (const char* text : {"1/4 in", "64 in/min", "10 ga", "5 lb", "80 psi", "5.3 cfm", "77 °F", "60 gal", "50 ft",
                             "2 hp", "1.5 fl oz", "0.72/lb"}) {
        INFO(text);
        CHECK(std::regex_search(text, inch_words()));
        CHECK_FALSE(std::regex_search(text, metric_words()));
    }
    for (const char* text :
         {"Bar grating", "bar: 8 in 10", "40 A", "240 V", "10 AWG", "5 min", "Made in 3 minutes", "6 kW"}) {
        INFO(text);
        CHECK_FALSE(std::regex_search(text, inch_words()));
        CHECK_FALSE(std::regex_search(text, metric_words()));
    }
}

TEST_CASE("inch mode says nothing in metric units") {
    no_word_of(UnitSystem::inch, metric_words(), 50);
}

TEST_CASE("metric mode says nothing in inch units") {
    no_word_of(UnitSystem::metric, inch_words(), 50);
}
