#include "core/part/checks.hpp"

#include <algorithm>
#include <cmath>

#include "core/part/kerf.hpp"
#include "core/part/measure.hpp"
#include "core/part/near.hpp"
#include "generated/words/problem.hpp"

namespace torchside::part {
namespace {

constexpr std::size_t most_of_a_contour = 50;
constexpr double most_places = 50000.0;          // looked at for bridges
constexpr double opposite = -0.8660254037844387; // cosine of 150 degrees
constexpr double equal_share = 1e-9;             // by how much bridges of one width may differ in their last digits
constexpr double round_share = 1e-6;             // how far box and area of a circle may be off

// Metal between a place on a contour and what is opposite.
struct Bridge {
    std::size_t a = 0, b = 0; // contours
    Point at{};               // its middle
    double mm = 0.0;
};

bool is_round(const Contour& c, const Box& box) {
    const double d = equal_diameter_mm(c);
    return std::abs(box.width() - d) <= round_share * d && std::abs(box.height() - d) <= round_share * d;
}

// From two opposite pieces to where they are nearest to each other.
void narrow_down(const Piece& a, const Piece& b, Point& at_a, Point& at_b) {
    for (int i = 0; i < 40; ++i) {
        const Point next_b = nearest_on(b, at_a);
        const Point next_a = nearest_on(a, next_b);
        const bool still = norm(next_a - at_a) < 1e-9 && norm(next_b - at_b) < 1e-9;
        at_a = next_a;
        at_b = next_b;
        if (still) {
            return;
        }
    }
}

class Bridges {
public:
    Bridges(const Outline& outline, double least_mm) : outline_(outline), least_(least_mm), near_(outline) {}

    std::vector<Bridge> find() {
        step_ = std::max(least_, length_mm(outline_) / most_places);
        for (std::size_t i = 0; i < near_.row().pieces.size(); ++i) {
            if (outline_.contours[near_.row().contour[i]].role != Role::open) {
                along(i);
            }
        }
        return std::move(found_);
    }

private:
    // Metal is on the left of every closed contour.
    void along(std::size_t i) {
        const Piece& p = near_.row().pieces[i];
        const double length = length_of(p);
        const int steps = std::clamp(static_cast<int>(std::ceil(length / step_)), 1, 200);
        for (int k = 0; k < steps && length > 0.0; ++k) {
            const double share = (k + 0.5) / steps;
            const Point at = point_at(p, share);
            const Near::Width w = near_.width(at, left_of(direction_at(p, share)), least_);
            if (w.other.contour == Near::none || !(w.mm < least_ * (1.0 - 1e-9))) {
                continue;
            }
            const Point to_here = at - w.middle;
            const Point to_there = w.other.at - w.middle;
            if (dot(to_here, to_there) > opposite * norm(to_here) * norm(to_there)) {
                continue;
            }
            const Piece& other = near_.row().pieces[w.other.piece];
            if (p.from == other.to || p.to == other.from) { // the sides of a sharp corner: it is its tip
                note({near_.row().contour[i], w.other.contour, p.from == other.to ? p.from : p.to, w.mm});
                continue;
            }
            Point here = at;
            Point there = w.other.at;
            narrow_down(p, other, here, there);
            const double mm = norm(there - here);
            if (mm > 0.0 && mm < least_ * (1.0 - 1e-9)) {
                note({near_.row().contour[i], w.other.contour, 0.5 * (here + there), mm});
            }
        }
    }

    // Two contours have one bridge, the narrowest; a contour with itself one at a place.
    void note(Bridge bridge) {
        if (bridge.a > bridge.b) {
            std::swap(bridge.a, bridge.b);
        }
        std::size_t of_this = 0;
        for (Bridge& known : found_) {
            if (known.a != bridge.a || known.b != bridge.b) {
                continue;
            }
            if (bridge.a != bridge.b || norm(known.at - bridge.at) < 2.0 * least_) {
                if (bridge.mm < known.mm * (1.0 - equal_share)) { // else equally narrow: the first place is named
                    known = bridge;
                }
                return;
            }
            ++of_this;
        }
        if (of_this < most_of_a_contour) {
            found_.push_back(bridge);
        }
    }

    const Outline& outline_;
    double least_;
    double step_ = 0.0; // along a piece, from place to place
    Near near_;
    std::vector<Bridge> found_{};
};

} // namespace

double inside_size_mm(const Contour& c) {
    const Box box = box_of(c);
    return std::min({equal_diameter_mm(c), box.width(), box.height()});
}

std::vector<Problem> check_part(const Outline& outline, Length thickness, Length kerf) {
    std::vector<Problem> problems;
    for (const Contour& c : outline.contours) {
        if (c.role != Role::inner || c.points.size() < 2) {
            continue;
        }
        const double d = inside_size_mm(c);
        if (d < thickness.in(mm)) {
            problems.push_back({"small_hole", Severity::caution, words::problem::small_hole,
                                words::problem::small_hole_why, centroid_of(c), d});
        }
        if (deviation(Length{d, mm}, thickness).state == Deviation::State::outside_table) {
            problems.push_back(
                {"outside_9013", Severity::note, words::problem::outside_9013, Word{}, centroid_of(c), d});
        }
    }
    if (!(kerf.in(mm) > 0.0)) {
        return problems;
    }
    for (const Bridge& b : Bridges(outline, 2.0 * kerf.in(mm)).find()) {
        problems.push_back({"thin_bridge", Severity::caution, words::problem::thin_bridge,
                            words::problem::thin_bridge_why, b.at, b.mm});
    }
    return problems;
}

std::vector<PartSize> sizes_of(const Outline& outline, Length thickness, Length kerf) {
    std::vector<PartSize> sizes;
    for (std::size_t i = 0; i < outline.contours.size(); ++i) {
        const Contour& c = outline.contours[i];
        if (c.role == Role::open || c.points.size() < 2) {
            continue;
        }
        const bool inside = c.role == Role::inner;
        const auto add = [&](PartSize::What what, double size_mm) {
            const Length size{size_mm, mm};
            sizes.push_back({i, what, size, comes_out(size, kerf, inside), draw_for(size, kerf, inside),
                             deviation(size, thickness)});
        };
        const Box box = box_of(c);
        if (is_round(c, box)) {
            add(PartSize::What::diameter, equal_diameter_mm(c));
        } else {
            add(PartSize::What::width, box.width());
            add(PartSize::What::height, box.height());
        }
    }
    return sizes;
}

} // namespace torchside::part
