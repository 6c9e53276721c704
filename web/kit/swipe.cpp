#include "web/kit/swipe.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::web {

void Swipe::down(Point p, double now) {
    on_ = true;
    start_ = last_ = p;
    began_ = now;
    step_ = 0;
}

void Swipe::move(Point p) {
    step_ = std::max(step_, std::hypot(p.x - last_.x, p.y - last_.y));
    last_ = p;
}

int Swipe::up(Point p, double now) {
    move(p);
    const float across = p.x - start_.x;
    const float length = std::abs(across);
    const double took = now - began_;
    const bool swiped = on_ && length >= least && length >= steeper * std::abs(p.y - start_.y) &&
                        step_ <= longest_step * length && took >= quickest && took <= slowest;
    on_ = false;
    return !swiped ? 0 : across < 0 ? 1 : -1;
}

} // namespace torchside::web
