#include "core/part/deviation.hpp"

#include <cstddef>
#include <iterator>

namespace torchside::part {
namespace {

constexpr double below_mm[] = {3, 10, 35, 125, 315, 1000, 2000, 4000, 6000, 8000};

// Thickness up to which a row holds, then plus or minus for each size; 0: no value. All in mm.
constexpr double rows[][1 + std::size(below_mm)] = {
#include "generated/part_deviations.inc"
};

} // namespace

Deviation deviation(Length size, Length thickness) {
    if (!(size.in(mm) > 0.0 && thickness.in(mm) > 0.0)) {
        return {};
    }
    for (const auto& row : rows) {
        if (thickness.in(mm) > row[0]) {
            continue;
        }
        for (std::size_t i = 0; i < std::size(below_mm); ++i) {
            if (size.in(mm) < below_mm[i]) {
                const double d = row[1 + i];
                return d > 0.0 ? Deviation{Deviation::State::given, Length{d, mm}}
                               : Deviation{Deviation::State::outside_table, {}};
            }
        }
        return {Deviation::State::outside_table, {}};
    }
    return {};
}

} // namespace torchside::part
