// Every language there is a table for. The page holds English alone and does without this file: a program that uses it
// carries all tables.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/words/say.hpp"

namespace torchside {

/// By its code of ISO 639: "es". Null for a language without a table.
[[nodiscard]] const Language* language_of(std::string_view code);

/// The codes in a row, as a refusal names them: "en, es".
[[nodiscard]] std::string language_codes();

} // namespace torchside
