// A shop that counts the starts of its sets, and cuts 10 % slower with a set at its end than with a new one.
#pragma once

#include <cmath>
#include <utility>

#include "core/worksheet/workbook.hpp"

namespace torchside::test {

inline Workbook worn_shop(int starts_now) {
    Workbook book;
    for (const double t : {3.0, 6.0, 8.0}) {
        for (const int starts : {10, 150, 290}) {
            const double right = 1500.0 * std::pow(t / 6.0, -1.2) * std::pow(0.9, starts / 300.0);
            for (const auto& [off, verdict] : {std::pair{1.0, tune::Verdict::clean},
                                               {1.1, tune::Verdict::too_fast},
                                               {0.905, tune::Verdict::too_slow}}) {
                tune::TestCut cut;
                cut.thickness = {t, mm};
                cut.feed = Speed{right * off, mm_min};
                cut.verdict = verdict;
                cut.starts = starts;
                book.shop.tests.push_back(cut);
            }
        }
    }
    book.shop.wear.now.starts = starts_now;
    return book;
}

} // namespace torchside::test
