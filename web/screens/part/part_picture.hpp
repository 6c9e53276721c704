// The part to scale: as drawn, the path that the torch follows, where it pierces, where the table cannot hold the feed,
// and where something is wrong. Two fingers, the wheel or the buttons enlarge it; a touch on a contour measures it.
#pragma once

#include "core/part/measure.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

/// Fills the place.
void part_picture(App& app, Rect place);

/// What is known of the contour that was touched.
void contour_words(Body& column);

/// What a contour is called and how large it is: "Outside", "120 × 120 mm".
struct ContourWords {
    std::string name;
    std::string size;
};
[[nodiscard]] ContourWords words_of(const App& app, std::size_t contour);
/// "120 × 80 mm".
[[nodiscard]] std::string across_up(const App& app, const part::Box& box);

} // namespace torchside::web
