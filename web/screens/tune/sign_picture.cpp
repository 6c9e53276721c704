#include "web/screens/tune/sign_picture.hpp"

#include <iterator>

namespace torchside::web {
namespace {

using tune::Sign;

constexpr float half_plate = 7; // half of its thickness

struct Sketch {
    const Pen& pen;
    const Tokens& t;
    Point c;

    [[nodiscard]] Point at(float x, float y) const { return {c.x + x, c.y + y}; }
    void stroke(float x0, float y0, float x1, float y1, Colour colour, float thickness = 2) const {
        pen.line(at(x0, y0), at(x1, y1), colour, thickness);
    }
    void shape(const Point* corners, int count) const {
        pen.polygon(corners, count, t.fill);
        pen.polyline(corners, count, t.ink, 1.5F, true);
    }
};

/// The slot from the end: both plates, and what hangs on them.
void slot(const Sketch& s, float chamfer) {
    for (const float side : {-1.0F, 1.0F}) {
        if (chamfer == 0) {
            const Rect plate{s.c.x + (side < 0 ? -34.0F : 5.0F), s.c.y - half_plate, 29, 2 * half_plate};
            s.pen.fill(plate, s.t.fill);
            s.pen.frame(plate, s.t.ink, 1.5F);
            continue;
        }
        const Point corners[] = {s.at(side * 34, -half_plate), s.at(side * (5 + chamfer), -half_plate),
                                 s.at(side * 5, -half_plate + chamfer), s.at(side * 5, half_plate),
                                 s.at(side * 34, half_plate)};
        s.shape(corners, 5);
    }
}

void dross(const Sketch& s, Sign sign) {
    slot(s, 0);
    for (const float x : {-19.0F, -10.0F, 10.0F, 19.0F}) {
        if (sign == Sign::dross_easy) {
            s.pen.disc(s.at(x, half_plate + 4), 4, s.t.ink);
        } else if (sign == Sign::dross_hard) {
            s.pen.triangle(s.at(x - 5, half_plate), s.at(x + 5, half_plate), s.at(x, half_plate + 5), s.t.ink);
        } else if (sign == Sign::top_spatter) {
            s.pen.disc(s.at(x, -half_plate - 2), 2.5F, s.t.ink);
        }
    }
}

/// From the side, the torch moving to the right over a plate that is cut up to it.
void sparks(const Sketch& s, Sign sign) {
    s.pen.fill({s.c.x - 34, s.c.y - 4, 68, 8}, s.t.fill);
    s.pen.frame({s.c.x - 34, s.c.y - 4, 68, 8}, s.t.ink, 1.5F);
    s.pen.fill({s.c.x + 8, s.c.y - 22, 8, 13}, s.t.ink);
    // Where three of them end, from the arc.
    const float ends[3][3][2] = {
        {{2, 20}, {8, 21}, {-5, 19}}, {{-26, 7}, {-25, 11}, {-22, 15}}, {{-20, -9}, {-19, -15}, {-14, -20}}};
    const float from = sign == Sign::sparks_back ? -4.0F : 4.0F;
    for (const auto& end : ends[static_cast<int>(sign) - static_cast<int>(Sign::sparks_below)]) {
        s.stroke(12, from, end[0], end[1], s.t.accent);
    }
}

/// The part from the end: how far its corners are drawn in, top left, top right, bottom left, bottom right.
void faces(const Sketch& s, Sign sign) {
    constexpr float in[5][4] = {{0, 0, 0, 0}, {9, 9, 0, 0}, {0, 9, 0, 0}, {0, 0, 9, 9}, {0, 0, 0, 9}};
    const float* by = in[static_cast<int>(sign) - static_cast<int>(Sign::square)];
    const Point corners[] = {s.at(-26 + by[0], -11), s.at(26 - by[1], -11), s.at(26 - by[3], 11),
                             s.at(-26 + by[2], 11)};
    s.shape(corners, 4);
    for (const float x : {-26.0F, 26.0F}) {
        s.pen.dashes(s.at(x, -17), s.at(x, 17), s.t.quiet, 1, 3, 3);
    }
}

/// The cut face, with the lines that the arc leaves; it went to the right.
void lag(const Sketch& s, Sign sign) {
    const float trail = 9.0F * static_cast<float>(static_cast<int>(sign) - static_cast<int>(Sign::lag_short));
    const Rect face{s.c.x - 34, s.c.y - 14, 68, 28};
    s.pen.fill(face, s.t.fill);
    s.pen.frame(face, s.t.ink, 1.5F);
    s.pen.push_clip(face);
    for (float x = -26; x < 50; x += 10) {
        const Point line[] = {s.at(x, -14), s.at(x - trail * 0.2F, 0), s.at(x - trail, 14)};
        s.pen.polyline(line, 3, s.t.ink, 1.5F);
    }
    s.pen.pop_clip();
}

} // namespace

void sign_picture(const Pen& pen, const Tokens& t, Sign sign, Point c) {
    const Sketch s{pen, t, c};
    switch (sign) {
    case Sign::dross_none:
    case Sign::dross_easy:
    case Sign::dross_hard:
    case Sign::top_spatter:
        return dross(s, sign);
    case Sign::sparks_below:
    case Sign::sparks_level:
    case Sign::sparks_back:
        return sparks(s, sign);
    case Sign::lag_short:
    case Sign::lag_good:
    case Sign::lag_long:
        return lag(s, sign);
    case Sign::top_rounded:
        return slot(s, 6);
    case Sign::corners_only: // from above: a corner with beads, a side without
        pen.frame({c.x - 22, c.y - 18, 44, 36}, t.ink, 1.5F);
        for (const Point corner : {s.at(-22, -18), s.at(22, -18), s.at(-22, 18), s.at(22, 18)}) {
            pen.disc(corner, 4.5F, t.ink);
        }
        return;
    case Sign::uneven_round: // from above: a hole whose slot is wide on one side
        pen.disc(c, 20, t.ink);
        pen.disc(s.at(3, 2), 15, t.ground);
        return;
    case Sign::square:
    case Sign::narrow_top_both:
    case Sign::narrow_top_one:
    case Sign::narrow_bottom_both:
    case Sign::narrow_bottom_one:
        return faces(s, sign);
    }
}

} // namespace torchside::web
