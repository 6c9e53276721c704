// The job's part: outline, kerf-compensated path and what is wrong with it. The one stage of the worksheet that may be
// long (a drawing of 100 000 pieces), so its result can be handed back.
//
// What       part_stage() builds it; evaluate() takes a PartMemo from its caller, which keeps the last stage and the
//            inputs it was made from, and builds anew only when one of them has changed.
// Edges      a part that cannot be made (a hole outside the plate) has an empty path and a problem that stops; the same
//            worksheet comes with and without a memo. A drawing is compared by its address: it never changes once made.
#pragma once

#include <memory>
#include <vector>

#include "core/part/cut_path.hpp"
#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

struct PartContour {
    part::Role role = part::Role::outer;
    double length_mm = 0.0;
    double area_mm2 = 0.0;
};

struct PartStage {
    part::Outline outline{};               // as drawn
    part::CutPath path{};                  // compensated, in cutting order
    std::vector<PartContour> contours{};   // of the outline, in its order
    std::vector<part::Problem> problems{}; // of the drawing, of compensation and of the checks
    double area_mm2 = 0.0;                 // of the part
    double cut_mm = 0.0;                   // along the path, lead-ins included
    int pierces = 0;                       // standing ones; edge starts are not among them
    part::Point low{}, high{};             // box of the outline
};

/// Kept by who calls evaluate() again and again; starts empty.
struct PartMemo {
    part::PartSpec spec{};
    Length thickness{}, kerf{}, lead_in{}; // what the stage was made from, beside the spec
    std::shared_ptr<const PartStage> stage{};
};

} // namespace torchside
