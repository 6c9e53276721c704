// Places on the screen, in CSS pixels: the same at every screen density.
#pragma once

#include <algorithm>

namespace torchside::web {

struct Point {
    float x = 0, y = 0;
};

[[nodiscard]] inline bool near(Point a, Point b, float apart) {
    return std::max(a.x - b.x, b.x - a.x) + std::max(a.y - b.y, b.y - a.y) < apart;
}

struct Rect {
    float x = 0, y = 0, w = 0, h = 0;

    [[nodiscard]] float right() const { return x + w; }
    [[nodiscard]] float bottom() const { return y + h; }
    [[nodiscard]] Point centre() const { return {x + w / 2, y + h / 2}; }
    [[nodiscard]] bool empty() const { return w <= 0 || h <= 0; }
    [[nodiscard]] bool holds(Point p) const { return p.x >= x && p.x < right() && p.y >= y && p.y < bottom(); }
    [[nodiscard]] Rect inset(float dx, float dy) const { return {x + dx, y + dy, w - 2 * dx, h - 2 * dy}; }
    [[nodiscard]] Rect inset(float d) const { return inset(d, d); }

    /// Cut a strip off one side; what is left stays in *this.
    Rect take_top(float height) {
        Rect strip{x, y, w, std::min(height, h)};
        y += strip.h;
        h -= strip.h;
        return strip;
    }
    Rect take_bottom(float height) {
        const float taken = std::min(height, h);
        h -= taken;
        return {x, y + h, w, taken};
    }
    Rect take_left(float width) {
        Rect strip{x, y, std::min(width, w), h};
        x += strip.w;
        w -= strip.w;
        return strip;
    }
    Rect take_right(float width) {
        const float taken = std::min(width, w);
        w -= taken;
        return {x + w, y, taken, h};
    }

    friend bool operator==(const Rect&, const Rect&) = default;
};

[[nodiscard]] inline Rect overlap(Rect a, Rect b) {
    const float x = std::max(a.x, b.x);
    const float y = std::max(a.y, b.y);
    return {x, y, std::max(0.0F, std::min(a.right(), b.right()) - x),
            std::max(0.0F, std::min(a.bottom(), b.bottom()) - y)};
}

} // namespace torchside::web
