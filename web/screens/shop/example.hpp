// The example shop: an invented one to look at, marked on every screen. Nothing of it is sent to anybody.
#pragma once

#include "web/screens/body.hpp"

namespace torchside::web {

/// Nothing of this shop has been entered or asked yet: no name, no log, no country, and the machine, supply and air of a new
/// workbook.
[[nodiscard]] bool untouched(const Workbook& book);

/// The workbook of the example shop, on this screen.
void see_example(App& app);
/// A new workbook instead of the example, with this screen's settings alone, and in it what is usual where the browser is set to;
/// then the questions about what matters most.
void start_shop(App& app);

/// One line of a screen that shows the example: what it is, and the way out of it. Slim while a keypad needs the room.
[[nodiscard]] float example_strip_height(const Ui& ui, bool slim);
void example_strip(App& app, Rect place, bool slim);

/// A row at the foot of Cut: on a first visit the way to one's own shop, or to see the example; then, until a cut is logged,
/// that logging one narrows the bands.
void first_steps(App& app, Rect& rest);

/// Why a link of the example is not made, and what to do.
void example_refusal(Body& body, std::string_view id);

} // namespace torchside::web
