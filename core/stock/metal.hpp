// The metals a small air plasma torch is asked to cut: the rows of assets/data/metals.json, which has all that a metal
// is. A new one is rows there, a name in assets/words and a test; what it cannot do without is missed at build time.
#pragma once

#include <array>
#include <cstddef>
#include <iterator>
#include <string_view>

#include "generated/words/metal.hpp"

namespace torchside {

enum class Metal {
#include "generated/metals_names.inc"
};

namespace stock {

/// The series that a gauge number of sheet is read in (core/stock/gauge.hpp).
enum class GaugeSeries { none, manufacturers, galvanized_sheet, us_standard, brown_sharpe };

struct MetalInfo {
    Metal metal;
    std::string_view key; // of the workbook
    Word name;            // on the screen
    Metal cuts_as;        // whose physics, terms and log it shares: itself, or a metal that cuts as itself
    GaugeSeries gauges;   // none: sold by thickness
};

inline constexpr MetalInfo metals[] = {
#include "generated/metals.inc"
};
inline constexpr std::size_t metal_count = std::size(metals);

[[nodiscard]] constexpr const MetalInfo& metal_info(Metal metal) {
    return metals[static_cast<std::size_t>(metal)];
}

/// One of `member` for each metal, in the order of the enum.
template <class T>
[[nodiscard]] constexpr std::array<T, metal_count> each_metal(T MetalInfo::*member) {
    std::array<T, metal_count> all{};
    for (std::size_t i = 0; i < metal_count; ++i) {
        all[i] = metals[i].*member;
    }
    return all;
}

} // namespace stock

inline constexpr std::array<Metal, stock::metal_count> all_metals = stock::each_metal(&stock::MetalInfo::metal);

static_assert(
    [] {
        const auto cuts_as = [](Metal metal) { return stock::metal_info(metal).cuts_as; };
        for (std::size_t i = 0; i < stock::metal_count; ++i) {
            if (all_metals[i] != static_cast<Metal>(i) || cuts_as(cuts_as(all_metals[i])) != cuts_as(all_metals[i])) {
                return false;
            }
        }
        return true;
    }(),
    "metals in the order of the enum, each cutting as one that cuts as itself");

} // namespace torchside
