// The part of the sizes, live and to scale, over the fields of its shape: the size that is being typed is lit, and a finger
// can take its end.
#pragma once

#include <span>

#include "web/screens/body.hpp"

namespace torchside::web {

/// `sizes`: the fields of the shape, of which one is lit.
void size_picture(Body& body, std::span<const PathLabel> sizes);

} // namespace torchside::web
