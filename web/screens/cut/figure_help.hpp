// "?" beside a figure: two lines and one drawing, and one touch further the formula and where it is from.
#pragma once

#include <string_view>

#include "core/worksheet/figures.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

/// The figure with its "?", and what that opens.
void figure_with_help(Body& body, const Figure& figure, Label name, std::string_view value);

} // namespace torchside::web
