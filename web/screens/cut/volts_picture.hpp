// What the volts say of the torch: too low, right, too high, side by side, with the one that was read marked.
#pragma once

#include <optional>

#include "core/supply/arc_check.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

/// `check`: of the reading, when there is one that can be.
void volts_picture(Body& body, const std::optional<supply::ArcCheck>& check);

} // namespace torchside::web
