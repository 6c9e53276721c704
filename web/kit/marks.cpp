#include "web/kit/marks.hpp"

#include <cmath>

#include "generated/words/sign.hpp"
#include "web/kit/stroke.hpp"

namespace torchside::web {
namespace {

void bell(const Stroke& s) {
    Point curve[25];
    for (int i = 0; i < 25; ++i) {
        const float x = -12.0F + static_cast<float>(i);
        curve[i] = {s.c.x + s.by * x, s.c.y + s.by * (9.0F - 19.0F * std::exp(-x * x / 26.0F))};
    }
    s.pen.polyline(curve, 25, s.colour, stroke);
    s.pen.dashes({s.c.x, s.c.y - 7 * s.by}, {s.c.x, s.c.y + 10 * s.by}, s.colour, 1.5F, 2.5F, 2.0F);
}

} // namespace

Colour colour_of(const Tokens& t, Sign sign) {
    return sign == Sign::holds ? t.ink : sign == Sign::caution ? t.caution : t.stop;
}

Word word_of(Sign sign) {
    return sign == Sign::holds ? words::sign::fine : sign == Sign::caution ? words::sign::caution : words::sign::stop;
}

void draw_sign(const Pen& pen, const Tokens& tokens, Sign sign, Point c) {
    const Colour colour = colour_of(tokens, sign);
    switch (sign) {
    case Sign::holds:
        pen.disc(c, 8.5F, colour);
        break;
    case Sign::caution:
        pen.triangle({c.x, c.y - 9}, {c.x + 10, c.y + 8}, {c.x - 10, c.y + 8}, colour);
        pen.fill({c.x - 1, c.y - 3.5F, 2, 6}, tokens.ground);
        pen.fill({c.x - 1, c.y + 4, 2, 2}, tokens.ground);
        break;
    case Sign::stop:
        pen.fill({c.x - 9, c.y - 9, 18, 18}, colour);
        pen.fill({c.x - 5, c.y - 1.5F, 10, 3}, tokens.ground);
        break;
    }
}

void draw_mark(const Pen& pen, Mark mark, Point c, Colour colour, float scale) {
    const Stroke s{pen, c, colour, scale};
    switch (mark) {
    case Mark::cut:
        s.path({{-4, -11}, {-4, -2}, {0, 3}, {4, -2}, {4, -11}}, true);
        s.bar(-12, -3, 9, 4);
        s.bar(3, 12, 9, 4);
        s.post(0, 3, 11, stroke);
        break;
    case Mark::tune:
        bell(s);
        break;
    case Mark::part:
        s.circle(0, 0, 11);
        s.circle(0, 0, 3);
        s.dot(0, -7, 1.6F);
        s.dot(0, 7, 1.6F);
        break;
    case Mark::quote:
        s.path({{-9, -12}, {4, -12}, {9, -7}, {9, 12}, {-9, 12}}, true);
        s.bar(-5, 3, -4, stroke);
        s.bar(-5, 5, 1, stroke);
        s.bar(1, 5, 7, stroke);
        break;
    case Mark::shop:
        s.path({{-12, -2}, {0, -11}, {12, -2}, {12, 11}, {-12, 11}}, true);
        s.path({{-4, 11}, {-4, 3}, {4, 3}, {4, 11}});
        break;
    case Mark::chart:
        s.path({{-11, -9}, {11, -9}, {11, 9}, {-11, 9}}, true);
        s.bar(-11, 11, -3, 1.5F);
        s.bar(-11, 11, 3, 1.5F);
        s.post(-3.5F, -9, 9, 1.5F);
        s.post(4, -9, 9, 1.5F);
        break;
    case Mark::machine:
        s.path({{-11, -7}, {11, -7}, {11, 9}, {-11, 9}}, true);
        s.path({{-4, -7}, {-4, -11}, {4, -11}, {4, -7}});
        s.circle(-4, 1, 3.5F);
        s.bar(3, 8, 0, stroke);
        s.bar(3, 8, 4, stroke);
        break;
    case Mark::nozzle:
        s.path({{-9, -9}, {9, -9}, {9, 0}, {3, 8}, {-3, 8}, {-9, 0}}, true);
        s.post(0, -9, 12, 1.5F);
        break;
    case Mark::height:
        s.bar(-12, 2, 10, stroke);
        s.path({{-9, -10}, {-9, -4}, {-5, 0}, {-1, -4}, {-1, -10}});
        s.post(8, -1, 10, 1.5F);
        s.bar(4, 12, -1, 1.5F);
        s.bar(4, 12, 10, 1.5F);
        break;
    case Mark::table:
        s.path({{-12, -5}, {12, -5}, {12, 1}, {-12, 1}}, true);
        s.path({{-9, 1}, {-9, 11}});
        s.path({{9, 1}, {9, 11}});
        s.path({{-3, -5}, {-3, -11}, {3, -11}, {3, -5}});
        break;
    case Mark::circuit:
        s.path({{-5, -11}, {-5, -4}});
        s.path({{5, -11}, {5, -4}});
        s.path({{-9, -4}, {9, -4}, {9, 1}, {4, 6}, {-4, 6}, {-9, 1}}, true);
        s.post(0, 6, 12, stroke);
        break;
    case Mark::air:
        s.path({{-11, -3}, {-8, -6}, {8, -6}, {11, -3}, {11, 3}, {8, 6}, {-8, 6}, {-11, 3}}, true);
        s.path({{-6, 6}, {-6, 11}});
        s.path({{6, 6}, {6, 11}});
        s.path({{0, -6}, {0, -11}, {5, -11}});
        break;
    case Mark::screen:
        s.path({{-7, -12}, {7, -12}, {7, 12}, {-7, 12}}, true);
        s.bar(-2, 2, 8, stroke);
        break;
    case Mark::kept:
        s.path({{-11, -9}, {11, -9}, {11, -3}, {-11, -3}}, true);
        s.path({{-9, -3}, {-9, 10}, {9, 10}, {9, -3}});
        s.bar(-3, 3, 2, stroke);
        break;
    case Mark::chevron:
        s.path({{-4, -7}, {4, 0}, {-4, 7}});
        break;
    case Mark::back:
        s.path({{4, -8}, {-4, 0}, {4, 8}});
        break;
    case Mark::close:
        s.path({{-7, -7}, {7, 7}});
        s.path({{-7, 7}, {7, -7}});
        break;
    case Mark::erase:
        s.path({{-11, 0}, {-4, -8}, {11, -8}, {11, 8}, {-4, 8}}, true);
        s.path({{-1, -3.5F}, {6, 3.5F}});
        s.path({{-1, 3.5F}, {6, -3.5F}});
        break;
    case Mark::keyboard:
        s.path({{-12, -8}, {12, -8}, {12, 8}, {-12, 8}}, true);
        for (const float x : {-7.0F, -2.4F, 2.4F, 7.0F}) {
            s.dot(x, -3, 1.2F);
        }
        s.bar(-6, 6, 3, stroke);
        break;
    default:
        draw_quote_mark(s, mark);
    }
}

} // namespace torchside::web
