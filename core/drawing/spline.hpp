// B-splines: a point at a parameter by de Boor's recurrence, and the cubic through given points. Internal to reading.
//
// Source: de Boor, A Practical Guide to Splines (1978), ch. X and IV (from memory).
// Example (also a test): knots 0 0 0 1 1 1, points (0,0) (1,0) (1,1), weights 1, 1/sqrt(2)... is a quarter circle when
// the middle weight is cos 45 deg.
#pragma once

#include <vector>

#include "core/drawing/part_words.hpp"
#include "core/words/text.hpp"

namespace torchside::drawing {

constexpr int highest_degree = 12;

struct Spline {
    int degree = 3;
    std::vector<double> knots{};
    std::vector<Point> points{};
    std::vector<double> weights{}; // empty: all 1
};

/// Word{}, or why it cannot be drawn and what is accepted.
[[nodiscard]] Word spline_fault(const Spline& spline);

/// Only for a spline without fault; t in knots[degree] .. knots[points].
[[nodiscard]] Point spline_at(const Spline& spline, double t);

/// A cubic through points with the parameter of each: value and second derivative.
struct FitCurve {
    std::vector<double> parameters{};
    std::vector<Point> points{};
    std::vector<Point> bends{}; // second derivatives
};

/// Over chord length; natural ends unless a unit tangent is given; `closed`: runs back to the first point smoothly.
[[nodiscard]] FitCurve fit_curve(const std::vector<Point>& through, bool closed, const Point* begin, const Point* end);
[[nodiscard]] Point fit_at(const FitCurve& curve, double t);

} // namespace torchside::drawing
