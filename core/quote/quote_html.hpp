// The customer's page: a quote as HTML, with its outline as SVG. No script, no style: web/page/quote.css dresses it.
//
// What       the inside of the page's <main>: who, what, the part to scale with its dimensions over all, the price, how
//            long it is valid, and that it is an estimate. Every text is escaped; nothing else comes from outside.
// Range      any quote that check_quote() accepts
// Edges      an empty text leaves no line; a quote without an outline has no drawing; a drawing is at most 100 by 70
//            units of its view whatever the part's size.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/quote/quote.hpp"
#include "core/words/say.hpp"

namespace torchside::document {

/// `today`, when it is known: after its last day the page says that the quote ran out.
[[nodiscard]] std::string quote_html(const Quote& quote, const Language& language, std::optional<int> today = {});

/// The same as a whole page that stands alone, dressed by this style sheet: a file to send. Its own policy lets nothing run and
/// nothing be fetched.
[[nodiscard]] std::string quote_file(const Quote& quote, const Language& language, std::string_view style);

/// What stands there instead when a link cannot be opened.
[[nodiscard]] std::string refused_html(const Fault& fault, const Language& language);

} // namespace torchside::document
