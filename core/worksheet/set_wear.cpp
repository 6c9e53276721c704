#include "core/worksheet/set_wear.hpp"

#include <algorithm>

#include "generated/words/set_wear.hpp"

namespace torchside {

// A new set has 0, and that is not the set of the row before: a blank would say so.
std::optional<double> starts_now(const Shop& shop) {
    const wear::WearLog& wear = shop.wear;
    const bool counts = wear.now.starts > 0 ||
                        std::any_of(wear.sets.begin(), wear.sets.end(), [](const auto& set) { return set.starts > 0; });
    return counts ? std::optional<double>(wear.now.starts) : std::nullopt;
}

bool set_slows(const tune::Trail& trail, const Shop& shop) {
    return trail.for_wear() < 0.0 && trail.own.value < shop.table.max_feed;
}

Text set_slows_why(const tune::Trail& trail, const Shop& shop) {
    return words::set_wear::Why{.feed = words::feed(trail.new_set.value),
                                .share = words::percent(-trail.for_wear()),
                                .starts = shop.wear.now.starts};
}

Message set_slows_note(const tune::Trail& trail, const Shop& shop) {
    return {"set_slows",
            Topic::wear,
            Severity::note,
            words::set_wear::Slower{.share = words::percent(-trail.for_wear())},
            set_slows_why(trail, shop),
            words::set_wear::counter,
            "shop.wear.now.starts"};
}

} // namespace torchside
