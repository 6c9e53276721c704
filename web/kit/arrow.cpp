#include "web/kit/arrow.hpp"

#include <cmath>

namespace torchside::web {

void arrow_head(const Pen& pen, Point tip, Point from, Colour colour, float length, float half) {
    const float apart = std::hypot(tip.x - from.x, tip.y - from.y);
    if (!(apart > 0)) {
        return;
    }
    const Point way{(tip.x - from.x) / apart, (tip.y - from.y) / apart};
    const Point back{tip.x - length * way.x, tip.y - length * way.y};
    pen.triangle(tip, {back.x + half * way.y, back.y - half * way.x}, {back.x - half * way.y, back.y + half * way.x},
                 colour);
}

void arrow_along(const Pen& pen, const Point* points, int count, Colour colour, float least) {
    constexpr float length = 11;
    float all = 0;
    for (int i = 0; i + 1 < count; ++i) {
        all += std::hypot(points[i + 1].x - points[i].x, points[i + 1].y - points[i].y);
    }
    if (all < least) {
        return;
    }
    float left = all / 2;
    for (int i = 0; i + 1 < count; ++i) {
        const Point a = points[i];
        const Point d{points[i + 1].x - a.x, points[i + 1].y - a.y};
        const float piece = std::hypot(d.x, d.y);
        if (piece >= left && piece > 0) {
            const float to = (left + length / 2) / piece;
            arrow_head(pen, {a.x + d.x * to, a.y + d.y * to}, a, colour, length, 5);
            return;
        }
        left -= piece;
    }
}

} // namespace torchside::web
