// What the signs in the picture of the part mean: only those that are in it.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

/// 0 where there is no path.
[[nodiscard]] float path_key_height(const App& app, float room);
void path_key(App& app, Rect place);

} // namespace torchside::web
