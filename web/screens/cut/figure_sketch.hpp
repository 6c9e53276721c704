// One small drawing for each figure of the table: what is measured there.
#pragma once

#include <string_view>

#include "web/kit/pen.hpp"

namespace torchside::web {

/// `key` as in core/worksheet/figures; nothing for one that has no drawing.
void figure_sketch(const Pen& pen, const Tokens& t, std::string_view key, Rect place);

} // namespace torchside::web
