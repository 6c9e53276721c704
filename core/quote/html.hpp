// Pieces of the pages that core writes: text made safe, and the part's outline as a picture with its sizes.
#pragma once

#include <string>
#include <string_view>

#include "core/quote/quote_outline.hpp"
#include "core/words/say.hpp"

namespace torchside::document {

/// Any text, so that none of it is read as a tag.
[[nodiscard]] std::string escaped(std::string_view text);

/// <tag class="name">text</tag>, or nothing for no text.
void element(std::string& out, std::string_view tag, std::string_view name, std::string_view text);

/// An svg of the outline, its length and width drawn beside it; empty for an outline without extent.
[[nodiscard]] std::string outline_svg(const QuoteOutline& outline, Length length, Length width, const Speech& speech);

} // namespace torchside::document
