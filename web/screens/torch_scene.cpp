#include "web/screens/torch_scene.hpp"

#include <algorithm>

#include "web/kit/arrow.hpp"

namespace torchside::web {
namespace {

constexpr float most_plate = 16;
constexpr float below_plate = 12; // for sparks
constexpr float nozzle = 18;      // its least height in the picture

/// Three sparks from a point, up to both sides or down behind the cut.
void sparks(const Pen& pen, Colour colour, Point at, bool up) {
    const Point ends[2][4] = {{{-14, 9}, {-9, 11}, {-4, 11}, {0, 11}}, {{-18, -6}, {-12, -12}, {18, -6}, {12, -12}}};
    for (const Point end : ends[up ? 1 : 0]) {
        pen.line(at, {at.x + end.x, at.y + end.y}, colour, 1.5F);
    }
}

/// An arrow as long as 16 px that ends here.
void arrow(const Pen& pen, Colour colour, Point end, Point way) {
    pen.line({end.x - 16 * way.x, end.y - 16 * way.y}, {end.x - 5 * way.x, end.y - 5 * way.y}, colour, 2);
    arrow_head(pen, end, {end.x - way.x, end.y - way.y}, colour, 7);
}

} // namespace

float torch_scene_room(Rect place) {
    return place.h - most_plate - below_plate - nozzle;
}

float torch_scene_scale(Rect place, float largest_gap_mm) {
    constexpr float most = 9; // px for a millimetre
    return largest_gap_mm > 0 ? std::min(most, torch_scene_room(place) / largest_gap_mm) : most;
}

void torch_scene(const Pen& pen, const Tokens& t, Rect place, const TorchScene& scene) {
    const float thick = std::clamp(scene.plate, 3.0F, most_plate);
    const float top = place.bottom() - below_plate - most_plate;
    const float x = place.centre().x;
    const float tip = top - scene.gap;
    pen.push_clip(place);
    pen.fill({place.x, top, place.w, thick}, t.fill);
    pen.hline(place.x, place.right(), top, t.ink, 2);
    if (scene.plate <= most_plate) { // else it goes on below the picture
        pen.hline(place.x, place.right(), top + thick, t.ink, 2);
    }
    if (scene.arc != TorchScene::Arc::off) {
        const bool through = scene.arc == TorchScene::Arc::through;
        const float end = through ? top + thick + 3 : top + thick / 2;
        pen.fill({x - 2, tip, 4, end - tip}, t.accent);
        sparks(pen, t.accent, {x, through ? top + thick : top}, !through);
    }
    const Point outline[] = {{x - 10, place.y - 2}, {x - 10, tip - 7}, {x - 4, tip},
                             {x + 4, tip},          {x + 10, tip - 7}, {x + 10, place.y - 2}};
    pen.fill({x - 10, place.y - 2, 20, tip - 7 - place.y + 2}, t.ground);
    pen.polyline(outline, 6, t.ink, 2);
    switch (scene.goes) {
    case TorchScene::Goes::nowhere:
        break;
    case TorchScene::Goes::up:
        arrow(pen, t.ink, {x + 22, place.y + 4}, {0, -1});
        break;
    case TorchScene::Goes::down:
        arrow(pen, t.ink, {x + 22, place.y + 22}, {0, 1});
        break;
    case TorchScene::Goes::on:
        arrow(pen, t.ink, {x + 32, place.y + 12}, {1, 0});
        break;
    }
    pen.pop_clip();
}

} // namespace torchside::web
