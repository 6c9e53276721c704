// How long the torch takes along a cut path: the result of motion::travel() (travel.hpp). All of one part but `batch`.
#pragma once

#include <cstddef>
#include <vector>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::motion {

/// A stretch of a run where the table cannot hold 80 % of the feed set for it.
struct SlowSpan {
    std::size_t run = 0;  // index into CutPath::runs
    double from_mm = 0.0; // along Run::path
    double to_mm = 0.0;
    double lowest = 0.0; // least speed in it as a share of the feed
};

struct Report {
    Estimate<Duration> cutting{};  // arc on, moving
    Estimate<Duration> piercing{}; // arc on, standing
    Duration moving{};             // arc off: to the next pierce, lift and touch-off included
    Duration resting{};            // duty cycle: this part's share of the batch's rests
    Estimate<Duration> total{};    // of the four
    Estimate<Duration> arc{};      // cutting and piercing
    Duration batch{};              // all parts, rests included
    Length cut{};                  // length with the arc on
    int starts = 0;                // arc starts: pierces, edge starts, restarts behind gaps
    int restarts = 0;              // of these, behind gaps
    int to_drill = 0;              // of them: away from an edge in a plate that cannot be pierced
    double slow_share = 0.0;       // of the length with the arc on
    std::vector<SlowSpan> slow{};  // in the order of the path, neighbours joined
};

} // namespace torchside::motion
