// A whole job, or a quote, as a link: the part of an address after its #, which a browser sends to nobody.
//
//   std::string link = job_link(workbook);              // "j=AQGi..."
//   Outcome<Workbook> back = open_job_link(address);    // the address, or any end of it from the "j" on
//
// What       letter, "=", base64url (RFC 4648 section 5, no padding) of: version, kind, CBOR (RFC 8949), CRC-32 over
//            all before it. The CBOR is a map of small numbers (link_numbers.hpp) to values, of what differs from the
//            defaults; words by their place in the schema; nothing is compressed, so a link cannot grow when it is
//            read. A quote is an array of that map and the outline as bytes (quote_outline.hpp). A sealed quote has "."
//            and 24 or 28 letters more, which the page makes and checks (web/page/js/seal.js) over OpenedQuote::body.
//            There is no other parser of links: whoever checks a seal asks here what was opened.
// Range      a job link has all that a workbook has but shop.seal_key, shop.example and a drawing of more than 40 000 bytes; what
//            reading the drawing found goes with it, 320 places or some 8 000 bytes at most. Numbers come back to the
//            last bit.
// Edges      a link stands after the first '#' of a text, or is all of it. Refused, in this order: longer than
//            longest_link; a letter that base64url has not, a second '#' and a second '.' among them; a checksum that
//            does not fit (a letter lost or changed); a newer version; the other kind; then, by the field's name,
//            whatever the schema does not accept. Control, direction and zero-width letters are taken out of texts
//            before they are judged.
// Example    the demo workbook's job link has fewer than 2000 letters, and so has its quote's.
#pragma once

#include <string>
#include <string_view>

#include "core/quote/quote.hpp"
#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

inline constexpr unsigned link_version = 1;
inline constexpr std::size_t longest_link = 100000; // letters; 500 test cuts and 200 sets take less than 60 000

enum class LinkKind { job = 1, quote = 2 };

/// The kind of the link in a text by its letter, when there is one.
[[nodiscard]] Outcome<LinkKind> link_kind(std::string_view text);

[[nodiscard]] std::string job_link(const Workbook& workbook);
[[nodiscard]] Outcome<Workbook> open_job_link(std::string_view text);

[[nodiscard]] std::string quote_link(const Quote& quote);

/// A quote, and the text that stands for the bytes it was read from: made anew from them, so a seal that is right over `body` is right
/// over this quote, whatever the text looked like.
struct OpenedQuote {
    Quote quote{};
    std::string body{}; // "q=..."
    std::string seal{}; // its letters; empty: not sealed
};
[[nodiscard]] Outcome<OpenedQuote> open_sealed_quote(std::string_view text);
[[nodiscard]] Outcome<Quote> open_quote_link(std::string_view text);

} // namespace torchside::document
