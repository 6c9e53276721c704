// What a cell of the chart rests on, and whether it was cut: as marks, as words, and as classes of the printed page.
#pragma once

#include <string>

#include "core/worksheet/chart.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// Whose cuts they are: the example's are nobody's.
struct Whose {
    Word cuts;
    Word tested[3]; // in the order of Tested
    Word here;      // in the key
};
[[nodiscard]] const Whose& whose(const App& app);

[[nodiscard]] std::string about_cell(const App& app, const std::string& range, tune::DominantBasis footing,
                                     Tested tested, cut::Reach reach);
/// What the style sheet of the printed page draws into the cell.
[[nodiscard]] std::string paper_marks(tune::DominantBasis footing, Tested tested, cut::Reach reach);

/// A square that fills up: empty, half, full. Told apart without colour, and on a photocopy.
void footing_mark(const Pen& pen, Colour ink, tune::DominantBasis footing, Point c);
void tested_mark(const Pen& pen, Colour ink, Tested tested, Point c);

/// The marks with their words, in as many lines as they need; returns the height used.
float chart_key(const App& app, Point at, float room, bool draw);

} // namespace torchside::web
