// Test coupons: what to cut, where, how fast, and how long it takes.
//
// What       ladder   legs side by side at one height, each at its own feed, steps of equal ratio about the middle
//            heights  the same at one feed, each leg at its own cut height
//            kerf     a square with a hole in it, cut on the line without offset: kerf = programmed - measured (hole:
//                     measured - programmed), offset = kerf / 2
//            swirl    two squares, one cut clockwise and one counterclockwise: tells tilt from swirl
// Formula    leg length max(60 mm, 10 t); space between legs max(3 t, 10 mm); feed_i = middle r^(i - (n-1)/2); square
//            50 mm, hole max(20 mm, the smallest that t and kerf allow), swirl squares 40 mm; hole feed 0.6 of the
//            straight feed. Legs are cut every second one first, so that no leg heats its neighbour. time: core/motion
//            of each leg at its feed, the moves as from one coupon to the next
// Source     own layout; leg length, spacing, ratio 1.12, square and hole: good practice from memory, step sizes
//            priors; hole feed: shop rule from memory.
// Range      5 to 9 legs; feeds up to the table's; heights 0.5 to 12 mm. The plate must be pierced standing still.
// Edges      a Fault names what does not fit: a leg faster than the table, a height outside its range, a plate too
//            thick to pierce (delay 0).
// Example    seven legs about 920 mm/min, ratio 1.12: 655 733 821 920 1030 1154 1293 mm/min. A 50 mm square that
//            measures 48.35 mm: kerf 1.65 mm, offset 0.825 mm. Free of dross from 800 to 1150: cut at 959.2 mm/min.
#pragma once

#include <optional>
#include <vector>

#include "core/cut/balance.hpp"
#include "core/gear/machine.hpp"
#include "core/part/cut_path.hpp"
#include "core/part/kerf.hpp"
#include "core/tune/next_test.hpp"
#include "core/words/outcome.hpp"
#include "core/words/text.hpp"

namespace torchside::tune {

/// How one run of a coupon's path is cut.
struct Leg {
    Word label{};                 // "leg", "square", "hole"
    int number = 0;               // of a leg of a ladder, the slowest or lowest is 1; 0: none
    std::optional<Length> size{}; // of a square or a hole, along the path
    Speed feed{};
    Length cut_height{};
    bool height_control = false; // on while cutting; off on short and heavily curved paths
};

enum class CouponKind { ladder, heights, kerf, swirl };

struct Coupon {
    CouponKind kind = CouponKind::ladder;
    part::CutPath path{};    // in the order it is cut
    std::vector<Leg> legs{}; // one for each run of the path
    Length width{};          // the path lies in 0..width x 0..height
    Length height{};
    Length cut_length{};
    Duration time{};
    Length pierce_height{};
    Duration pierce_delay{}; // from transferred arc
    Duration dwell{};        // after the torch code: the same with the start lag, unless the controller waits
    Speed fastest{};         // what the table allows
};

/// The settings that the coupon is cut with.
struct CouponSettings {
    cut::CutSetup plate{};
    Speed feed{};
    Length cut_height{1.5, mm};
    Length pierce_height{3, mm};
    Duration pierce_delay{0.5, second};
    std::optional<Duration> dwell{}; // none: the pierce delay
    Length kerf{1.65, mm};
    Length lead_in{9, mm};
    Length least_hole{6, mm};
    Table table{};
    Duration touch_off{3, second}; // with the start lag
};

[[nodiscard]] Outcome<Coupon> ladder_coupon(const CouponSettings& settings, const LadderPlan& ladder);
[[nodiscard]] Outcome<Coupon> height_coupon(const CouponSettings& settings, int legs = 5, Length step = {0.3, mm});
[[nodiscard]] Outcome<Coupon> kerf_coupon(const CouponSettings& settings);
[[nodiscard]] Outcome<Coupon> swirl_coupon(const CouponSettings& settings);

/// Feeds of a ladder, slow to fast.
[[nodiscard]] std::vector<Speed> ladder_feeds(const LadderPlan& ladder);

/// The feed to go on with when legs from `slowest` to `fastest` are free of dross.
[[nodiscard]] Speed ladder_choice(Speed slowest, Speed fastest);

/// Kerf from a square (`inside` false) or a hole cut on the line.
using part::kerf_from;

/// Angles of the top and bottom edge's faces (as drawn) of the two squares of the swirl coupon; degrees, positive: the
/// part is narrower at the top.
struct SwirlAngles {
    double top_clockwise = 0.0;
    double bottom_clockwise = 0.0;
    double top_counter = 0.0;
    double bottom_counter = 0.0;
};
struct TiltAndSwirl {
    double alike_deg = 0.0;        // height and feed
    double tilt_deg = 0.0;         // positive: the torch leans so that bottom faces taper more
    double swirl_deg = 0.0;        // positive: clockwise parts come out squarer
    bool clockwise_better = false; // outside contours clockwise, holes the other way
};
[[nodiscard]] TiltAndSwirl read_swirl(const SwirlAngles& angles);

} // namespace torchside::tune
