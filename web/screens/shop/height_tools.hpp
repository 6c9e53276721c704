// Height control: what the controller reads at this cut, which divider it has, and the volts of a millimetre on this
// machine.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Below the fields of the height control's section.
void height_tools(Body& body);

} // namespace torchside::web
