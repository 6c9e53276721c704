// The torch over the plate as one picture of several that are compared: how high it stands, what the arc does, where it goes
// next. Gap and plate are in pixels, of one scale for all that stand side by side.
#pragma once

#include "web/kit/ui.hpp"

namespace torchside::web {

struct TorchScene {
    float gap = 0;    // from the plate to the nozzle
    float plate = 14; // as thick as that, and cut off at what the picture has room for
    enum class Arc { off, into, through } arc = Arc::off;
    enum class Goes { nowhere, up, down, on } goes = Goes::nowhere;
};

/// What of the picture's height a gap may take.
[[nodiscard]] float torch_scene_room(Rect place);
void torch_scene(const Pen& pen, const Tokens& t, Rect place, const TorchScene& scene);

/// The same one scale for heights and a plate: pixels for a millimetre, so that the largest gap fits.
[[nodiscard]] float torch_scene_scale(Rect place, float largest_gap_mm);

} // namespace torchside::web
