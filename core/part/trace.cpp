#include "core/part/trace.hpp"

#include <algorithm>
#include <cmath>

#include "core/part/piece.hpp"

namespace torchside::part {
namespace {

constexpr int most_steps = 720;

int steps_of(const Piece& p, double share, double tolerance) {
    if (p.straight() || p.from == p.to) {
        return 1;
    }
    const Arc arc = arc_of(p);
    const double step = 2.0 * std::acos(std::clamp(1.0 - tolerance / arc.radius, -1.0, 1.0));
    const double steps = step > 0.0 ? std::ceil(std::abs(arc.sweep) * share / step - 1e-9) : most_steps;
    return static_cast<int>(std::clamp(steps, 1.0, static_cast<double>(most_steps)));
}

} // namespace

std::vector<Point> trace(std::span<const Vertex> row, bool closed, double tolerance_mm, Stretch stretch) {
    std::vector<Point> out;
    const std::size_t pieces = row.empty() ? 0 : closed ? row.size() : row.size() - 1;
    double at = 0.0;
    for (std::size_t i = 0; i < pieces && at < stretch.to_mm; ++i) {
        const Piece p{row[i].at, row[i + 1 < row.size() ? i + 1 : 0].at, row[i].bulge};
        const double length = length_of(p);
        const double begin = at;
        at += length;
        if (at <= stretch.from_mm || length <= 0.0) {
            continue;
        }
        const double first = std::max(0.0, (stretch.from_mm - begin) / length);
        const double last = std::min(1.0, (stretch.to_mm - begin) / length);
        const int steps = steps_of(p, last - first, tolerance_mm);
        if (out.empty()) {
            out.push_back(first > 0.0 ? point_at(p, first) : p.from);
        }
        for (int s = 1; s <= steps; ++s) {
            const double share = first + (last - first) * s / steps;
            out.push_back(share >= 1.0 ? p.to : point_at(p, share));
        }
    }
    return out;
}

} // namespace torchside::part
