// The pen of the pictograms: strokes about a centre, to a scale. Inside web/kit.
#pragma once

#include <initializer_list>

#include "web/kit/marks.hpp"

namespace torchside::web {

inline constexpr float stroke = 2.0F;

struct Stroke {
    const Pen& pen;
    Point c;
    Colour colour;
    float by = 1; // scale

    void path(std::initializer_list<Point> points, bool closed = false) const {
        Point moved[16];
        int n = 0;
        for (const Point p : points) {
            moved[n++] = {c.x + by * p.x, c.y + by * p.y};
        }
        pen.polyline(moved, n, colour, stroke, closed);
    }
    void dot(float x, float y, float r) const { pen.disc({c.x + by * x, c.y + by * y}, by * r, colour); }
    void circle(float x, float y, float r) const { pen.ring({c.x + by * x, c.y + by * y}, by * r, colour, stroke); }
    void bar(float x0, float x1, float y, float thick) const {
        pen.hline(c.x + by * x0, c.x + by * x1, c.y + by * y, colour, thick);
    }
    void post(float x, float y0, float y1, float thick) const {
        pen.vline(c.x + by * x, c.y + by * y0, c.y + by * y1, colour, thick);
    }
};

/// Those of what follows from a quote; they come after the first answer.
void draw_quote_mark(const Stroke& stroke, Mark mark);

} // namespace torchside::web
