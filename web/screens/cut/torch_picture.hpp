// The torch over the plate, to scale from the settings: plate thickness, cut height and kerf share one scale.
#pragma once

#include "core/cut/settings.hpp"
#include "core/worksheet/workbook.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

[[nodiscard]] float torch_picture_height();
void torch_picture(Ui& ui, Rect place, const Workbook& book, const cut::Settings& settings, const Speech& speech);

} // namespace torchside::web
