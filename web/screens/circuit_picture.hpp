// The circuit drawn: the one-line diagram from panel to torch, and the breaker's band with this load on it.
#pragma once

#include "core/supply/report.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

/// Returns the height used.
float chain_picture(Ui& ui, Point at, float w, const supply::Chain& chain);

[[nodiscard]] float band_picture_height();
void band_picture(Ui& ui, Rect place, const supply::Band& band, bool holds);

} // namespace torchside::web
