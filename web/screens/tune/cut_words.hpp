// A test cut in words, for the log and for the cuts of other shops alike.
#pragma once

#include <string>

#include "core/tune/test_cut.hpp"
#include "core/words/text.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

[[nodiscard]] Word verdict_words(tune::Verdict verdict);

/// Metal, plate and current.
[[nodiscard]] std::string stock_words(const App& app, const tune::TestCut& cut);

} // namespace torchside::web
