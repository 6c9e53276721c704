// The height at which the faces of a cut come out square, from legs cut at several heights.
//
// What       A higher torch tapers the faces more. Each leg that was looked at or measured is one reading of the taper
//            at its height; the height sought is where the taper is nought.
// Formula    theta(h) = a + b (h - h0), h0 the mean of the legs' heights; Bayesian straight line (gaussian.hpp) with
//            a ~ N(0, 5 deg), b ~ N(1.5, 1 deg/mm). height = h0 - a/b at the line's means. low..high holds every h with
//            |theta(h)| <= 1.28 sd(theta(h)): the 80 % band of Fieller (1954), the ends of a quadratic.
//            A leg whose faces look square lies evenly within 1 deg of it: reads 0 deg, sd 1/sqrt 3; one whose slot was
//            measured reads atan((w_top - w_bottom) / 2t), sd atan(0.1 mm sqrt 2 / 2t).
// Source     sign of b: from memory; b, its sd and the sds: priors (assets/data/tune_rules.json). Fieller: textbook,
// from
//            memory.
// Range      1..9 legs at 0.5..12 mm. The feed must be right first: it tapers faces too, and alike on every leg.
// Edges      Legs that do not tell heights apart (all alike, or tapering the wrong way) bound nothing: none comes back.
//            The height may lie outside the legs: the line says where, the caller what to make of it.
// Example    Legs at 0.9 and 2.1 mm in 6 mm plate that measure 1.45/1.55 and 1.75/1.45 mm: theta -0.477 and 1.432 deg;
//            a 0.473, b 1.556; square at 1.196 mm, 0.585 to 1.590. One leg at 1.2 mm that looks square: 0.26 to 2.14.
#pragma once

#include <optional>
#include <span>

#include "core/quantity/quantity.hpp"

namespace torchside::tune {

/// The taper of one leg; degrees, positive: kerf wider at the top.
struct TaperAt {
    Length height{};
    double angle_deg = 0.0;
    double sd_deg = 0.0;
};

/// Of a leg whose faces look square.
[[nodiscard]] TaperAt looks_square(Length height);
/// Of a leg whose slot was measured at the top and the bottom edge.
[[nodiscard]] TaperAt measured_taper(Length height, Length kerf_top, Length kerf_bottom, Length thickness);

struct SquareHeight {
    Length height{};
    Length low{}; // 80 % band
    Length high{};
    double deg_per_mm = 0.0; // what a millimetre of height does here
};
[[nodiscard]] std::optional<SquareHeight> square_height(std::span<const TaperAt> legs);

} // namespace torchside::tune
