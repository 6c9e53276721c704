// A field of the workbook on the screen: label, value in the user's units, read-back while typing, and the error in words.
#pragma once

#include <string_view>

#include "web/screens/app.hpp"

namespace torchside::web {

/// A number or text field for any path the schema knows, at the top of `place`; returns the height used.
float entry(App& app, Rect place, std::string_view path, std::string_view label);

/// Thickness and current of the job, as the stock sheet shows them. A question ("11/4") is asked back with its answers.
float thickness_entry(App& app, Rect place);
float current_entry(App& app, Rect place);

} // namespace torchside::web
