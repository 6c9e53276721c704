#include "core/part/sheet.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"
#include "core/words/range.hpp"
#include "generated/words/part_size.hpp"

namespace torchside::part {
namespace {

constexpr std::size_t bands = 512;
constexpr double most_places = 20000.0;
constexpr double chord_mm = 0.02; // arcs are taken in chords this near, and that much is kept clear besides
constexpr double hair_mm = 1e-9;

std::optional<Fault> refusal(const Sheet& s) {
    const struct {
        const char* field;
        Length given;
        double least, most;
    } sizes[] = {{"sheet_width_mm", s.width, 10, 20000},
                 {"sheet_height_mm", s.height, 10, 20000},
                 {"margin_mm", s.margin, 0, 1000},
                 {"spacing_mm", s.spacing, 0, 1000},
                 {"thickness_mm", s.thickness, 0.3, 150}};
    for (const auto& [field, given, least, most] : sizes) {
        if (!(given.in(mm) >= least && given.in(mm) <= most)) {
            return Fault{field, words::range(least, most, FieldUnit::mm)};
        }
    }
    return std::nullopt;
}

Point turned(Point p, int quarter_turns) {
    for (int i = 0; i < quarter_turns % 4; ++i) {
        p = left_of(p);
    }
    return p;
}

// How far left and right a shape reaches at each height, heights from `low` on.
struct Profile {
    std::vector<double> left = std::vector<double>(bands, 1e300);
    std::vector<double> right = std::vector<double>(bands, -1e300);
    double low = 0.0;
    double band = 1.0;

