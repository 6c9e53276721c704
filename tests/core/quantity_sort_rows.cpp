// Sorting rows: the library's stable sort is the oracle.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include "core/quantity/sort_rows.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;

namespace {

struct Row {
    std::size_t key = 0;
    std::string name{};
    bool operator==(const Row&) const = default;
};

} // namespace

TEST_CASE("the header's example, and lists too short to sort") {
    const auto less = [](int a, int b) { return a < b; };
    std::vector<int> rows{3, 1, 2};
    sort_rows(rows, less);
    CHECK(rows == std::vector<int>{1, 2, 3});
    std::vector<int> none, one{7};
    sort_rows(none, less);
    sort_rows(one, less);
    CHECK(none.empty());
    CHECK(one == std::vector<int>{7});
}

TEST_CASE("rows of every number and many equal keys are sorted as the library sorts them, equal ones as they stood") {
    test::Rng rng(5);
    const auto before = [](const Row& a, const Row& b) { return a.key < b.key; };
    for (std::size_t count = 0; count < 150; ++count) {
        std::vector<Row> rows;
        for (std::size_t i = 0; i < count; ++i) {
            rows.push_back({rng.below(1 + count / 3), "row " + std::to_string(i)});
        }
        std::vector<Row> expected = rows;
        std::stable_sort(expected.begin(), expected.end(), before);
        sort_rows(rows, before);
        REQUIRE(rows == expected);
    }
}
