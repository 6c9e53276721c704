// The list of quotes handed out: revisions, numbers used twice, what the shop says of a quote that comes back.
#include <catch2/catch_test_macros.hpp>

#include <string>

#include "core/link/ledger.hpp"
#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

constexpr int today = 20786; // 2026-11-29

Quote quote(const std::string& number, double price = 180.0) {
    Quote q;
    q.number = number;
    q.part_name = "Base plate";
    q.issued_day = today;
    q.price_each = q.price_total = q.to_pay = price;
    return q;
}

/// Handed out on that day, as the screens do it.
Quote hand_out(Issued& issued, Quote fresh, int day) {
    fresh.issued_day = day;
    const Quote q = next_quote(fresh, issued).quote;
    note_issued(issued, issued_row(q, quote_link(q) + ".1AAAAA"));
    return q;
}

std::string said(const Quote& q, const Issued& issued, int day) {
    const auto [sign, words] = standing(q, quote_link(q), issued, day);
    return std::string(sign) + ' ' + test::said(words);
}

} // namespace

TEST_CASE("revisions are called by letters") {
    CHECK(revision_letters(0) == "A");
    CHECK(revision_letters(1) == "B");
    CHECK(revision_letters(25) == "Z");
    CHECK(revision_letters(26) == "AA");
    CHECK(revision_letters(last_revision) == "CV");
    CHECK(test::said(number_words("Q-118", 0)) == "Q-118");
    CHECK(test::said(number_words("Q-118", 2)) == "Q-118 revision C");
    CHECK(test::said(quote_words(Quote{})) == "Quote");
}

TEST_CASE("a quote that did not change goes out again as the one it was; changed or run out it is the next revision") {
    Issued issued;
    const Quote first = hand_out(issued, quote("Q-118"), today);
    CHECK(first.revision == 0);
    REQUIRE(issued.size() == 1);
    CHECK(issued[0].to_pay == 180.0);
    CHECK(issued[0].seal == "1AAAAA");
    CHECK(issued[0].ending == quote_link(first).substr(quote_link(first).size() - 8));

    Quote later = quote("Q-118");
    later.issued_day = today + 30; // its last day
    const NextQuote again = next_quote(later, issued);
    CHECK(again.number == NextQuote::Number::again);
    CHECK(again.quote.issued_day == today);
    CHECK(quote_link(again.quote) == quote_link(first));
    hand_out(issued, quote("Q-118"), today + 30);
    CHECK(issued.size() == 1);

    later.issued_day = today + 31;
    const NextQuote renewed = next_quote(later, issued);
    CHECK(renewed.number == NextQuote::Number::revised);
    CHECK(renewed.quote.revision == 1);
    CHECK(renewed.quote.issued_day == today + 31);

    const Quote dearer = hand_out(issued, quote("Q-118", 200.0), today + 2);
    CHECK(dearer.revision == 1);
    CHECK(dearer.issued_day == today + 2);
    CHECK(hand_out(issued, quote("Q-118"), today + 3).revision == 2); // back to the old price: still a change
    CHECK(hand_out(issued, quote("Q-119"), today + 3).revision == 0);
    CHECK(next_quote(quote("Q-120"), issued).number == NextQuote::Number::unused);
    CHECK(issued.size() == 4);
    CHECK(open_quote_link(quote_link(dearer)).value().revision == 1);
}

TEST_CASE("a note, a day of validity or a part's size is a change too") {
    Issued issued;
    hand_out(issued, quote("Q-1"), today);
    for (auto change : {+[](Quote& q) { q.note = "Painted"; }, +[](Quote& q) { q.valid_days = 31; },
                        +[](Quote& q) {
                            q.length = Length{1, mm};
                        },
                        +[](Quote& q) { q.part_name = "Gusset"; }, +[](Quote& q) { q.currency = "EUR"; }}) {
        Quote q = quote("Q-1");
        change(q);
        CHECK(next_quote(q, issued).number == NextQuote::Number::revised);
    }
}

TEST_CASE("without a number there are no revisions, but a row") {
    Issued issued;
    hand_out(issued, quote(""), today);
    hand_out(issued, quote(""), today);
    CHECK(issued.size() == 1);
    CHECK(hand_out(issued, quote("", 7.0), today).revision == 0);
    CHECK(issued.size() == 2);
}

TEST_CASE("the list is bounded, and a row without a seal gets it when it comes") {
    Issued issued;
    IssuedQuote row = issued_row(quote("Q-1"), quote_link(quote("Q-1")));
    CHECK(row.seal.empty());
    CHECK(note_issued(issued, row));
    CHECK_FALSE(note_issued(issued, row));
    row.seal = "1BBBBB";
    CHECK(note_issued(issued, row));
    CHECK(issued.size() == 1);
    CHECK(issued[0].seal == "1BBBBB");
    for (int i = 2; i <= static_cast<int>(most_issued) + 5; ++i) {
        row.number = "Q-" + std::to_string(i);
        note_issued(issued, row);
    }
    CHECK(issued.size() == most_issued);
    CHECK(issued.front().number == "Q-6");
    CHECK(issued.back().number == "Q-505");
}

TEST_CASE("past the last revision it stays there") {
    Issued issued;
    for (int i = 0; i < 102; ++i) {
        hand_out(issued, quote("Q-1", 10.0 + i), today);
    }
    CHECK(issued.back().revision == last_revision);
    CHECK(said(open_quote_link(quote_link(next_quote(quote("Q-1", 111.0), issued).quote)).value(), issued, today)
              .find("used twice") != std::string::npos);
}

