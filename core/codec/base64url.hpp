// Bytes as letters that an address may hold: base64url without padding (RFC 4648, section 5).
#pragma once

#include <string>
#include <string_view>

namespace torchside::codec {

[[nodiscard]] std::string to_base64url(std::string_view bytes);

/// Appends the bytes. False for a letter outside the alphabet, a length that no bytes have, or bits left over that are
/// not 0: so only one text stands for some bytes, and a seal over the text is a seal over the bytes.
[[nodiscard]] bool from_base64url(std::string_view text, std::string& out);

} // namespace torchside::codec
