// What stands at the table: the feed, four figures of which two count, and the cards.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// Height of a control here: that of a hand, and in a low window with gloves no less than 76 px.
[[nodiscard]] float bench_target(const Ui& ui);

[[nodiscard]] float feed_height(const Ui& ui);
void feed_zone(App& app, Rect place, const cut::Settings& settings);

/// Volts, height, pierce and arc time in two rows, between rules; how high one cell is at least.
[[nodiscard]] float cell_height(const Ui& ui);
void cells(App& app, Rect place, const cut::Settings& settings);

[[nodiscard]] float cards_height(const Ui& ui);
void cards(App& app, Rect place, const cut::Settings& settings);

/// The plate is past reach: the reason, in place of figures; gives back its height.
float refused(App& app, Rect place);

} // namespace torchside::web
