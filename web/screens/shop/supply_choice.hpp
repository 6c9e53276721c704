// The supply that the machine hangs on: its voltage with the breaker and wiring that usually belong to it, and what can
// be cut on it.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// Voltages as buttons and as a field. A voltage whose usual breaker or wiring is another asks before anything changes.
float supply_choice(App& app, Rect place);

/// Whose rules speak, as buttons under a heading; returns the height used.
float country_choice(App& app, Rect place);
/// The plugs of that country as buttons, "not given" first.
float plug_choice(App& app, Rect place);
[[nodiscard]] const char* country_name(const App& app);

/// What can be cut at the highest current of this circuit; returns the height used.
float there_words(App& app, Point at, float w);

} // namespace torchside::web
