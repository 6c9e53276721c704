#include "core/cut/feed_model.hpp"

#include <cmath>

namespace torchside::cut {

Length thickness_at(Speed wanted, CutSetup plate, const FeedModel& model) {
    double low = 0.1;
    double high = 200.0;
    const auto fast_enough = [&](double t) {
        plate.thickness = Length{t, mm};
        return model.feed(plate) >= wanted;
    };
    if (!fast_enough(low)) {
        return Length{};
    }
    if (fast_enough(high)) {
        return Length{high, mm};
    }
    for (int i = 0; i < 60; ++i) {
        const double middle = std::sqrt(low * high);
        (fast_enough(middle) ? low : high) = middle;
    }
    return Length{low, mm};
}

} // namespace torchside::cut
