// Logs of test cuts for the programs of tests/bench.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "core/tune/test_cut.hpp"

namespace torchside::bench {

inline constexpr double thicknesses_mm[] = {1.5, 2, 3, 4.5, 6, 8, 10, 12, 16};
inline constexpr Metal metals[] = {Metal::mild_steel, Metal::mild_steel, Metal::stainless, Metal::aluminium};
inline constexpr double currents_a[] = {45, 45, 60, 30, 45};

/// A row that says all that a row can: verdict, kerf, arc volts, pierce. `i` spreads them; some are misread.
inline tune::TestCut cut(std::size_t i, double thickness_mm, Metal metal, double current_a) {
    tune::TestCut row;
    row.material = metal;
    row.thickness = Length{thickness_mm, mm};
    row.current = Current{current_a, ampere};
    const double off = 0.25 * std::sin(12.9898 * static_cast<double>(i)); // of ln(feed)
    row.feed = Speed{1500 * std::pow(thickness_mm / 6, -1.1) * current_a / 45 * std::exp(off), mm_min};
    const double seen = i % 31 == 0 ? -off : off;
    row.verdict = seen > 0.08 ? tune::Verdict::too_fast : seen < -0.08 ? tune::Verdict::too_slow : tune::Verdict::clean;
    row.kerf_top = Length{1.7 + 0.1 * off, mm};
    row.kerf_bottom = Length{1.4 - 0.1 * off, mm};
    row.arc = Voltage{120 + thickness_mm + 8 * off, volt};
    row.pierce_delay = Duration{0.3 * thickness_mm / 6 * std::exp(2 * off), second};
    row.pierce = off > 0.15    ? tune::PierceVerdict::is_long
                 : off < -0.15 ? tune::PierceVerdict::is_short
                               : tune::PierceVerdict::good;
    return row;
}

/// Of many stocks, as a shop's log grows.
inline std::vector<tune::TestCut> everyday(std::size_t n) {
    std::vector<tune::TestCut> log;
    for (std::size_t i = 0; i < n; ++i) {
        log.push_back(cut(i, thicknesses_mm[i % 9], metals[i / 9 % 4], currents_a[i / 36 % 5]));
    }
    return log;
}

} // namespace torchside::bench
