// What moved the feed: physics alone, then shop practice, then the user's own cuts, each with its band on one common
// scale.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Nothing when there is nothing to show.
void trail_picture(Body& body);

} // namespace torchside::web
