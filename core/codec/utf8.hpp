// The little of UTF-8 (RFC 3629) that reading text from a file needs.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace torchside::codec {

/// Whole, shortest-form UTF-8 without surrogates, up to U+10FFFF.
[[nodiscard]] bool is_utf8(std::string_view text);

/// Code points in text that is_utf8().
[[nodiscard]] std::size_t letters(std::string_view text);

/// A control character (C0, DEL, C1), one that turns the direction of what follows, or one without width: such text
/// could pose as other text on the screen or on the customer's page.
[[nodiscard]] bool has_hidden(std::string_view utf8);

/// The text without those.
[[nodiscard]] std::string without_hidden(std::string_view utf8);

void append_utf8(std::string& out, unsigned code_point);

/// Text from outside made fit for one line of an error: at most `most` letters, anything unprintable as '?'.
[[nodiscard]] std::string one_line(std::string_view text, std::size_t most = 60);

} // namespace torchside::codec
