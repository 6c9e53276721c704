// The screens in another language: its words come as a file, its numbers have its decimal sign, and no English is left.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <regex>
#include <set>

#include "core/words/languages.hpp"
#include "core/words/word_file.hpp"
#include "generated/language_list.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/metal.hpp"
#include "tests/screens/shops.hpp"

using namespace torchside;
using namespace torchside::web;

namespace {

/// A person whose browser is set to Spanish and has its words at hand.
void set_browser() {
    browser() = {};
    browser().language = "es";
    browser().words["es"] = word_file("es");
}

/// Numbers of clauses, versions and pages of what is cited.
bool is_clause(const std::string& line) {
    static const std::regex cited(R"(NEC|CFR|IEC|NFPA|51B|OFL|G\.[0-9]|[0-9]\.[0-9]+\.[0-9])");
    return std::regex_search(line, cited);
}

/// What is no sentence of ours: a shop's own words, of which a line may hold a piece.
bool is_quoted(const std::string& line, const Workbook& book) {
    static const std::regex own("Gate and|and Rail|Four holes for M12");
    return std::regex_search(line, own) || book.job.quote.note.find(line) != std::string::npos;
}

} // namespace

TEST_CASE("a file of words is the same table", "[words]") {
    for (const std::string_view code : language_words) {
        if (code == english().code) {
            continue;
        }
        const auto file = WordFile::read(code, word_file(code));
        REQUIRE(file != nullptr);
        const Language& built_in = *language_of(code);
        for (const Word word : {words::metal::mild_steel, words::metal::wear_plate, words::circuit::holds}) {
            CHECK(std::string(phrase(word, file->language())) == std::string(phrase(word, built_in)));
        }
        CHECK(std::string(file->language().code) == std::string(code));
    }
}

TEST_CASE("a file that is cut, of another program or changed is refused or read within its end", "[words]") {
    const std::string good = word_file("es");
    REQUIRE(good.size() > 10'000);
    CHECK(WordFile::read("es", "") == nullptr);
    CHECK(WordFile::read("es", good.substr(0, good.size() - 2)) == nullptr); // too few zeros at the end
    CHECK(WordFile::read("es", good.substr(0, 11)) == nullptr);
    for (const std::size_t at : {0U, 3U, 4U, 7U, 10U, 11U}) { // mark, fingerprint, number of groups
        std::string bad = good;
        bad[at] = static_cast<char>(bad[at] ^ 0x55);
        CHECK(WordFile::read("es", bad) == nullptr);
    }
    const Text load = words::circuit::Load{.breaker = Current{20, ampere}, .load = Current{45.9, ampere}};
    std::uint32_t random = 7;
    for (int i = 0; i < 2000; ++i) { // the sanitizers watch
        std::string bad = good;
        for (int j = 0; j < 40; ++j) {
            random = random * 1664525U + 1013904223U;
            bad[12 + (random >> 8U) % (bad.size() - 300)] = static_cast<char>(random & 0x1FU);
        }
        if (const auto file = WordFile::read("es", bad)) {
            CHECK(say(load, Speech(file->language(), UnitSystem::metric)).size() < 200'000);
        }
    }
}

TEST_CASE("a browser set to another language opens in it, and the shop may choose", "[screens]") {
    set_browser();
    Person person;
    CHECK(person.named("Corte") != nullptr);
    CHECK(person.app().book().shop.display.language.empty());
    person.app().set("shop.display.language", "en", Label());
    person.look();
    CHECK(person.named("Cut") != nullptr);
    person.app().set("shop.display.language", "es", Label());
    person.look();
    CHECK(person.named("Corte") != nullptr);
    person.app().set("shop.display.language", "xx", Label()); // of another version: stays as it is
    person.look();
    CHECK(person.named("Corte") != nullptr);
}

TEST_CASE("until the words have arrived, and when they are not ours, the screens are in English", "[screens]") {
    browser() = {};
    browser().language = "es";
    Person person;
    CHECK(person.named("Cut") != nullptr);
    browser().words["es"] = "something else";
    person.app().notice("words", "es");
    person.look();
    CHECK(person.named("Cut") != nullptr);
    browser().words["es"] = word_file("es");
    person.app().notice("words", "es");
    person.look();
    CHECK(person.named("Corte") != nullptr);
}

TEST_CASE("a browser set to British English opens in that spelling", "[screens]") {
    browser() = {};
    browser().language = "en-GB";
    browser().words["en-GB"] = word_file("en-GB");
    Person person;
    CHECK(std::string(person.app().speech().language.code) == "en-GB");
    CHECK(std::string(person.app().word(words::metal::aluminum)) == "Aluminium");
    CHECK_FALSE(person.app().accents());
    person.app().set("shop.display.language", "en", Label());
    person.look();
    CHECK(std::string(person.app().word(words::metal::aluminum)) == "Aluminum");
}

TEST_CASE("the customer's page beside the quote speaks the customer's language", "[screens]") {
    browser() = {};
    keep_shop();
    browser().fragment = "#/quote";
    Person person(1440, 900);
    const auto until = [&] {
        const Node* node = person.node("customer/until");
        return node == nullptr ? std::string("nothing") : node->name + " " + node->value;
    };
    person.app().set("job.quote.language", "es", Label());
    person.look();
    CHECK(until().starts_with("Estimate.")); // its words have not come
    CHECK_FALSE(person.app().accents());
    browser().words["es"] = word_file("es");
    person.app().notice("words", "es");
    person.look();
    CHECK(until().starts_with("Estimación."));
    CHECK(person.app().accents());
    CHECK(person.named("Quote") != nullptr); // the shop's own screen stays as it is
    person.app().set("job.quote.language", "", Label());
    person.look();
    CHECK(until().starts_with("Estimate."));
}

TEST_CASE("no number has a point for its decimals where a comma is written", "[screens]") {
    static const std::regex point(R"((^|[^0-9])[0-9]{1,2}\.[0-9]+($|[^0-9.]))");
    set_browser();
    std::set<std::string> known;
    Person person(768, 1024); // a wider one shows the customer's prices too, with points between thousands
    for (NamedBook& named : many_books(2)) {
        look_everywhere(person, named.book, [&](const std::string& where) {
            for (const Written& line : person.written()) {
                if (std::regex_search(line.text, point) && !is_clause(line.text) && known.insert(line.text).second) {
                    INFO(named.name << ", " << where);
                    FAIL_CHECK(line.text);
                }
            }
        });
    }
}

TEST_CASE("no English is left on a screen in another language", "[screens]") {
    // What both languages say alike is no English: what is read is told from what the tables hold.
    set_browser();
    std::set<std::string> known;
    Person person(1440, 900); // so wide that it shows the customer's page too
    const std::regex english_words(R"((^|\s)(the|and|of|to|this|is|are|your|with|not|cut|for)(\s|$))",
                                   std::regex::icase);
    for (NamedBook& named : many_books(2)) {
        look_everywhere(person, named.book, [&](const std::string& where) {
            for (const Written& line : person.written()) {
                if (where != "evidence" && std::regex_search(line.text, english_words) &&
                    !is_quoted(line.text, named.book) && known.insert(line.text).second) {
                    INFO(named.name << ", " << where);
                    FAIL_CHECK(line.text);
                }
            }
        });
    }
}
