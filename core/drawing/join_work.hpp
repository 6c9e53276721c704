// The work of join.hpp, step by step. Internal to joining.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

#include "core/drawing/join.hpp"
#include "core/drawing/join_points.hpp"
#include "core/part/piece.hpp"

namespace torchside::drawing {

constexpr double exact_gap = 1e-6; // mm: ends this near are each other

class Joiner {
public:
    Joiner(Sketch& sketch, double tolerance, const Progress& progress)
        : sketch_(sketch), tolerance_(tolerance), progress_(progress), points_(tolerance, sketch.vertices.size() + 1) {}
    [[nodiscard]] Word run(Outline& out);
    void weld();

private:
    // An end of a chain: 2 * chain, + 1 for its last point.
    using End = std::uint32_t;
    static End other(End end) { return end ^ 1U; }
    [[nodiscard]] const Chain& chain(End end) const { return chains_[end / 2]; }
    [[nodiscard]] std::uint32_t point_of(End end) const {
        const Chain& c = chain(end);
        return number_[end % 2 == 0 ? c.begin : c.end - 1];
    }
    [[nodiscard]] Piece piece(std::uint32_t vertex, const Chain& c) const;
    [[nodiscard]] Point leaving(End end) const; // direction away from the end, along its chain

    void number_points();
    void close_near();
    [[nodiscard]] double length_up_to_tolerance(const Chain& c) const;
    [[nodiscard]] bool point_like(const Chain& c) const; // one piece whose ends are one point
    void drop_short();
    void drop(const Chain& c, double length);
    void drop_duplicates();
    bool known(std::uint32_t vertex, const Chain& c, KeyTable& table);
    void split(const Chain& c);
    void list_ends();
    void set_aside();
    void pair_ends();
    void pair_straightest(const std::vector<End>& ends);
    [[nodiscard]] End far_end(End end) const;
    void mate(End a, End b) {
        mate_[a] = b;
        mate_[b] = a;
    }
    void append(End from, std::vector<Vertex>& to);
    Point met(Point a, Point b);
    Contour follow(End from, bool round);
    bool trace(Outline& out);
    bool sort_out(Outline& out, std::vector<Contour>& open);
    void found(Found what, Point at, double size = 0.0) { report(sketch_.problems, what, at, size); }

    Sketch& sketch_;
    double tolerance_;
    const Progress& progress_;
    PointIndex points_;
    std::vector<Chain> chains_{};         // open ones to be joined
    std::vector<Chain> closed_{};         // whole as drawn
    std::vector<std::uint32_t> number_{}; // of each vertex' point
    // Of each vertex, for the piece that begins there:
    std::vector<std::uint32_t> twin_{}; // the one before with the same ends
    std::vector<Point> middle_{};
    std::vector<char> twice_{};
    // Of each point and end:
    std::vector<std::uint32_t> first_end_{}; // of each point, in ends_
    std::vector<End> ends_{};
    std::vector<char> aside_{}; // chains that lead nowhere
    std::vector<End> mate_{};
    std::vector<char> done_{};
    std::vector<End> scratch_{};
};

} // namespace torchside::drawing
