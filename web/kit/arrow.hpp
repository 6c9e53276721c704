// Arrow heads: at the end of a line, and along one for the way it is gone.
#pragma once

#include "web/kit/pen.hpp"

namespace torchside::web {

/// A head that ends at `tip`, on a line that comes from `from`.
void arrow_head(const Pen& pen, Point tip, Point from, Colour colour, float length = 9, float half = 4);
/// One in the middle of a row of points, where it is at least so long.
void arrow_along(const Pen& pen, const Point* points, int count, Colour colour, float least);

} // namespace torchside::web
