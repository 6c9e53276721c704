#include "web/screens/cut/safety_picture.hpp"

#include <initializer_list>

namespace torchside::web {
namespace {

struct Sketch {
    const Pen& pen;
    const Tokens& t;
    Point c;

    [[nodiscard]] Point at(float x, float y) const { return {c.x + x, c.y + y}; }
    void path(std::initializer_list<Point> points, Colour colour, bool closed = false) const {
        Point moved[10];
        int n = 0;
        for (const Point p : points) {
            moved[n++] = at(p.x, p.y);
        }
        pen.polyline(moved, n, colour, 2, closed);
    }
    void ink(std::initializer_list<Point> points, bool closed = false) const { path(points, t.ink, closed); }
    void warm(std::initializer_list<Point> points) const { path(points, t.accent); }
    void box(float x, float y, float w, float h) const {
        pen.fill({c.x + x, c.y + y, w, h}, t.fill);
        pen.frame({c.x + x, c.y + y, w, h}, t.ink, 2);
    }
    /// The end of a torch, its opening at (x, y).
    void torch(float x, float y) const {
        ink({{x - 7, y - 20}, {x - 7, y - 8}, {x - 2, y}, {x + 2, y}, {x + 7, y - 8}, {x + 7, y - 20}});
    }
    void person(float x, float y) const {
        pen.ring(at(x, y - 14), 5, t.ink, 2);
        ink({{x - 8, y + 14}, {x - 8, y - 2}, {x - 4, y - 6}, {x + 4, y - 6}, {x + 8, y - 2}, {x + 8, y + 14}});
    }
};

/// The plug out, and the bolt that stays at the torch until it is.
void shock(const Sketch& s) {
    s.torch(-16, 6);
    s.warm({{-12, 8}, {-18, 15}, {-13, 15}, {-19, 24}});
    s.box(8, -6, 12, 14);
    s.ink({{8, -2}, {2, -2}});
    s.ink({{8, 4}, {2, 4}});
    s.ink({{20, 1}, {28, 1}, {28, 22}});
}

/// A hood with its window, and the light that it keeps off.
void eyes(const Sketch& s) {
    s.ink({{-6, -22}, {16, -22}, {24, -12}, {24, 12}, {12, 22}, {-2, 18}, {-6, 6}}, true);
    s.box(-6, -10, 14, 12);
    for (const float y : {-14.0F, -5.0F, 4.0F}) {
        s.warm({{-27, y * 1.7F + 6}, {-12, y}});
    }
}

/// The plume over the cut, and the hood that draws it off.
void fume(const Sketch& s) {
    s.ink({{-28, 20}, {-6, 20}});
    s.ink({{2, 20}, {28, 20}});
    s.torch(-2, 12);
    s.warm({{8, 14}, {12, 6}, {9, -2}, {14, -9}});
    s.warm({{16, 14}, {20, 6}, {17, -2}, {19, -9}});
    s.ink({{6, -12}, {12, -22}, {22, -22}, {28, -12}}, true);
}

/// A flame under sparks, and the bucket that stands by.
void fire(const Sketch& s) {
    s.ink({{-14, 22}, {-22, 14}, {-20, 4}, {-14, -4}, {-12, -18}, {-3, -6}, {0, 6}, {-4, 18}, {-8, 22}}, true);
    s.warm({{-13, 20}, {-15, 13}, {-10, 4}, {-6, 13}, {-9, 20}});
    s.box(12, -8, 14, 30);
    s.ink({{15, -8}, {15, -16}, {23, -16}, {23, -8}});
    s.ink({{15, -13}, {8, -13}, {6, -4}});
}

/// A head between two cups.
void ears(const Sketch& s) {
    s.ink({{-14, -4}, {-12, -14}, {-6, -20}, {6, -20}, {12, -14}, {14, -4}});
    s.box(-20, -5, 9, 18);
    s.box(11, -5, 9, 18);
    s.warm({{-28, -6}, {-25, 4}, {-28, 14}});
    s.warm({{28, -6}, {25, 4}, {28, 14}});
}

/// The gantry goes over the table, and a slug has fallen.
void moving(const Sketch& s) {
    s.box(-28, 8, 56, 6);
    s.box(-12, -20, 14, 28);
    s.warm({{8, -8}, {26, -8}});
    s.warm({{20, -14}, {26, -8}, {20, -2}});
    s.pen.disc(s.at(16, 21), 4, s.t.accent);
}

/// A screen between the arc and who looks on; one of them is small.
void people(const Sketch& s) {
    s.person(10, 6);
    s.pen.ring(s.at(25, 4), 4, s.t.ink, 2);
    s.ink({{20, 20}, {20, 12}, {30, 12}, {30, 20}});
    s.pen.fill({s.c.x - 10, s.c.y - 22, 4, 44}, s.t.ink);
    s.warm({{-26, 14}, {-15, 2}});
    s.warm({{-28, 4}, {-15, -6}});
    s.pen.disc(s.at(-28, 16), 3, s.t.accent);
}

} // namespace

void safety_picture(const Pen& pen, const Tokens& t, safety::Group group, Point c) {
    const Sketch s{pen, t, c};
    switch (group) {
    case safety::Group::shock:
        return shock(s);
    case safety::Group::eyes:
        return eyes(s);
    case safety::Group::fume:
        return fume(s);
    case safety::Group::fire:
        return fire(s);
    case safety::Group::ears:
        return ears(s);
    case safety::Group::moving:
        return moving(s);
    case safety::Group::people:
        return people(s);
    case safety::Group::last:
        return;
    }
}

} // namespace torchside::web
