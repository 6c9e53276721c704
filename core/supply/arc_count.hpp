// Arc time against the duty cycle, counted at the table: how long the arc may still burn, and how long the machine must rest.
//
// Rule      in no 10 minutes (duty_period_s) does the arc burn longer than the duty cycle allows: IEC 60974-1, from memory.
//           The machine's own thermostat may be kinder, or in a hot shop stricter.
// Symbols   A allowed arc time in 10 min, T = 600 s; used(t) = arc time within [t - T, t].
//           left(now) = the longest arc from now on with used <= A all along; rest(now) = least pause after which left = A.
//           A pause of T - A is always enough: any window that holds a new arc of x seconds then holds at most A - x of the old.
// Example   60 % (A = 360 s): after 100 s of arc from cold 260 s are left; after all 360 s the rest takes 240 s.
#pragma once

#include <vector>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

/// Times are those of any steady clock.
class ArcCount {
public:
    void start(Duration at);
    void stop(Duration at);
    [[nodiscard]] bool on() const { return on_; }
    /// From now without a pause; with the arc out, were it lit now. `allowed` of 10 minutes or more is never used up: 10 min.
    [[nodiscard]] Duration left(Duration now, Duration allowed) const;
    /// None needed: 0. With the arc on, were it put out now.
    [[nodiscard]] Duration rest(Duration now, Duration allowed) const;

private:
    struct Arc {
        double from, to; // s; the last one may still burn
    };
    [[nodiscard]] double left_s(double now, double allowed) const;

    std::vector<Arc> arcs_; // none that ended a period ago
    bool on_ = false;
};

} // namespace torchside::supply
