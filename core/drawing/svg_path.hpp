// The small languages inside SVG attributes: path data, lists of points, transforms, lengths. Internal to reading.
// Each gives Word{}, or what is wrong and what is accepted.
#pragma once

#include <string_view>
#include <vector>

#include "core/drawing/sketch.hpp"

namespace torchside::drawing {

/// d="M0 0 h10 a5 5 0 0 1 ..." : all commands of SVG 1.1, drawn where `place` puts them.
[[nodiscard]] Word draw_path(std::string_view data, const Affine& place, Pen& pen);

/// points="0,0 10,0 10,10": the numbers are added to `out` by pairs.
[[nodiscard]] Word read_points(std::string_view text, std::vector<Point>& out);

/// transform="translate(10) rotate(30, 5, 5)": matrix translate scale rotate skewX skewY, any number of them.
[[nodiscard]] Word read_transform(std::string_view text, Affine& out);

/// viewBox="0 0 100 50": exactly four numbers, the last two above 0.
[[nodiscard]] Word read_view_box(std::string_view text, double (&out)[4]);

/// A length in user units: "10", "10px", "1in", "2.54cm", "25.4mm", "72pt", "6pc", "101.6Q", "50%" of `whole`.
enum class LengthUnit { none, px, mm, cm, inch, point, percent };
struct SvgLength {
    double px = 0.0;
    LengthUnit unit = LengthUnit::none;
};
[[nodiscard]] Word read_length(std::string_view text, double whole, SvgLength& out);

} // namespace torchside::drawing
