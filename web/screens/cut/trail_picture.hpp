// What moved the feed: physics alone, then shop practice, then the user's own cuts, each with its band on one common
// scale.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// Returns the height used; 0 when there is nothing to show.
float trail_picture(App& app, Point at, float w);

} // namespace torchside::web
