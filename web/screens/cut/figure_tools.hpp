// What is read off an instrument on the panel of a figure, what it says, and one touch to keep it.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

inline constexpr const char* arc_reading_field = "field/scratch/reading";

/// The controller's reading: what it is at the torch, whether that is right, and what to do; returns the height used.
float arc_tools(App& app, Rect place);

/// A square cut on the line and measured: the kerf.
float kerf_tools(App& app, Rect place);

} // namespace torchside::web
