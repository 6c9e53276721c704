// A finger drawn sideways across the screen. Water does not do it: a drop runs a short way, or shows up here and then there,
// and two touches at once are none.
#pragma once

#include "web/mirror/geometry.hpp"

namespace torchside::web {

class Swipe {
public:
    static constexpr float least = 96;  // px it must go; a finger's width is some 60
    static constexpr float steeper = 2; // times as far sideways as up or down
    static constexpr float longest_step =
        .7F; // of the way between two places where it was seen: a finger moves on, a drop jumps
    static constexpr double quickest = 60;  // ms
    static constexpr double slowest = 1500; // ms: whoever rests a hand on the glass swipes nothing

    void down(Point p, double now);
    void move(Point p);
    void cancel() { on_ = false; }
    /// Where it went: 1 to the left, as one turns to the next page, -1 to the right, 0 when it was no swipe.
    [[nodiscard]] int up(Point p, double now);

private:
    bool on_ = false;
    Point start_{}, last_{};
    double began_ = 0;
    float step_ = 0; // the longest
};

} // namespace torchside::web
