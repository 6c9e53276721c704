// The example shop: an invented one to look at, marked on every screen. Nothing of it is sent to anybody.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Nothing of this shop has been entered yet: no name, no log, and the machine, supply and air of a new workbook.
[[nodiscard]] bool untouched(const Workbook& book);

/// The workbook of the example shop, on this screen.
void see_example(App& app);
/// A new workbook instead of the example, with this screen's settings alone; then the panel that asks what matters most.
void start_shop(App& app);

/// One line of a screen that shows the example: what it is, and the way out of it. Slim while a keypad needs the room.
[[nodiscard]] float example_strip_height(const Ui& ui, bool slim);
void example_strip(App& app, Rect place, bool slim);

/// A quiet row for a shop that is still empty: to enter one's own, or to see the example.
void first_steps(App& app, Rect place);

/// Why a link of the example is not made, and what to do.
void example_refusal(Body& body, std::string_view id);

} // namespace torchside::web
