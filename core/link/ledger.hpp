// The list of quotes that were handed out (Shop::issued): which number and revision the next one gets, and what the shop can say of one
// that comes back.
//
// What       A quote that is as it was when it was last handed out under its number, and still valid, goes out again as that one, with the
//            day it had then. Changed or run out, it is the next revision, of today: first handed out, then B, C ... Z, AA, AB ...
//            Two quotes are the same when their links are: the list keeps each link's last letters, its checksum among them.
// Range      most_issued rows, the oldest goes first; revisions up to last_revision.
// Edges      a quote without a number has no revisions. Past last_revision it stays: its rows then say that a number was used twice.
// Example    Q-118, handed out, its price changed: Q-118 revision B; next_free_number() offers Q-119.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/price/issued_quote.hpp"
#include "core/quote/quote.hpp"

namespace torchside::document {

using price::IssuedQuote;
using Issued = std::vector<IssuedQuote>;

inline constexpr std::size_t most_issued = 500;
inline constexpr std::size_t most_old_keys = 20;
inline constexpr int last_revision = 99;
inline constexpr std::size_t ending_size = 8; // letters of a link that hold its checksum, 48 bits

/// What belongs to this device, whatever shop is opened on it: its keys and the list.
void keep_word(Shop& next, const Shop& now);

/// A new key in place of the one in use, which goes to the old ones.
void change_key(Shop& shop, std::string key);

struct NextQuote {
    enum class Number { unused, again, revised };
    Quote quote{};
    Number number = Number::unused;
    std::optional<IssuedQuote> last{}; // under the same number
};

/// `fresh` as it would be handed out on its day of issue.
[[nodiscard]] NextQuote next_quote(Quote fresh, const Issued& issued);

/// The row of a quote whose link (sealed or not) is handed out.
[[nodiscard]] IssuedQuote issued_row(const Quote& quote, std::string_view link);

/// Puts a row at the end; false when that very quote is in the list. One that was there without a seal gets it.
bool note_issued(Issued& issued, const IssuedQuote& row);

/// The number with its last digits counted up until the list has it not: "Q-118" -> "Q-119", "Gate" -> "Gate-2". At most 20 letters.
[[nodiscard]] std::string next_free_number(const std::string& number, const Issued& issued);

/// What the shop's own device says of a quote whose seal is right: ● or ▲, and a sentence.
[[nodiscard]] std::pair<std::string_view, Text> standing(const Quote& quote, std::string_view body,
                                                         const Issued& issued, int today);

/// The rows that standing() needs from lines of number, revision, part's name, day, valid days and ending, with tabs between; a line
/// that is none is passed over.
[[nodiscard]] Issued read_rows(std::string_view lines);

} // namespace torchside::document
