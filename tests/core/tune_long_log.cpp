// Logs too long to be fitted as every kind of shop.
#include <cmath>
#include <vector>

#include <catch2/catch_test_macros.hpp>

#include "core/tune/response_fit.hpp"
#include "tests/core/tune_line.hpp"

using namespace torchside::tune;
using torchside::test::line_model;
using torchside::test::verdict;
using torchside::test::window;

namespace {

// Eleven stocks, cut again and again; the verdicts of an eye that is content with less, or of the usual one.
std::vector<Observation> long_log(std::size_t n, double half) {
    std::vector<Observation> rows;
    for (std::size_t i = 0; i < n; ++i) {
        const double u = 0.25 * static_cast<double>(i % 11) - 1.25;
        const double off = 0.12 * std::sin(12.9898 * static_cast<double>(i));
        rows.push_back(verdict(u, 0.1 * u + off,
                               off > half    ? Judgement::high
                               : off < -half ? Judgement::low
                                             : Judgement::good));
    }
    return rows;
}

Model five_kinds() {
    Model m = line_model();
    m.others = {{{0.05, 0.02, 0.03}, -2.3, m.prior, m.stock_sd},
                {{0.12, 0.02, 0.03}, -3.9, m.prior, m.stock_sd},
                {window, -2.1, m.prior, 2.0 * m.stock_sd},
                {{0.08, 0.02, 0.12}, -3.0, m.prior, m.stock_sd}};
    return m;
}

} // namespace

TEST_CASE("A log's answers do not jump as it grows, whatever its length") {
    const Model m = five_kinds();
    for (const double half : {0.08, 0.05}) {
        Distribution before = fit(long_log(24, half), m).distribution({1.0, 0.1}, 0);
        for (std::size_t n = 25; n < 130; ++n) {
            CAPTURE(n, half);
            const Distribution now = fit(long_log(n, half), m).distribution({1.0, 0.1}, 0);
            CHECK(std::abs(now.quantile(0.1) - before.quantile(0.1)) < 0.02);
            CHECK(std::abs(now.quantile(0.9) - before.quantile(0.9)) < 0.02);
            before = now;
        }
    }
}

TEST_CASE("A long log is told by all its stocks: few rows of other plates count beside many of one") {
    Model m = line_model();
    m.others = {{window, -2.1, m.prior, 3.0 * m.stock_sd}}; // a shop that surprises
    std::vector<Observation> rows;
    for (int i = 0; i < 120; ++i) {
        rows.push_back(verdict(-1.0, 0.02 * (i % 3), Judgement::good));
    }
    for (int k = 0; k < 8; ++k) { // each stock far off, now above and now below
        const double u = -0.8 + 0.2 * k;
        const double y = k % 2 == 0 ? 0.25 : -0.25;
        rows.push_back(verdict(u, y, Judgement::good));
        rows.push_back(verdict(u, y + 0.12, Judgement::high));
        rows.push_back(verdict(u, y - 0.12, Judgement::low));
    }
    CHECK(fit(rows, m).model().stock_sd == 3.0 * line_model().stock_sd);
}
