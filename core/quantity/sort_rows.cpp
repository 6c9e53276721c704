#include "core/quantity/sort_rows.hpp"

#include <algorithm>

namespace torchside {

std::vector<std::size_t> ascending(std::size_t count, const void* rows,
                                   bool (*before)(const void* rows, std::size_t a, std::size_t b)) {
    std::vector<std::size_t> from(count), to(count);
    for (std::size_t i = 0; i < count; ++i) {
        from[i] = i;
    }
    // Merge neighbours of 1, 2, 4, … rows.
    for (std::size_t size = 1; size < count; size *= 2) {
        for (std::size_t at = 0, left = 0, right = 0, left_end = 0, right_end = 0; at < count; ++at) {
            if (at == right_end) {
                left = at;
                left_end = right = std::min(at + size, count);
                right_end = std::min(right + size, count);
            }
            const bool take_right = left == left_end || (right < right_end && before(rows, from[right], from[left]));
            to[at] = from[take_right ? right++ : left++];
        }
        from.swap(to);
    }
    return from;
}

} // namespace torchside
