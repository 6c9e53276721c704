// How many of a part come out of a sheet, how much of it they use, and what is left.
//
// What       Rows of parts, tried in both orientations and along both sides of the sheet: all one way round, or every
//            second one turned by half a turn, which closes up triangles and angles. In a row parts stand as close as
//            their shapes allow, rows as close as their boxes do. The fullest is taken, of equals the plainest.
// Formula    pitch     max over y of (right edge of a part grown by the spacing - left edge of the next), in 512 bands:
//                      the outermost of each band counts, so that parts never come closer than the spacing
//            use       count x area of the part / area of the sheet
//            drop      sheet - count x part: frame, offcuts, what falls out of holes, and the kerf's dust
// Source     own method
// Range      sheets of 10 to 20 000 mm a side; margin and spacing 0 to 1000 mm. Places of the first 20 000 parts are
//            given.
// Edges      a part that does not fit: count 0. A Fault names a size out of range; an outline without outer
//            contour is one. Left-over strips are not filled with parts turned otherwise: a sheet often holds a few
//            more.
// Example    2500 x 1250 mm, margin 10, spacing 10, part 100 x 50: rows of 22 (of 2480 + 10) 110 mm apart by 20 of 60
//            mm: 440, or turned 41 by 11 = 451: turned, 72.2 % of the sheet.
#pragma once

#include <vector>

#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"
#include "core/stock/metal.hpp"
#include "core/words/outcome.hpp"

namespace torchside::part {

struct Sheet {
    Length width{2500, mm};
    Length height{1250, mm};
    Length margin{10, mm};  // free at the sheet's edges
    Length spacing{10, mm}; // between parts, as drawn: room for two half kerfs and a lead
    Length thickness{6, mm};
    Metal metal = Metal::mild_steel;
    double open_share = 0.0; // of the sheet's area, when it has openings
};

/// A part as drawn, turned anticlockwise by quarter turns and moved so that its box's lower left corner is at `at`.
struct Placed {
    Point at{};
    int quarter_turns = 0;
};

struct SheetFit {
    int count = 0;
    std::vector<Placed> places{};
    bool turned = false;    // the first part stands on its side
    bool alternate = false; // every second one by half a turn
    double use = 0.0;       // share of the sheet that becomes parts
    Mass part{};
    Mass sheet{};
    Mass drop{};
};

[[nodiscard]] Outcome<SheetFit> fit_sheet(const Outline& part, const Sheet& sheet);

/// The outline turned and moved as a place says.
[[nodiscard]] Outline placed(const Outline& part, const Placed& place);

} // namespace torchside::part
