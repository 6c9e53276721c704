// The job's part: outline, kerf-compensated path and what is wrong with it. The one stage of the worksheet that may be
// long (a drawing of 100 000 pieces), so its result can be handed back.
//
// What       part_stage() builds it; evaluate() takes a PartMemo from its caller, which keeps the last stage and what
//            it was made from, and builds anew only when some of that has changed.
// Formula    outline by its sizes (core/part/shapes.hpp) or from the drawing; path by core/part/compensate.hpp with the
//            kerf and lead-in of the settings; the part's checks (core/part/checks.hpp).
// Edges      Sizes that make no part: no outline, `fault` says which and why. A refused plate has no kerf: outline
//            without a path. So does a drawing whose lines cross or run over each other, or whose holes are outside of
//            it (core/drawing/nest.hpp): nothing can be said of it but where that is. A drawing is compared by its
//            address: it never changes once made. The same worksheet comes with and without a memo.
// Example    120 x 120 mm plate with four 13 mm holes: 14400 - 530.93 = 13869.07 mm2, 480 + 163.36 = 643.36 mm to cut,
//            5 pierces.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/cut/settings.hpp"
#include "core/part/cut_path.hpp"
#include "core/part/outline.hpp"
#include "core/part/sheet.hpp"
#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

struct PartContour {
    part::Role role = part::Role::outer;
    std::size_t source = 0; // the contour as drawn that it is, or comes from
    double length_mm = 0.0;
    double area_mm2 = 0.0; // what it encloses
};

struct PartStage {
    part::Outline outline{};                // as drawn
    part::CutPath path{};                   // compensated, in cutting order
    std::vector<PartContour> contours{};    // of the outline, in its order
    std::vector<PartContour> compensated{}; // where the torch's middle goes, leads apart
    std::vector<part::Problem> problems{};  // of compensation, of the checks, and of the drawing when it was read
    std::optional<Fault> fault{};           // sizes that make no part
    double area_mm2 = 0.0;                  // of the part; 0 when it has none or lines cross
    double cut_mm = 0.0;                    // of the outline; the path's own length is in the time
    int pierces = 0;                        // standing ones; edge starts are not among them
    part::Point low{}, high{};              // box of the outline
    part::SheetFit sheet{};                 // how many come out of a sheet; count 0 when none does
};

/// All that a stage depends on.
struct PartInputs {
    part::PartSpec spec{};
    Length thickness{}, kerf{}, lead_in{};
    bool cuts = false; // there are settings: a path is wanted
    bool edge_start = false;
    bool clockwise_swirl = true;
    part::StockSheet sheet{};
    Metal metal = Metal::mild_steel;
    double open_share = 0.0; // of the plate

    friend bool operator==(const PartInputs&, const PartInputs&) = default;
};

[[nodiscard]] PartInputs part_inputs(const Workbook& workbook, const std::optional<cut::Settings>& settings,
                                     cut::Reach reach, double open_share = 0.0);

[[nodiscard]] PartStage part_stage(const PartInputs& inputs);

/// Kept by who calls evaluate() again and again; starts empty.
struct PartMemo {
    PartInputs inputs{};
    std::shared_ptr<const PartStage> stage{};
};

/// The memo's stage when it was made from the same inputs; otherwise a new one, which the memo then holds.
[[nodiscard]] std::shared_ptr<const PartStage> part_stage(const PartInputs& inputs, PartMemo* memo);

} // namespace torchside
