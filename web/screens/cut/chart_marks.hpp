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
void footing_mark(const Pen& pen, Colour ink, tune::DominantBasis footing, Point c, float half = 4.5F);
void tested_mark(const Pen& pen, Colour ink, Tested tested, Point c);

/// What the marks mean: behind a "?", but always there for who listens. Returns the height used.
[[nodiscard]] float legend_height(const App& app, float room);
float chart_legend(App& app, Rect place);

/// The map of reach: a thick line where clean cuts end.
void reach_edges(const Pen& pen, const Tokens& t, const Chart& chart, std::size_t row, std::size_t column, Rect cell);
/// A ring where the open job lies between the plates and currents of the chart; `first` is its first cell.
void open_job(App& app, const Chart& chart, Rect first);

} // namespace torchside::web
