#include "core/worksheet/holes.hpp"

#include <algorithm>
#include <cmath>

#include "core/part/checks.hpp"

namespace torchside {

Length least_hole(const cut::Settings& settings, UnitSystem shown) {
    constexpr double hair = 1e-9; // 6 mm is not 6.1
    const Length least{std::ceil(settings.min_hole.value.in(mm)*10.0 - hair) / 10.0, mm};
    return shown == UnitSystem::metric ? least : Length{std::ceil(least.in(inch)*1000.0 - hair) / 1000.0, inch};
}

std::vector<Holes> holes_of(const Worksheet& worksheet, Length thickness) {
    std::vector<Holes> out;
    if (!worksheet.settings) {
        return out;
    }
    const Length least = least_hole(*worksheet.settings);
    const double thick = thickness.in(mm);
    std::vector<double> sizes;
    for (const part::Contour& c : worksheet.part->outline.contours) {
        if (c.role == part::Role::inner && c.points.size() >= 2) {
            sizes.push_back(part::inside_size_mm(c));
        }
    }
    std::sort(sizes.begin(), sizes.end());
    for (const double d : sizes) {
        const Length size{std::floor(d * 100.0 + 0.5) / 100.0, mm};
        const HoleState state = d < thick ? HoleState::poor : size < least ? HoleState::small : HoleState::good;
        if (!out.empty() && out.back().size == size && out.back().state == state) {
            ++out.back().count;
        } else {
            out.push_back({size, 1, state});
        }
    }
    return out;
}

} // namespace torchside
