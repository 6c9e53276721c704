// One stable sort for all lists of rows: the library's sort brings 3 KB of its own code for each kind of row.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

namespace torchside {

/// What: the order in which the rows 0 .. count-1 ascend, equal ones as they stood; before(rows, a, b): a comes first.
/// Cost: count · log2(count) comparisons.
[[nodiscard]] std::vector<std::size_t> ascending(std::size_t count, const void* rows,
                                                 bool (*before)(const void* rows, std::size_t a, std::size_t b));

/// What: sorts so that no row comes after one that it is before; equal rows keep their order. `Before` has no state.
/// Example: {3, 1, 2} by a < b is {1, 2, 3}
template <class Row, class Before>
void sort_rows(std::vector<Row>& rows, Before) {
    const auto order = ascending(rows.size(), rows.data(), [](const void* all, std::size_t a, std::size_t b) {
        const Row* const row = static_cast<const Row*>(all);
        return Before{}(row[a], row[b]);
    });
    std::vector<Row> sorted;
    sorted.reserve(rows.size());
    for (const std::size_t i : order) {
        sorted.push_back(std::move(rows[i]));
    }
    rows = std::move(sorted);
}

} // namespace torchside
