// What each sign on a cut looks like, in a few strokes.
#pragma once

#include "core/tune/signs.hpp"
#include "web/kit/pen.hpp"

namespace torchside::web {

/// About 72 x 44 px, centred.
void sign_picture(const Pen& pen, const Tokens& tokens, tune::Sign sign, Point centre);

} // namespace torchside::web
