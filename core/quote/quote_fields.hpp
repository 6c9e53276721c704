// The schema's table of a quote.
#pragma once

#include "core/quote/quote.hpp"
#include "core/schema/fields.hpp"

namespace torchside::document {

[[nodiscard]] Fields quote_fields();

} // namespace torchside::document
