// The number that stands for each key in a link, so that a link is short.
//
// A key has one number wherever it stands ("material" of the job and of a test cut). Numbers never change and are never
// used again: a new key goes to the end of the list, a key that is gone leaves "" in its place. The numbers, the order
// of the words and the defaults that links of this version rest on are pinned in tests/data/link_keys.txt, and
// tests/oracle/links.py holds the program to that file. A default that changes needs a new link_version.
#pragma once

#include <optional>
#include <string_view>

namespace torchside::document {

/// None for "seal_key", "old_keys", "issued" and what stands in it alone, and "example": they cannot be put into a link.
[[nodiscard]] std::optional<unsigned> link_number(std::string_view key);

} // namespace torchside::document
