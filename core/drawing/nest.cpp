#include "core/drawing/nest.hpp"

#include <algorithm>
#include <cmath>

#include "core/part/box_tree.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

using part::Box;
using part::BoxTree;
using part::PieceRow;

namespace {

constexpr std::size_t most_steps = 50'000'000;
constexpr std::size_t few_pieces = 24; // looked at one by one
constexpr std::size_t piece_steps = 5; // a piece takes as long as so many boxes

// Counts the closed contours around a point.
class Nester {
public:
    explicit Nester(const Outline& outline)
        : outline_(outline), row_(outline), pieces_(piece_boxes()), contours_(contour_boxes()) {}

    [[nodiscard]] bool tired() const { return steps_ > most_steps; }

    /// How many closed contours hold a point, but for the contour `not_this`.
    int around(Point p, std::uint32_t not_this) {
        int depth = 0;
        visit_contours(contours_.levels() - 1, 0, p, not_this, depth);
        return depth;
    }

private:
    std::vector<Box> piece_boxes() const {
        std::vector<Box> boxes;
        boxes.reserve(row_.pieces.size());
        for (const Piece& p : row_.pieces) {
            boxes.push_back(box_of_piece(p));
        }
        return boxes;
    }

    std::vector<Box> contour_boxes() const {
        std::vector<Box> boxes(row_.order.size());
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            for (std::uint32_t k = row_.begin[i]; k < row_.begin[i + 1]; ++k) {
                boxes[i].add(pieces_.box(0, k));
            }
        }
        return boxes;
    }

    void visit_contours(std::size_t level, std::size_t i, Point p, std::uint32_t not_this, int& depth) {
        const Box& box = contours_.box(level, i);
        if (++steps_ > most_steps || p.x < box.low.x || p.x > box.high.x || p.y < box.low.y || p.y > box.high.y) {
            return;
        }
        if (level > 0) {
            const std::size_t end = std::min((i + 1) * BoxTree::fan, contours_.count(level - 1));
            for (std::size_t k = i * BoxTree::fan; k < end; ++k) {
                visit_contours(level - 1, k, p, not_this, depth);
            }
            return;
        }
        if (row_.order[i] == not_this || outline_.contours[row_.order[i]].role == Role::open) {
            return;
        }
        int winding = 0;
        const std::uint32_t from = row_.begin[i], to = row_.begin[i + 1];
        if (to - from <= few_pieces) {
            for (std::uint32_t k = from; k < to; ++k) {
                winding += winding_of(row_.pieces[k], p);
            }
            steps_ += piece_steps * (to - from);
        } else {
            visit_pieces(pieces_.levels() - 1, 0, from, to, p, winding);
        }
        depth += winding != 0 ? 1 : 0;
    }

    // Pieces from..to that a ray to the right of p can meet.
    void visit_pieces(std::size_t level, std::size_t i, std::size_t from, std::size_t to, Point p, int& winding) {
        const std::size_t first = i << (2 * level), last = (i + 1) << (2 * level);
        const Box& box = pieces_.box(level, i);
        if (++steps_ > most_steps || last <= from || first >= to || p.y < box.low.y || p.y > box.high.y ||
            p.x > box.high.x) {
            return;
        }
        if (level == 0) {
            steps_ += piece_steps;
            winding += winding_of(row_.pieces[i], p);
            return;
        }
        const std::size_t end = std::min((i + 1) * BoxTree::fan, pieces_.count(level - 1));
        for (std::size_t k = i * BoxTree::fan; k < end; ++k) {
            visit_pieces(level - 1, k, from, to, p, winding);
        }
    }

    const Outline& outline_;
    PieceRow row_;
    BoxTree pieces_;
    BoxTree contours_;
    std::size_t steps_ = 0;
};

} // namespace

namespace {

// Word{}, or why it was given up.
Word find_roles(const Outline& outline, std::vector<Role>& roles) {
    if (outline.contours.empty()) {
        return {};
    }
    Nester nester(outline);
    for (std::uint32_t i = 0; i < outline.contours.size(); ++i) {
        const Contour& c = outline.contours[i];
        const Point p = c.points.empty() ? Point{} : point_at(piece_of(c, 0), 0.5);
        roles.push_back(c.role == Role::open ? Role::open : nester.around(p, i) % 2 == 0 ? Role::outer : Role::inner);
        if (nester.tired()) {
            return words::drawing_fault::too_deep;
        }
    }
    return {};
}

} // namespace

Word nest(Outline& outline) {
    std::vector<Role> roles;
    if (const Word why = find_roles(outline, roles); why != Word{}) {
        return why;
    }
    for (std::size_t i = 0; i < roles.size(); ++i) {
        Contour& c = outline.contours[i];
        c.role = roles[i];
        if (c.role != Role::open && (area_mm2(c) > 0.0) != (c.role == Role::outer)) {
            c = reversed(c);
        }
    }
    return {};
}

void check_nesting(const Outline& outline, std::vector<Problem>& problems) {
    std::vector<Problem> met;
    const bool whole = find_crossings(outline, ReadSettings{}.join_mm, {}, met);
    const bool crosses = std::any_of(met.begin(), met.end(), hinders_cutting);
    std::vector<Role> roles;
    if (!whole || (!crosses && find_roles(outline, roles) != Word{})) {
        report(met, Found::unchecked, {});
        roles.clear();
    }
    for (std::size_t i = 0; i < roles.size(); ++i) {
        const Contour& c = outline.contours[i];
        if (c.role != roles[i]) {
            report(met, Found::inside_out, c.points.front().at);
        }
    }
    for (const Problem& p : met) {
        problems.push_back(p);
    }
}

} // namespace torchside::drawing