TEST_CASE("the next free number") {
    Issued issued;
    for (const char* used : {"Q-118", "Q-119", "7", "Gate", "Gate-2", "Q-099"}) {
        hand_out(issued, quote(used), today);
    }
    CHECK(next_free_number("Q-118", issued) == "Q-120");
    CHECK(next_free_number("Q-098", issued) == "Q-100");
    CHECK(next_free_number("Q-999", issued) == "Q-1000");
    CHECK(next_free_number("7", issued) == "8");
    CHECK(next_free_number("Gate", issued) == "Gate-3");
    CHECK(next_free_number("2026/11 b", issued) == "2026/11 b-2");
    CHECK(next_free_number(std::string(20, '9'), issued).empty());
    CHECK(next_free_number(std::string(20, 'x'), issued).empty());
    CHECK(next_free_number("", issued) == "-2");
}

TEST_CASE("what the shop says of a quote that comes back") {
    Issued issued;
    const Quote first = hand_out(issued, quote("Q-118"), today);
    CHECK(said(first, issued, today) == "● Issued here, unaltered.");
    CHECK(said(first, issued, today + 30) == "● Issued here, unaltered.");
    CHECK(said(first, issued, today + 31) == "▲ Issued here, expired on 29 Dec 2026.");
    const Quote revised = hand_out(issued, quote("Q-118", 200.0), today + 1);
    CHECK(said(first, issued, today + 1) == "▲ Issued here, replaced by revision B on 30 Nov 2026.");
    CHECK(said(first, issued, today + 99) == "▲ Issued here, replaced by revision B on 30 Nov 2026.");
    CHECK(said(revised, issued, today + 1) == "● Issued here, unaltered.");
    hand_out(issued, quote("Q-118", 210.0), today + 2);
    CHECK(said(first, issued, today + 2) == "▲ Issued here, replaced by revision C on 1 Dec 2026.");
    CHECK(said(revised, issued, today + 2) == "▲ Issued here, replaced by revision C on 1 Dec 2026.");

    CHECK(said(quote("Q-7"), {}, today) == "● Issued here, unaltered."); // from before there was a list
    CHECK(said(quote("Q-7"), issued, today) ==
          "● Sealed here, unaltered. It is not in your list of quotes handed out.");
    CHECK(said(quote("Q-7"), issued, today + 31) == "▲ Sealed here, expired on 29 Dec 2026.");

    // The same number and revision for another quote: two devices with one list each, put together.
    Issued both;
    Quote gusset = quote("Q-5", 9.0);
    gusset.part_name = "Gusset";
    note_issued(both, issued_row(quote("Q-5"), quote_link(quote("Q-5"))));
    note_issued(both, issued_row(gusset, quote_link(gusset)));
    CHECK(said(quote("Q-5"), both, today) ==
          "▲ Issued here, but its number was used twice: also for Gusset on 29 Nov 2026.");
    CHECK(said(gusset, both, today) ==
          "▲ Issued here, but its number was used twice: also for Base plate on 29 Nov 2026.");
    // Without numbers nothing replaces anything.
    Issued bare;
    const Quote bare_one = hand_out(bare, quote("", 1.0), today);
    hand_out(bare, quote("", 2.0), today);
    CHECK(said(bare_one, bare, today) == "● Issued here, unaltered.");
}

TEST_CASE("rows of the list come to the customer's page as lines") {
    const Issued rows =
        read_rows("Q-1\t0\tBase plate\t20786\t30\tabcdefgh\nbroken\nQ-1\tx\t\t1\t2\t\n\t2\t\t20787\t14\tijklmnop");
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].number == "Q-1");
    CHECK(rows[0].part_name == "Base plate");
    CHECK(rows[0].issued_day == 20786);
    CHECK(rows[0].ending == "abcdefgh");
    CHECK(rows[1].number.empty());
    CHECK(rows[1].revision == 2);
    CHECK(rows[1].valid_days == 14);
    CHECK(read_rows("").empty());
}

TEST_CASE("a new key keeps the old ones, up to a bound") {
    Shop shop;
    change_key(shop, "a");
    CHECK(shop.old_keys.empty());
    for (int i = 0; i < 25; ++i) {
        change_key(shop, std::to_string(i));
    }
    CHECK(shop.seal_key == "24");
    REQUIRE(shop.old_keys.size() == most_old_keys);
    CHECK(shop.old_keys.front().seal_key == "4");
    CHECK(shop.old_keys.back().seal_key == "23");
    Shop other;
    other.name = "Other";
    keep_word(other, shop);
    CHECK(other.name == "Other");
    CHECK(other.seal_key == "24");
    CHECK(other.old_keys.size() == most_old_keys);
}

TEST_CASE("the customer's page says its revision, and after its last day that it ran out") {
    Quote q = quote("Q-118");
    const auto has = [&](std::optional<int> day, std::string_view words) {
        return quote_html(q, customers_english(), day).find(words) != std::string::npos;
    };
    for (const std::optional<int> day : {std::optional<int>{}, {today}, {today + 30}}) {
        CHECK(has(day, "Estimate. Valid until 29 Dec 2026."));
        CHECK(has(day, "To order, tell the shop by 29 Dec 2026."));
        CHECK_FALSE(has(day, "Expired"));
    }
    CHECK(has(today + 31, "<p class=\"holds over\">Expired on 29 Dec 2026. Ask the shop for today&#39;s price.</p>"));
    CHECK_FALSE(has(today + 31, "To order"));
    CHECK_FALSE(has({}, "revision"));
    q.revision = 1;
    CHECK(has({}, "Quote Q-118 revision B"));
    CHECK(has({}, "Replaces the earlier quote with this number."));
}
