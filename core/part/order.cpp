#include "core/part/order.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/part/measure.hpp"
#include "core/part/near.hpp"

namespace torchside::part {
namespace {

constexpr std::size_t most_searched = 2000;

// Puts places that are many into strips, to and fro.
void in_strips(std::vector<std::size_t>& list, const std::vector<Stop>& stops) {
    Box all;
    for (const std::size_t i : list) {
        all.add(stops[i].begin);
    }
    const double strips = std::ceil(std::sqrt(static_cast<double>(list.size())));
    std::vector<std::uint64_t> keys; // strip, place in it, number
    keys.reserve(list.size());
    for (const std::size_t i : list) {
        const Point p = stops[i].begin;
        const double strip = std::floor(strips * (p.y - all.low.y) / std::max(all.height(), 1e-9));
        const double x = (p.x - all.low.x) / std::max(all.width(), 1e-9);
        const double along = std::fmod(strip, 2.0) != 0.0 ? 1.0 - x : x;
        keys.push_back(static_cast<std::uint64_t>(strip) << 50 | static_cast<std::uint64_t>(along * 1048575.0) << 30 |
                       i);
    }
    std::sort(keys.begin(), keys.end());
    for (std::size_t i = 0; i < list.size(); ++i) { // taken from the back
        list[list.size() - 1 - i] = keys[i] & 0x3fffffffU;
    }
}

// Takes the next one out of a list.
std::size_t take(std::vector<std::size_t>& list, const std::vector<Stop>& stops, Point at) {
    std::size_t best = list.size() - 1;
    if (list.size() <= most_searched) {
        double least = 1e300;
        for (std::size_t k = 0; k < list.size(); ++k) {
            const Point way = stops[list[k]].begin - at;
            // Of places as near as each other the first: rounding must not choose, it differs between machines.
            if (dot(way, way) < least * (1.0 - 1e-9)) {
                least = dot(way, way);
                best = k;
            }
        }
    }
    const std::size_t taken = list[best];
    list[best] = list.back();
    list.pop_back();
    return taken;
}

} // namespace

std::vector<std::size_t> cutting_order(const std::vector<std::size_t>& parents, const std::vector<Stop>& stops,
                                       Point from) {
    const std::size_t n = parents.size();
    std::vector<std::vector<std::size_t>> within(n + 1); // the last: in no other
    for (std::size_t i = 0; i < n; ++i) {
        within[parents[i] == Near::none ? n : parents[i]].push_back(i);
    }
    for (std::vector<std::size_t>& list : within) {
        if (list.size() > most_searched) {
            in_strips(list, stops);
        }
    }
    std::vector<std::size_t> order;
    order.reserve(n);
    std::vector<std::size_t> open{n};
    Point at = from;
    while (!open.empty()) {
        const std::size_t here = open.back();
        if (!within[here].empty()) {
            open.push_back(take(within[here], stops, at));
            continue;
        }
        open.pop_back();
        if (here == n) {
            break;
        }
        order.push_back(here);
        at = stops[here].end;
    }
    return order;
}

} // namespace torchside::part
