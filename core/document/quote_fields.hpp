// The schema's table of a quote. Internal to core/document.
#pragma once

#include "core/document/fields.hpp"
#include "core/document/quote.hpp"

namespace torchside::document {

[[nodiscard]] Fields quote_fields();

} // namespace torchside::document
