// Pieces of a sentence put together in one call: a chain of + costs the page some 100 bytes of code a piece.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace torchside {

[[nodiscard]] std::string joined(std::initializer_list<std::string_view> pieces);

} // namespace torchside