    void add(std::size_t i, double x0, double x1) {
        left[i] = std::min({left[i], x0, x1});
        right[i] = std::max({right[i], x0, x1});
    }
    // A chord: where it enters and leaves each band.
    void add(Point a, Point b) {
        if (a.y > b.y) {
            std::swap(a, b);
        }
        const double most = static_cast<double>(bands) - 1.0;
        const auto first = static_cast<std::size_t>(std::clamp((a.y - low) / band, 0.0, most));
        const auto last = static_cast<std::size_t>(std::clamp((b.y - low) / band, 0.0, most));
        const double slope = b.y > a.y ? (b.x - a.x) / (b.y - a.y) : 0.0;
        for (std::size_t i = first; i <= last; ++i) {
            const double y0 = low + static_cast<double>(i) * band;
            const double from = i == first ? a.x : a.x + (y0 - a.y) * slope;
            const double to = i == last ? b.x : a.x + (y0 + band - a.y) * slope;
            add(i, from, to);
        }
        if (first == last) {
            add(first, a.x, b.x);
        }
    }
    // The disc of radius r about p.
    void add_disc(Point p, double r) {
        const double most = static_cast<double>(bands) - 1.0;
        const auto first = static_cast<std::size_t>(std::clamp((p.y - r - low) / band, 0.0, most));
        const auto last = static_cast<std::size_t>(std::clamp((p.y + r - low) / band, 0.0, most));
        for (std::size_t i = first; i <= last; ++i) {
            if (p.x - r >= left[i] && p.x + r <= right[i]) {
                continue;
            }
            const double y0 = low + static_cast<double>(i) * band;
            const double off = std::max({0.0, y0 - p.y, p.y - y0 - band});
            const double reach = std::sqrt(std::max(0.0, r * r - off * off));
            add(i, p.x - reach, p.x + reach);
        }
    }
    // A contour's line, grown by r: what the discs about all its points reach.
    void add(const Contour& c, double r) {
        for (std::size_t i = 0; i < piece_count(c); ++i) {
            const Piece p = piece_of(c, i);
            int steps = 1;
            if (!p.straight()) {
                const Arc arc = arc_of(p);
                steps = static_cast<int>(std::ceil(std::abs(arc.sweep) * std::sqrt(arc.radius / (8.0 * chord_mm)))) + 1;
            }
            Point from = p.from;
            for (int k = 1; k <= steps; ++k) {
                const Point to = k == steps ? p.to : point_at(p, static_cast<double>(k) / steps);
                const double length = norm(to - from);
                const Point aside = length > 0.0 && r > 0.0 ? (r / length) * left_of(to - from) : Point{};
                add(from + aside, to + aside);
                if (r > 0.0) {
                    add(from - aside, to - aside);
                    add_disc(to, r);
                }
                from = to;
            }
        }
    }
};

// A part one way round: its box at 0,0, its profile, and that of its shape grown by the spacing.
struct Stance {
    double width = 0.0;
    double height = 0.0;
    Profile drawn{};
    Profile grown{};
};

Stance stance_of(const Outline& part, double spacing) {
    const Box box = box_of(part);
    Stance s;
    s.width = box.width();
    s.height = box.height();
    for (Profile* p : {&s.drawn, &s.grown}) {
        p->low = -spacing;
        p->band = std::max((s.height + 2.0 * spacing) / static_cast<double>(bands), 1e-6);
    }
    for (const Contour& c : part.contours) {
        if (c.role != Role::outer) {
            continue;
        }
        s.drawn.add(c, 0.0);
        s.grown.add(c, spacing);
    }
    return s;
}

// How far on the next part stands. Turned by half a turn, right becomes left and the lowest band the highest.
double pitch(const Stance& s, bool first_turned, bool next_turned) {
    double least = 0.0;
    for (std::size_t i = 0; i < bands; ++i) {
        const std::size_t k = bands - 1 - i;
        const double right = first_turned ? s.width - s.grown.left[k] : s.grown.right[i];
        const double left = next_turned ? s.width - s.drawn.right[k] : s.drawn.left[i];
        if (right > -1e299 && left < 1e299) {
            least = std::max(least, right - left);
        }
    }
    return least + 2.0 * chord_mm;
}

// Rows of parts on a sheet.
struct Rows {
    double step[2] = {}; // from a part to the next, from that to the one after
    double row = 0.0;    // from row to row
    double in_row = 0.0;
    double rows = 0.0;
    [[nodiscard]] double count() const { return in_row * rows; }
};

Rows rows_of(const Stance& s, double width, double height, double spacing, bool alternate) {
    Rows r;
    const double plain = s.width + spacing;
    r.step[0] = std::min(plain, pitch(s, false, alternate));
    r.step[1] = alternate ? std::min(plain, pitch(s, true, false)) : r.step[0];
    if (alternate) { // those one apart must not meet either
        r.step[1] = std::max(r.step[1], std::min(plain, pitch(s, false, false)) - r.step[0]);
    }
    r.row = s.height + spacing;
    const double along = width - s.width + hair_mm;
    const double up = height - s.height + hair_mm;
    if (along < 0.0 || up < 0.0) {
        return r;
    }
    const double pair = r.step[0] + r.step[1];
    const double pairs = std::floor(along / pair);
    r.in_row = 1.0 + 2.0 * pairs + (along - pairs * pair >= r.step[0] ? 1.0 : 0.0);
    r.rows = 1.0 + std::floor(up / r.row);
    return r;
}

// One way of laying them out: the part's quarter turns in a sheet that is itself looked at from its side or not.
struct Plan {
    Rows rows{};
    int quarter_turns = 0;
    bool alternate = false;
    bool from_side = false;
};

void lay_out(const Plan& plan, const Stance& s, const Sheet& sheet, SheetFit& fit) {
    const double margin = sheet.margin.in(mm);
    const double pair = plan.rows.step[0] + plan.rows.step[1];
    for (double row = 0.0; row < plan.rows.rows; ++row) {
        for (double i = 0.0; i < plan.rows.in_row && static_cast<double>(fit.places.size()) < most_places; ++i) {
            const double half = std::floor(0.5 * i);
            const bool second = i > 2.0 * half;
            const double x = half * pair + (second ? plan.rows.step[0] : 0.0);
            const double y = row * plan.rows.row;
            Placed p{{margin + x, margin + y}, plan.quarter_turns + (plan.alternate && second ? 2 : 0)};
            if (plan.from_side) { // back by a quarter turn: x runs up the sheet, y from its right edge to the left
                p.at = {sheet.width.in(mm)-margin - y - s.height, margin + x};
                p.quarter_turns += 1;
            }
            p.quarter_turns %= 4;
            fit.places.push_back(p);
        }
    }
}

} // namespace

Outline placed(const Outline& part, const Placed& place) {
    Outline o = part;
    for (Contour& c : o.contours) {
        for (Vertex& v : c.points) {
            v.at = turned(v.at, place.quarter_turns);
        }
    }
    const Point shift = place.at - box_of(o).low;
    for (Contour& c : o.contours) {
        for (Vertex& v : c.points) {
            v.at = v.at + shift;
        }
    }
    return o;
}

Outcome<SheetFit> fit_sheet(const Outline& part, const Sheet& sheet) {
    if (auto fault = refusal(sheet)) {
        return *fault;
    }
    Box box;
    for (const Contour& c : part.contours) {
        if (c.role == Role::outer) {
            box.add(box_of(c));
        }
    }
    if (!(box.width() > 0.0 && box.height() > 0.0)) {
        return Fault{"part", words::part_size::no_outside};
    }
    const double spacing = sheet.spacing.in(mm);
    const double width = sheet.width.in(mm)-2.0 * sheet.margin.in(mm);
    const double height = sheet.height.in(mm)-2.0 * sheet.margin.in(mm);
    const Stance stances[] = {stance_of(placed(part, {{0, 0}, 0}), spacing),
                              stance_of(placed(part, {{0, 0}, 1}), spacing)};
    Plan best;
    for (const bool alternate : {false, true}) {
        for (const bool from_side : {false, true}) {
            for (int turns = 0; turns < 2; ++turns) {
                Plan plan{{}, turns, alternate, from_side};
                plan.rows =
                    rows_of(stances[turns], from_side ? height : width, from_side ? width : height, spacing, alternate);
                if (plan.rows.count() > best.rows.count()) {
                    best = plan;
                }
            }
        }
    }
    SheetFit fit;
    fit.count = static_cast<int>(std::min(best.rows.count(), 1e9));
    fit.turned = (best.quarter_turns == 1) != best.from_side;
    fit.alternate = best.alternate;
    lay_out(best, stances[best.quarter_turns], sheet, fit);
    const Area part_area{area_mm2(part), mm2};
    const Area sheet_area{sheet.width.in(mm)*sheet.height.in(mm), mm2};
    fit.use = fit.count * (part_area / sheet_area);
    const double metal = 1.0 - sheet.open_share;
    fit.part = metal * mass_of(part_area, sheet.thickness, sheet.metal);
    fit.sheet = metal * mass_of(sheet_area, sheet.thickness, sheet.metal);
    fit.drop = fit.sheet - static_cast<double>(fit.count) * fit.part;
    return fit;
}

} // namespace torchside::part
