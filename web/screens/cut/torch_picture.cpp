#include "web/screens/cut/torch_picture.hpp"

#include <string>

#include "generated/words/settings.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {

float torch_picture_height() {
    return 78;
}

void torch_picture(Ui& ui, Rect place, const Workbook& book, const cut::Settings& settings, const Speech& speech) {
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Units units = speech.units;
    const Shown plate = show_plate(book.job.thickness, book.job.material, units);
    const Shown height = show(settings.cut_height.value, units);
    const Shown kerf = show(settings.kerf.value, units);

    const auto thickness_mm = static_cast<float>(book.job.thickness.in(mm));
    const auto height_mm = static_cast<float>(settings.cut_height.value.in(mm));
    const auto kerf_mm = static_cast<float>(settings.kerf.value.in(mm));
    // One scale for all three, such that gap and plate fill the picture and a kerf stays visible.
    const float room = place.h - 30;
    const float scale = std::min(room / (thickness_mm + height_mm), 14.0F);
    const float top = place.y + 26 + height_mm * scale; // of the plate
    const float bottom = std::min(top + thickness_mm * scale, place.bottom() - 1);
    const float x = place.centre().x;
    const float half = kerf_mm * scale / 2;
    const float left = place.x + 10;
    const float right = place.right() - 10;

    const auto side = [&](float from, float to) {
        pen.fill({from, top, to - from, bottom - top}, t.fill);
        pen.hline(from, to, top, t.ink, 2);
        pen.hline(from, to, bottom, t.ink, 2);
    };
    side(left, x - half);
    side(x + half, right);
    for (const float edge : {left, x - half, x + half, right}) {
        pen.vline(edge, top, bottom, t.ink, 2);
    }
    const float tip = top - height_mm * scale;
    pen.fill({x - 2, tip, 4, bottom - tip}, t.accent);
    const Point nozzle[] = {{x - 18, place.y}, {x - 18, tip - 10}, {x - 8, tip},
                            {x + 8, tip},      {x + 18, tip - 10}, {x + 18, place.y}};
    pen.polyline(nozzle, 6, t.ink, 2);

    // Dimensions, the way a drawing shows them.
    const float d = x + 36;
    const float line = Pen::line_height(Type::label);
    pen.hline(d - 14, d + 14, tip, t.ink, 1);
    pen.vline(d, tip, top, t.ink, 1);
    const std::string height_text = say(words::settings::Height{.height = height.number}, speech);
    const float room_beside = place.right() - d - 18;
    const float lines = pen.paragraph(Type::label, {}, {}, height_text, room_beside, false);
    pen.paragraph(Type::label, {d + 18, std::max(place.y, top - lines - 3)}, t.ink, height_text, room_beside);
    const std::string plate_text = say(words::settings::Plate{.plate = plate.number}, speech);
    pen.text(Type::label, {left + 6, top - line - 2}, t.quiet, plate_text);
    const std::string kerf_text = say(words::settings::Kerf{.kerf = kerf.number}, speech);
    const float middle = (top + bottom) / 2;
    if (bottom - top > 18) {
        const float end = x - half - 34;
        pen.text(Type::label, {end, middle - line / 2}, t.ink, kerf_text, Align::right);
        pen.hline(end + 4, x - half, middle, t.ink, 1);
        pen.hline(x + half, x + half + 16, middle, t.ink, 1);
    } else {
        const float end = x - half - 14;
        const bool apart = left + 6 + pen.width(Type::label, plate_text) + 6 < end - pen.width(Type::label, kerf_text);
        pen.text(Type::label, {end, top - (apart ? 1.0F : 2.0F) * line - 2}, t.ink, kerf_text, Align::right);
    }
    ui.node("cut/picture", Role::img, place,
            say(words::settings::Picture{.height = height.whole(), .kerf = kerf.whole()}, speech));
}

} // namespace torchside::web
