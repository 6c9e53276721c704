#include "core/supply/arc_count.hpp"

#include <algorithm>
#include <vector>

#include "core/supply/load.hpp"

namespace torchside::supply {

void ArcCount::start(Duration at) {
    if (!on_) {
        const double now = at.in(second);
        std::erase_if(arcs_, [&](const Arc& arc) { return arc.to <= now - duty_period_s; });
        arcs_.push_back({now, now});
        on_ = true;
    }
}

void ArcCount::stop(Duration at) {
    if (on_) {
        arcs_.back().to = at.in(second);
        on_ = false;
    }
}

/// used(t) for a burning arc is piecewise linear: it rises by 1 s a second, and stands still while an old arc leaves the window.
double ArcCount::left_s(double now, double allowed) const {
    double used = 0;
    for (const Arc& arc : arcs_) {
        const double to = on_ && &arc == &arcs_.back() ? now : arc.to;
        used += std::max(0.0, to - std::max(arc.from, now - duty_period_s));
    }
    constexpr double nothing = 1e-9; // s: the sum of many arcs is not exact
    double at = now;
    double room = allowed - used;
    if (room < -nothing) {
        return 0; // it burned on past its time
    }
    for (const Arc& arc : arcs_) { // oldest first: the time before it leaves the window is spent from the room
        const double leaves = arc.from + duty_period_s;
        if (leaves > at) {
            if (leaves - at > room + nothing) {
                break;
            }
            room -= leaves - at;
            at = leaves;
        }
        const double to = on_ && &arc == &arcs_.back() ? now : arc.to;
        at = std::max(at, to + duty_period_s);
    }
    return std::max(0.0, at + std::max(0.0, room) - now);
}

Duration ArcCount::left(Duration now, Duration allowed) const {
    const double most = allowed.in(second);
    return Duration{most >= duty_period_s ? duty_period_s : std::min(left_s(now.in(second), most), most), second};
}

Duration ArcCount::rest(Duration now, Duration allowed) const {
    constexpr double near_enough = 1e-3; // s, of the allowance: the sum of many arcs is not exact
    const double most = allowed.in(second);
    ArcCount after = *this;
    after.stop(now);
    const auto whole = [&](double wait) { return after.left_s(now.in(second) + wait, most) >= most - near_enough; };
    if (most >= duty_period_s || whole(0)) {
        return {};
    }
    double low = 0;
    double high = duty_period_s - most; // always enough
    for (int i = 0; i < 24; ++i) {
        const double middle = (low + high) / 2;
        (whole(middle) ? high : low) = middle;
    }
    return Duration{high, second};
}

} // namespace torchside::supply
