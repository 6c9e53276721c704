#include "core/part/dimension.hpp"

#include <algorithm>
#include <cmath>

#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"

namespace torchside::part {
namespace {

constexpr Point right{1, 0};
constexpr Point left{-1, 0};
constexpr Point up{0, 1};

Point along(Point from, Point way, double by) {
    return {from.x + way.x * by, from.y + way.y * by};
}

/// From a point that stays.
Dimension grows(Point from, Point way, double size, bool outer = false) {
    return {from, along(from, way, size), way, 1, outer};
}

/// About a middle that stays.
Dimension spreads(Point middle, Point way, double size) {
    return {along(middle, way, -size / 2), along(middle, way, size / 2), way, 2, false};
}

/// The middle of one of the holes, the first that is drawn; none when there is none.
std::optional<Point> first_hole(const PartSpec& s) {
    if (s.holes < 1 || !(s.hole.in(mm) > 0.0)) {
        return std::nullopt;
    }
    const double l = s.length.in(mm);
    const double w = s.width.in(mm);
    const double e = s.hole_edge.in(mm);
    const double d = s.outside.in(mm);
    switch (s.shape) {
    case Shape::plate:
        return s.holes == 1 ? Point{l / 2, w / 2} : s.holes == 2 || s.holes % 2 == 1 ? Point{e, w / 2} : Point{e, e};
    case Shape::flange:
        return Point{d / 2 + s.hole_circle.in(mm) / 2, d / 2};
    case Shape::bracket: // the last on the leg that lies, or the one in the corner
        return s.holes == 1 ? Point{s.leg.in(mm) / 2, s.leg.in(mm) / 2} : Point{l - e, s.leg.in(mm) / 2};
    case Shape::disc:
    case Shape::ring:
    case Shape::gusset:
    case Shape::slotted_plate:
    case Shape::drawing:
        break;
    }
    return std::nullopt;
}

bool is_round(Shape shape) {
    return shape == Shape::disc || shape == Shape::ring || shape == Shape::flange;
}

std::optional<Dimension> of_round(const PartSpec& s, std::string_view key) {
    const double d = s.outside.in(mm);
    const Point middle{d / 2, d / 2};
    if (key == "outside_mm") {
        return grows({0, 0}, right, d, true);
    }
    if (key == "inside_mm" && s.shape != Shape::disc && s.inside.in(mm) > 0.0) {
        return spreads(middle, right, s.inside.in(mm));
    }
    if (key == "hole_circle_mm" && s.shape == Shape::flange && s.holes > 0) {
        return spreads(middle, right, s.hole_circle.in(mm));
    }
    return std::nullopt;
}

/// Of the shapes that have a length and a width.
std::optional<Dimension> of_straight(const PartSpec& s, std::string_view key) {
    const double l = s.length.in(mm);
    const double w = s.width.in(mm);
    const Point middle{l / 2, w / 2};
    if (key == "length_mm") {
        return grows({0, 0}, right, l, true);
    }
    if (key == "width_mm") {
        return grows({0, 0}, up, w, true);
    }
    if (key == "corner_mm") {
        return s.shape == Shape::gusset    ? grows({0, 0}, right, s.corner.in(mm))
               : s.shape == Shape::bracket ? grows({l, 0}, left, s.corner.in(mm))
                                           : grows({l, w}, left, s.corner.in(mm));
    }
    if (s.shape == Shape::slotted_plate) {
        return key == "slot_length_mm"  ? std::optional(spreads(middle, right, s.slot_length.in(mm)))
               : key == "slot_width_mm" ? std::optional(spreads(middle, up, s.slot_width.in(mm)))
                                        : std::nullopt;
    }
    if (s.shape == Shape::bracket && key == "leg_mm") {
        return grows({0, w}, right, s.leg.in(mm));
    }
    if (s.shape == Shape::bracket && key == "inner_corner_mm") {
        return grows({s.leg.in(mm), s.leg.in(mm)}, right, s.inner_corner.in(mm));
    }
    return std::nullopt;
}

} // namespace

std::optional<Dimension> dimension_of(const PartSpec& s, std::string_view key) {
    if (s.shape == Shape::drawing) {
        return std::nullopt;
    }
    const auto hole = first_hole(s);
    if (hole && key == "hole_mm") {
        return spreads(*hole, right, s.hole.in(mm));
    }
    if (hole && key == "hole_edge_mm" && s.holes > 1 && !is_round(s.shape)) {
        const bool lies = s.shape == Shape::bracket;
        return grows({lies ? s.length.in(mm) : 0.0, hole->y}, lies ? left : right, s.hole_edge.in(mm));
    }
    return is_round(s.shape) ? of_round(s, key) : of_straight(s, key);
}

double dragged_mm(const Dimension& line, double was_mm, Point by_mm, double step_mm) {
    const double along_way = by_mm.x * line.way.x + by_mm.y * line.way.y;
    return std::round((was_mm + line.gain * along_way) / step_mm) * step_mm;
}

double drag_step_mm(double px_mm, bool metric) {
    constexpr double least_px = 3; // that a hand can tell apart
    constexpr double metric_steps[] = {0.5, 1, 5, 10, 50, 100};
    constexpr double inch_steps[] = {25.4 / 16, 25.4 / 8, 25.4 / 4, 25.4 / 2, 25.4, 127};
    const double(&steps)[6] = metric ? metric_steps : inch_steps;
    for (const double step : steps) {
        if (step * px_mm >= least_px) {
            return step;
        }
    }
    return steps[5];
}

} // namespace torchside::part
