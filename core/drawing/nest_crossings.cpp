#include <algorithm>
#include <cmath>

#include "core/drawing/join_points.hpp"
#include "core/drawing/nest.hpp"
#include "core/part/box_tree.hpp"
#include "core/part/meet.hpp"

namespace torchside::drawing {

using part::apart;
using part::Box;
using part::BoxTree;
using part::Crossings;
using part::PieceRow;

namespace {

constexpr double meeting_mm = 1e-6; // nearer is the same place
constexpr std::size_t most_comparisons = 8'000'000;
constexpr std::size_t most_meetings = 2000;
constexpr std::size_t between_news = 1 << 18;

struct Meet {
    std::uint32_t a = 0, b = 0; // contours, a <= b
    Point at{};
    bool overlap = false;
};

// The outline's pieces without those of no length, so that neighbours are next to each other.
PieceRow pieces_of(const Outline& outline) {
    PieceRow row(outline);
    const std::size_t n = row.pieces.size();
    std::size_t kept = 0, first = 0; // first: of the contour
    for (std::size_t i = 0; i < n; ++i) {
        Piece p = row.pieces[i];
        const bool begins = i == 0 || row.contour[i - 1] != row.contour[i];
        first = begins ? kept : first;
        if (kept > first) {
            p.from = row.pieces[kept - 1].to;
        }
        if (norm(p.to - p.from) > meeting_mm) {
            row.pieces[kept] = p;
            row.contour[kept++] = row.contour[i];
        } else if (kept > first) {
            row.pieces[kept - 1].to = p.to;
        }
    }
    row.pieces.resize(kept);
    row.contour.resize(kept);
    return row;
}

std::vector<Box> grown_boxes(const PieceRow& row) {
    std::vector<Box> boxes;
    boxes.reserve(row.pieces.size());
    for (const Piece& p : row.pieces) {
        Box box = box_of_piece(p);
        box.low = box.low - Point{meeting_mm, meeting_mm};
        box.high = box.high + Point{meeting_mm, meeting_mm};
        boxes.push_back(box);
    }
    return boxes;
}

class Finder {
public:
    Finder(const Outline& outline, double tolerance, const Progress& progress)
        : outline_(outline), row_(pieces_of(outline)), tree_(grown_boxes(row_)), tolerance_(tolerance),
          progress_(progress) {}

    /// False: stopped.
    bool run() {
        if (!row_.pieces.empty()) {
            pair(tree_.levels() - 1, 0, 0);
        }
        return !stopped_;
    }
    void tell(std::vector<Problem>& problems) const;

private:
    // All pairs of pieces, one under each of two boxes of a level; i <= j.
    void pair(std::size_t level, std::size_t i, std::size_t j) {
        if (stopped_ || tired_ || (i != j && apart(tree_.box(level, i), tree_.box(level, j)))) {
            return;
        }
        if (++steps_ % between_news == 0) {
            stopped_ = !progress_.go_on(share_of_reading + share_of_joining);
        }
        tired_ = tired_ || steps_ > most_comparisons;
        if (level == 0) {
            if (i != j) {
                compare(i, j);
            }
            return;
        }
        const std::size_t below = tree_.count(level - 1);
        for (std::size_t k = i * BoxTree::fan; k < std::min((i + 1) * BoxTree::fan, below); ++k) {
            for (std::size_t l = std::max(k, j * BoxTree::fan); l < std::min((j + 1) * BoxTree::fan, below); ++l) {
                pair(level - 1, k, l);
            }
        }
    }

    void compare(std::size_t i, std::size_t j) {
        const Crossings m = meet(row_.pieces[i], row_.pieces[j], meeting_mm);
        for (int k = 0; k < m.count; ++k) {
            const Point at = m.found[k].at;
            const std::uint32_t a = row_.contour[i], b = row_.contour[j];
            if (m.overlap || !(joined(i, j, at) || at_open_end(a, at) || at_open_end(b, at))) {
                found_.push_back({std::min(a, b), std::max(a, b), at, m.overlap});
                tired_ = tired_ || found_.size() >= most_meetings;
            }
            if (m.overlap) {
                return; // one is enough
            }
        }
    }

    // Whether the point is where the two pieces are joined, one after the other in their contour.
    [[nodiscard]] bool joined(std::size_t i, std::size_t j, Point p) const {
        const Piece &a = row_.pieces[i], &b = row_.pieces[j];
        if (row_.contour[i] != row_.contour[j]) {
            return false;
        }
        const auto here = [p](Point q) { return norm(q - p) <= 2 * meeting_mm; };
        const bool next = j == i + 1 && here(a.to) && here(b.from);
        return next || (first_and_last(i, j) && here(a.from) && here(b.to));
    }
    [[nodiscard]] bool first_and_last(std::size_t i, std::size_t j) const {
        return (i == 0 || row_.contour[i - 1] != row_.contour[i]) &&
               (j + 1 == row_.pieces.size() || row_.contour[j + 1] != row_.contour[j]);
    }
    [[nodiscard]] bool at_open_end(std::uint32_t contour, Point p) const {
        const Contour& c = outline_.contours[contour];
        return c.role == Role::open &&
               (norm(c.points.front().at - p) <= tolerance_ || norm(c.points.back().at - p) <= tolerance_);
    }

    const Outline& outline_;
    PieceRow row_;
    BoxTree tree_;
    double tolerance_;
    const Progress& progress_;
    std::vector<Meet> found_{};
    std::size_t steps_ = 0;
    bool tired_ = false;
    bool stopped_ = false;
};

// One overlap for two contours, and then no crossings of these two; each crossing once.
void Finder::tell(std::vector<Problem>& problems) const {
    std::vector<Meet> overlaps;
    const auto overlapping = [&](const Meet& f) {
        return std::any_of(overlaps.begin(), overlaps.end(), [&](const Meet& o) { return o.a == f.a && o.b == f.b; });
    };
    for (const Meet& f : found_) {
        if (f.overlap && overlaps.size() < most_of_a_problem && !overlapping(f)) {
            overlaps.push_back(f);
            report(problems, Found::overlap, f.at);
        }
    }
    PointIndex places(tolerance_, found_.size());
    for (const Meet& f : found_) {
        const std::size_t before = places.size();
        if (!f.overlap && !overlapping(f) && places.number(f.at) == before) {
            report(problems, Found::crossing, f.at);
        }
    }
    if (tired_) {
        report(problems, Found::unchecked, found_.empty() ? Point{} : found_.back().at);
    }
}

} // namespace

bool find_crossings(const Outline& outline, double tolerance_mm, const Progress& progress,
                    std::vector<Problem>& problems) {
    Finder finder(outline, tolerance_mm, progress);
    if (!finder.run()) {
        return false;
    }
    finder.tell(problems);
    return true;
}

} // namespace torchside::drawing
