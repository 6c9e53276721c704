// What a reader hands to the joiner: chains of pieces in millimetres, in the order drawn; and the pen that draws them.
// Internal to reading.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/drawing/drawing.hpp"
#include "core/drawing/problems.hpp"
#include "core/words/text.hpp"

namespace torchside::drawing {

/// x' = a x + c y + e, y' = b x + d y + f
struct Affine {
    double a = 1.0, b = 0.0, c = 0.0, d = 1.0, e = 0.0, f = 0.0;
    [[nodiscard]] Point operator()(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
    [[nodiscard]] Point direction(Point p) const { return {a * p.x + c * p.y, b * p.x + d * p.y}; }
    [[nodiscard]] Affine operator*(const Affine& first) const; // `first` is done first
    [[nodiscard]] bool keeps_circles() const;
};

struct Chain {
    std::uint32_t begin = 0; // of Sketch::vertices
    std::uint32_t end = 0;
    bool closed = false;
};

struct Sketch {
    std::vector<Vertex> vertices{};
    std::vector<Chain> chains{};
    std::vector<Problem> problems{};
    DrawingCounts counts{};
    DrawingUnit unit = DrawingUnit::mm;
    bool unit_known = false;
};

constexpr double share_of_reading = 0.6; // of the whole work, for progress; then
constexpr double share_of_joining = 0.2; // and the rest is looking for crossings

/// A point of a curve at parameter t.
struct Curve {
    Point (*at)(const void* context, double t) = nullptr;
    const void* context = nullptr;
};

/// Draws one chain at a time. All points are in millimetres. What goes wrong is kept until asked for.
class Pen {
public:
    Pen(Sketch& sketch, double flatten_mm) : sketch_(sketch), flatten_(flatten_mm) {}

    void move_to(Point p); // ends an open chain, if there is one
    void line_to(Point p);
    void arc_to(Point p, double bulge);
    /// From `from` on: centre + u cos t + v sin t, t from t0 over `sweep`. True arcs when u and v are a circle's.
    /// `end`: where it is known to end, nullptr: as computed.
    void conic_to(Point centre, Point u, Point v, double t0, double sweep, const Point* end);
    void curve_to(const Curve& curve, double t0, double t1);
    void close();  // back to the chain's first point
    void finish(); // ends an open chain

    void conic(Point centre, Point u, Point v, double t0, double sweep); // a chain of its own
    void circle(Point centre, Point u, Point v);                         // the whole of it

    [[nodiscard]] Point at() const { return sketch_.vertices.back().at; }
    [[nodiscard]] bool drawing() const { return down_; }
    [[nodiscard]] Word fault() const { return fault_; } // a part of a sentence; Word{}: none

private:
    void flatten(const Curve& curve, double t0, Point p0, double t1, Point p1, int depth);
    Sketch& sketch_;
    double flatten_;
    bool down_ = false;
    std::uint32_t begin_ = 0;
    Word fault_{};
};

} // namespace torchside::drawing
