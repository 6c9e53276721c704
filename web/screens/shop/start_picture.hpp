// The pictures of Start my shop: what each question asks about, drawn of what is answered.
#pragma once

#include <string_view>

#include "core/words/say.hpp"
#include "core/worksheet/workbook.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

[[nodiscard]] float start_picture_height();

/// The machine with its dial at the largest current, a plug for each voltage it takes, its torch on a plate.
void start_machine_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech);
/// Panel, breaker, wiring, machine and torch in a row.
void start_supply_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech);
/// Compressor, tank and hose; the tank is as large as it is, beside the usual ones.
void start_air_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech);
/// A ruler with both scales, true to each other, the one that was chosen in ink; and a tag with the money.
void start_units_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech);

} // namespace torchside::web
