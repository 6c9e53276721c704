#include "core/part/shapes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"
#include "core/quantity/field_unit.hpp"
#include "generated/words/part_size.hpp"

namespace torchside::part {
namespace {

// Sizes that just touch by what rounding leaves are taken to touch.
constexpr double hair_mm = 1e-9;

struct Corner {
    Point at{};
    double radius = 0.0;
};

Fault fault(const char* key, Text text) {
    return {std::string("job.part.") + key, std::move(text)};
}

// The most that a size may be, as a refusal says it: rounded down in the reader's units, so that it is accepted. A whole hundredth
// that binary digits put a trace below itself stays that hundredth.
words::Slot below(double most_mm) {
    return words::high_end(std::floor(most_mm * 100.0 + 1e-6) / 100.0, FieldUnit::mm);
}

// A polygon, anticlockwise, each corner rounded by its radius.
Outcome<Contour> rounded(const std::vector<Corner>& corners) {
    const std::size_t n = corners.size();
    std::vector<double> back(n);  // from a corner to where its arc begins and ends
    std::vector<double> bulge(n); // of its arc
    for (std::size_t i = 0; i < n; ++i) {
        const Point in = corners[i].at - corners[(i + n - 1) % n].at;
        const Point out = corners[(i + 1) % n].at - corners[i].at;
        const double turn = std::atan2(cross(in, out), dot(in, out));
        back[i] = corners[i].radius * std::tan(0.5 * std::abs(turn));
        bulge[i] = std::tan(0.25 * turn);
    }
    Contour c;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t next = (i + 1) % n;
        const Point in = corners[i].at - corners[(i + n - 1) % n].at;
        const Point out = corners[next].at - corners[i].at;
        const double length = norm(out);
        const double taken = back[i] + back[next];
        if (taken > length + hair_mm) {
            const double most = std::max(corners[i].radius, corners[next].radius) * length / taken;
            return fault("corner_mm", words::part_size::Corner{.most = below(most)});
        }
        if (!(back[i] > 0.0)) {
            c.points.push_back({corners[i].at, 0.0});
            continue;
        }
        c.points.push_back({corners[i].at - (back[i] / norm(in)) * in, bulge[i]});
        if (taken < length - hair_mm) { // else the next arc begins where this one ends
            c.points.push_back({corners[i].at + (back[i] / length) * out, 0.0});
        }
    }
    return c;
}

Outcome<Contour> rectangle(const PartSpec& s) {
    const double l = s.length.in(mm);
    const double w = s.width.in(mm);
    const double r = s.corner.in(mm);
    return rounded({{{0, 0}, r}, {{l, 0}, r}, {{l, w}, r}, {{0, w}, r}});
}

// `count` places from a to b, both included; the middle for one.
void row(std::vector<Point>& at, Point a, Point b, int count) {
    for (int i = 0; i < count; ++i) {
        at.push_back(a + (count == 1 ? 0.5 : static_cast<double>(i) / (count - 1)) * (b - a));
    }
}

std::vector<Point> plate_holes(const PartSpec& s) {
    const double l = s.length.in(mm);
    const double w = s.width.in(mm);
    const double e = s.hole_edge.in(mm);
    std::vector<Point> at;
    if (s.holes == 2 || s.holes % 2 == 1) {
        row(at, {e, 0.5 * w}, {l - e, 0.5 * w}, s.holes);
    } else {
        row(at, {e, e}, {l - e, e}, s.holes / 2);
        row(at, {l - e, w - e}, {e, w - e}, s.holes / 2);
    }
    return at;
}

std::vector<Point> bracket_holes(const PartSpec& s) {
    const double middle = 0.5 * s.leg.in(mm);
    const Point corner{middle, middle};
    const int on_leg = s.holes / 2;
    std::vector<Point> at;
    if (s.holes % 2 == 1) {
        at.push_back(corner);
    }
    const Point ends[] = {{s.length.in(mm)-s.hole_edge.in(mm), middle}, {middle, s.width.in(mm)-s.hole_edge.in(mm)}};
    for (const Point& end : ends) {
        for (int i = 1; i <= on_leg; ++i) {
            at.push_back(corner + (static_cast<double>(i) / on_leg) * (end - corner));
        }
    }
    return at;
}

std::vector<Point> flange_holes(const PartSpec& s) {
    const Point centre{0.5 * s.outside.in(mm), 0.5 * s.outside.in(mm)};
    const double radius = 0.5 * s.hole_circle.in(mm);
    std::vector<Point> at;
    for (int i = 0; i < s.holes; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / s.holes;
        at.push_back(centre + radius * Point{std::cos(angle), std::sin(angle)});
    }
    return at;
}

// Puts round holes into a part that is there already, when none leaves it or meets another contour.
std::optional<Fault> bore_holes(Outline& o, const std::vector<Point>& at, const PartSpec& s, const char* place_key) {
    const double radius = 0.5 * s.hole.in(mm);
    if (!(radius > 0.0)) {
        return std::nullopt;
    }
    double room = 1e300;
    for (std::size_t i = 0; i < at.size(); ++i) {
        for (const Contour& c : o.contours) {
            if (holds(c, at[i]) != (c.role == Role::outer)) {
                return fault(place_key, words::part_size::hole_outside);
            }
            for (std::size_t k = 0; k < piece_count(c); ++k) {
                room = std::min(room, norm(nearest_on(piece_of(c, k), at[i]) - at[i]));
            }
        }
        for (std::size_t k = 0; k < i; ++k) {
            room = std::min(room, 0.5 * norm(at[k] - at[i]));
        }
    }
    if (!(radius < room - hair_mm)) {
        return room > hair_mm ? fault("hole_mm", words::part_size::Hole{.most = below(2.0 * room)})
                              : fault("hole_mm", words::part_size::no_hole);
    }
    for (const Point& centre : at) {
        o.contours.push_back(circle(centre, radius, Role::inner));
    }
    return std::nullopt;
}

Outcome<Outline> with_holes(const Outcome<Contour>& outer, const std::vector<Point>& at, const PartSpec& s,
                            const char* place_key) {
    if (!outer) {
        return outer.fault();
    }
    Outline o{{outer.value()}};
    if (auto wrong = bore_holes(o, at, s, place_key)) {
        return *wrong;
    }
    return o;
}

Outcome<Outline> round_part(const PartSpec& s) {
    const double outside = s.outside.in(mm);
    const Point centre{0.5 * outside, 0.5 * outside};
    Outline o{{circle(centre, 0.5 * outside, Role::outer)}};
    if (s.shape == Shape::disc) {
        return o;
    }
    if (s.inside >= s.outside) {
        return fault("inside_mm", words::part_size::Bore{.most = below(s.outside.in(mm))});
    }
    if (s.inside.in(mm) > 0.0) {
        o.contours.push_back(circle(centre, 0.5 * s.inside.in(mm), Role::inner));
    } else if (s.shape == Shape::ring) {
        return fault("inside_mm", words::part_size::ring);
    }
    if (s.shape == Shape::flange) {
        if (auto wrong = bore_holes(o, flange_holes(s), s, "hole_circle_mm")) {
            return *wrong;
        }
    }
    return o;
}

Outcome<Outline> slotted_plate(const PartSpec& s) {
    auto outer = rectangle(s);
    if (!outer) {
        return outer.fault();
    }
    const double l = s.slot_length.in(mm);
    const double w = s.slot_width.in(mm);
    if (!(w > 0.0)) {
        return fault("slot_width_mm", words::part_size::slot_width);
    }
    if (w >= s.width.in(mm)) {
        return fault("slot_width_mm", words::part_size::SlotMost{.most = below(s.width.in(mm))});
    }
    if (l < w) {
        return fault("slot_length_mm", words::part_size::slot_length);
    }
    const Point middle{0.5 * s.length.in(mm), 0.5 * s.width.in(mm)};
    const double reach = 0.5 * (l - w); // from the middle to the centres of the round ends
    Contour slot = circle(middle, 0.5 * w, Role::inner);
    if (reach > hair_mm) {
        const Point end{reach, 0.0};
        const Point up{0.0, 0.5 * w};
        slot.points = {
            {middle - end - up, -1.0}, {middle - end + up, 0.0}, {middle + end + up, -1.0}, {middle + end - up, 0.0}};
    }
    if (l >= s.length.in(mm)) {
        return fault("slot_length_mm", words::part_size::SlotMost{.most = below(s.length.in(mm))});
    }
    // Rounded corners are never in the way: what is left of the plate still holds the largest slot with round ends.
    return Outline{{outer.value(), std::move(slot)}};
}

Outcome<Outline> bracket(const PartSpec& s) {
    const double l = s.length.in(mm);
    const double w = s.width.in(mm);
    const double leg = s.leg.in(mm);
    const double r = s.corner.in(mm);
    const double inner = s.inner_corner.in(mm);
    if (leg >= std::min(l, w)) {
        return fault("leg_mm", words::part_size::Leg{.most = below(std::min(l, w))});
    }
    if (inner > std::min(l, w) - leg + hair_mm) {
        return fault("inner_corner_mm", words::part_size::InnerCorner{.most = below(std::min(l, w) - leg)});
    }
    auto outer = rounded({{{0, 0}, r}, {{l, 0}, r}, {{l, leg}, r}, {{leg, leg}, inner}, {{leg, w}, r}, {{0, w}, r}});
    return with_holes(outer, bracket_holes(s), s, "hole_edge_mm");
}

} // namespace

Contour circle(Point centre, double radius_mm, Role role) {
    const double bulge = role == Role::inner ? -1.0 : 1.0;
    return {{{{centre.x + radius_mm, centre.y}, bulge}, {{centre.x - radius_mm, centre.y}, bulge}}, role};
}

Outcome<Outline> make_outline(const PartSpec& s) {
    const double r = s.corner.in(mm);
    switch (s.shape) {
    case Shape::plate:
        return with_holes(rectangle(s), plate_holes(s), s, "hole_edge_mm");
    case Shape::disc:
    case Shape::ring:
    case Shape::flange:
        return round_part(s);
    case Shape::gusset:
        return with_holes(rounded({{{0, 0}, r}, {{s.length.in(mm), 0}, r}, {{0, s.width.in(mm)}, r}}), {}, s, "");
    case Shape::slotted_plate:
        return slotted_plate(s);
    case Shape::bracket:
        return bracket(s);
    case Shape::drawing:
        if (s.drawing) {
            return *s.drawing;
        }
        break;
    }
    return fault("drawing", words::part_size::no_drawing);
}

} // namespace torchside::part
