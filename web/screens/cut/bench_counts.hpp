// The countdowns at the table: a pierce, the arc time that the duty cycle leaves, and the rest after it.
#pragma once

#include <optional>
#include <string>

#include "web/screens/app.hpp"

namespace torchside::web {

/// The control of each was touched: it starts or stops.
void count_pierce(App& app, Duration delay);
void count_arc(App& app);

/// Before the screen is drawn: says what is over, and asks for the next frame, at a whole second; for none when nothing counts.
void keep_counting(App& app);
/// Nothing of a pierce is left: another plate, another screen.
void drop_pierce(App& app);

/// Whole seconds that a countdown shows, the last of which is 1; none while it does not run.
[[nodiscard]] std::optional<int> pierce_left(const App& app);
[[nodiscard]] std::optional<int> count_left(const App& app);

/// Arc time that is left now, in whole seconds that are surely there.
[[nodiscard]] int arc_left(const App& app);

/// "5:12"
[[nodiscard]] std::string clock_text(int seconds);

} // namespace torchside::web
