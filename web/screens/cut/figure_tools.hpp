// What is read off an instrument on the panel of a figure, what it says, and one touch to keep it.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

inline constexpr const char* arc_reading_field = "field/scratch/reading";

/// The controller's reading: what it is at the torch, whether that is right, and what to do.
void arc_tools(Body& body);

/// A square cut on the line and measured: the kerf.
void kerf_tools(Body& body);

} // namespace torchside::web
