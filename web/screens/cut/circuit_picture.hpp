// The circuit drawn: the one-line diagram from panel to torch, and the breaker's band with this load on it.
#pragma once

#include <optional>

#include "core/supply/report.hpp"
#include "core/words/say.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

/// What a stop is drawn as, about 18 px across, times `by`.
void circuit_symbol(const Pen& pen, const Tokens& t, supply::Stop stop, Point c, Colour ink, float by = 1);

/// Each stop is a way to what is entered for it; returns the one that was touched.
[[nodiscard]] float chain_picture_height(const Ui& ui, const supply::Chain& chain);
std::optional<supply::Stop> chain_picture(Ui& ui, Rect place, const supply::Chain& chain, const Speech& speech);

[[nodiscard]] float band_picture_height();
void band_picture(Ui& ui, Rect place, const supply::Band& band, bool holds, const Speech& speech);

} // namespace torchside::web
