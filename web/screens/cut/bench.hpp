// What the screen at the table remembers: the plates that a swipe leads through, and what is counted there. It goes on counting
// while another screen is open.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/quantity.hpp"
#include "core/stock/metal.hpp"
#include "core/supply/arc_count.hpp"

namespace torchside::web {

struct Bench {
    bool on = false; // the screen is open
    float scale = 1; // of its figures: a large window has larger ones

    struct Plate {
        Metal material;
        Length thickness;
        Current current;
    };
    std::vector<Plate> plates; // the job's when the screen was opened, then those of the log, the newest first

    enum class Awake { asked, on, refused, none };
    Awake awake = Awake::asked; // whether the screen is kept on

    // Times are seconds of the page's clock.
    std::optional<double> pierce_until{};
    bool pierced = false; // the last count of a pierce is over
    supply::ArcCount arc;
    Duration allowed{}; // arc time in 10 min that the bell was set by
    enum class Counts { nothing, arc, rest };
    Counts counts = Counts::nothing;
    double until = 0;
    std::string spoken{}; // the start or the end of a count
};

} // namespace torchside::web
