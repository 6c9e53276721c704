// Height control: what the controller reads at this cut, which divider it has, and the volts of a millimetre on this
// machine.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// Below the fields of the height control's section; returns the height used.
float height_tools(App& app, Rect place);

} // namespace torchside::web
