// The pierce as five pictures, one after the other, with the figures of this cut.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Nothing where the plate is not pierced standing still.
void pierce_picture(Body& body);

} // namespace torchside::web
