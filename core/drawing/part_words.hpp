// The part's own words, as the readers use them. Internal to reading.
#pragma once

#include "core/part/outline.hpp"
#include "core/part/piece.hpp"

namespace torchside::drawing {

using part::Arc;
using part::Contour;
using part::Outline;
using part::Piece;
using part::Point;
using part::Problem;
using part::Role;
using part::Vertex;

} // namespace torchside::drawing
