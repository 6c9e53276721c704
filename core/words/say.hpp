// A text as a sentence, in the reader's language and units.
//
// A phrase of the table is taken as it stands, and its slots are filled: a figure printed in these units
// (core/quantity/print.hpp) with the language's decimal sign, a name as it is, a text said likewise. Sentences of one
// text follow each other with a blank between. Linear in what is said.
// Example (also a test): words::circuit::Load{.breaker = Current{20, ampere}, .load = Current{45.9, ampere}} is
// "45.9 A on a 20 A breaker.".
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/quantity/unit_system.hpp"
#include "core/words/message.hpp"
#include "core/words/text.hpp"

namespace torchside {

/// The table of words in one language. A page holds the groups named in assets/words/later.txt only after its first
/// answer; until then they say nothing.
struct Language {
    struct Group {
        enum class Where : std::uint32_t { now, later, nowhere };
        Where where : 2;
        std::uint32_t start : 30; // of its first phrase
    };
    std::string_view code; // of ISO 639: "en"
    const char* now;       // phrases, each ended by a zero, group after group
    const char* later;
    const Group* groups;
};

[[nodiscard]] const Language& english();
/// Of the places and slots of all phrases: a table from elsewhere fits when it has the same.
[[nodiscard]] std::uint32_t words_fingerprint();
/// Of the same table the groups named in assets/words/customer.txt, for the customer's page, which is to weigh next to
/// nothing. The others say nothing.
[[nodiscard]] const Language& customers_english();
/// The same for the module that reads drawings, of reader.txt.
[[nodiscard]] const Language& readers_english();

struct Speech {
    const Language& language;
    Units units;

    Speech(UnitSystem in) : Speech(english(), in) {}
    Speech(const Language& table, UnitSystem in);
};

/// A phrase without slots, as it stands in the table: a label, a heading. It lives as long as the table.
[[nodiscard]] std::string_view phrase(Word word, const Language& language);

[[nodiscard]] std::string say(const Text& text, const Speech& speech);

/// Title, detail and remedy in a row: "Cord overloaded. 14 AWG cord carries 18 A. Use 10 AWG or thicker."
[[nodiscard]] std::string say(const Message& message, const Speech& speech);

/// Title and detail: how things stand.
[[nodiscard]] std::string say_summary(const Message& message, const Speech& speech);

/// Detail and remedy: what stands below the title.
[[nodiscard]] std::string say_below(const Message& message, const Speech& speech);

} // namespace torchside
