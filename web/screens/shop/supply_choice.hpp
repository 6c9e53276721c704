// The supply that the machine hangs on: its voltage with the breaker and wiring that usually belong to it, and what can
// be cut on it.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Voltages as buttons and as a field. A voltage whose usual breaker or wiring is another asks before anything changes.
void supply_choice(Body& body);

/// Whose rules speak, as buttons under a heading.
void country_choice(Body& body);
/// The plugs of that country as buttons, "not given" first.
void plug_choice(Body& body);
[[nodiscard]] Word country_name(const App& app);

/// What can be cut at the highest current of this circuit, or what is said where none holds.
void there_words(Body& body, Word nothing);

} // namespace torchside::web
