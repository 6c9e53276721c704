// The tank as a gauge that empties: full, where the compressor starts, where the torch has too little, full again.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

void tank_picture(Body& body);

} // namespace torchside::web
