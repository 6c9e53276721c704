// The feed as the log knows it: a curve that narrows with every cut, the clean window around the next one, and the cuts
// made.
#pragma once

#include "core/worksheet/tuning.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

[[nodiscard]] float tune_picture_height(float screen_height);
void tune_picture(App& app, Rect place, const Tuning& tuning);

/// The three verdicts as marks on an axis: a diamond is too slow, a ring clean, a triangle too fast.
void verdict_mark(const Pen& pen, const Tokens& tokens, tune::Verdict verdict, Point at);

} // namespace torchside::web
