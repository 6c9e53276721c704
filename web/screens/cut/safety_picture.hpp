// What each group of cautions is about, in a few strokes.
#pragma once

#include "core/safety/report.hpp"
#include "web/kit/pen.hpp"

namespace torchside::web {

/// About 60 x 52 px, centred.
[[gnu::noinline]] void safety_picture(const Pen& pen, const Tokens& tokens, safety::Group group, Point centre);

} // namespace torchside::web
