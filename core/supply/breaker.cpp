#include "core/supply/breaker.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace torchside::supply {
namespace {

enum class Family { ul489, iec60898 };

struct Time {
    Family family;
    double above, up_to; // ratings, A
    double multiple;
    double seconds;
    std::optional<double> least_seconds;
    std::string_view status;
};
struct Curve {
    BreakerRule rule;
    std::optional<double> magnetic_to;
};

constexpr Time times[] = {
#include "generated/breaker_times.inc"
};
constexpr Curve curves[] = {
#include "generated/breaker_curves.inc"
};

constexpr double holds_to = 1.0; // of both standards, and IEC 60364-4-43, 433.1
constexpr double magnetic_seconds = 0.1;
constexpr int curve_steps = 12;

constexpr double largest_rating(Family family) {
    double largest = 0;
    for (const Time& time : times) {
        if (time.family == family) {
            largest = std::max(largest, time.up_to);
        }
    }
    return largest;
}

const Curve& curve_of(BreakerRule rule) {
    return *std::find_if(std::begin(curves), std::end(curves), [&](const Curve& c) { return c.rule == rule; });
}

// The calibration points of one rating, rising multiple. Every family has two: a long one and a short one.
struct Points {
    const Time* slow = nullptr;
    const Time* fast = nullptr;
};

Points points_of(BreakerRule rule, Current rating) {
    const Family family = rule == BreakerRule::ul489 ? Family::ul489 : Family::iec60898;
    const double in = std::min(rating.in(ampere), largest_rating(family));
    Points points;
    for (const Time& time : times) {
        if (time.family != family || in <= time.above || in > time.up_to) {
            continue;
        }
        if (points.slow == nullptr) {
            points.slow = &time;
        } else {
            points.fast = &time;
        }
    }
    return points;
}

Duration interpolated(const Points& points, double multiple) {
    const double n =
        std::log(points.slow->seconds / points.fast->seconds) / std::log(points.fast->multiple / points.slow->multiple);
    return Duration{points.slow->seconds * std::pow(multiple / points.slow->multiple, -n), second};
}

} // namespace

BreakerState breaker_state(BreakerRule rule, Current rating, Current load) {
    const Curve& curve = curve_of(rule);
    const Points points = points_of(rule, rating);
    const double multiple = load / rating;
    BreakerState state;
    if (multiple <= holds_to) {
        return state;
    }
    if (points.fast->least_seconds && multiple <= points.fast->multiple) {
        state.not_before = Duration{*points.fast->least_seconds, second};
    }
    state.verdict = CircuitVerdict::may_trip;
    if (multiple < points.slow->multiple) {
        return state;
    }
    const bool soon = multiple >= points.fast->multiple;
    const Time& point = soon ? *points.fast : *points.slow;
    const bool at_once = curve.magnetic_to && multiple >= *curve.magnetic_to;
    state.verdict = soon ? CircuitVerdict::trips_soon : CircuitVerdict::trips_within_hour;
    state.within = Duration{at_once ? magnetic_seconds : point.seconds, second};
    state.from_memory = point.status != "seen";
    if (!soon && rule != BreakerRule::ul489) {
        state.interpolated = interpolated(points, multiple);
    }
    return state;
}

Band breaker_band(BreakerRule rule, Current rating, Current load) {
    const Curve& curve = curve_of(rule);
    const Points points = points_of(rule, rating);
    Band band{holds_to, points.slow->multiple, {}, {}, {}, load / rating};
    band.upper = {{points.slow->multiple, Duration{points.slow->seconds, second}},
                  {points.fast->multiple, Duration{points.fast->seconds, second}}};
    if (curve.magnetic_to) {
        band.upper.push_back({*curve.magnetic_to, Duration{magnetic_seconds, second}});
    }
    if (points.fast->least_seconds) {
        band.least = BandPoint{points.fast->multiple, Duration{*points.fast->least_seconds, second}};
    }
    if (rule == BreakerRule::ul489) {
        return band;
    }
    const double step = (points.fast->multiple - points.slow->multiple) / curve_steps;
    for (int i = 0; i <= curve_steps; ++i) {
        const double multiple = points.slow->multiple + i * step;
        band.between.push_back({multiple, interpolated(points, multiple)});
    }
    return band;
}

std::string_view breaker_name(BreakerRule rule) {
    switch (rule) {
    case BreakerRule::ul489:
        return "UL 489";
    case BreakerRule::iec60898b:
        return "IEC 60898-1 type B";
    case BreakerRule::iec60898c:
        return "IEC 60898-1 type C";
    case BreakerRule::iec60898d:
        break;
    }
    return "IEC 60898-1 type D";
}

} // namespace torchside::supply
