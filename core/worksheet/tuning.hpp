// What the log has taught about the job's own stock, and the next test cut to make.
//
// What       tune::look() asked for the job's plate with the shop's nozzle, table and log, and a note on every row of
//            the log.
// Edges      a plate that the worksheet refuses, or the energy balance: the Fault of that refusal. No ladder for a
//            plate whose coupon cannot be made because it is not pierced standing still.
// Example    the default shop has no cuts: the outlook of 6 mm mild steel at 45 A offers a ladder; of 12 mm, which is
//            begun at an edge, single tests.
#pragma once

#include <vector>

#include "core/tune/diagnosis.hpp"
#include "core/tune/next_test.hpp"
#include "core/worksheet/metal_model.hpp"

namespace torchside {

struct Tuning {
    tune::Outlook outlook{};
    Speed right_from{};                 // the next cut is clean when the right feed lies between these two:
    Speed right_to{};                   // next / (1 + w) and next / (1 - w), w the half-width of the clean window
    std::vector<tune::RowNote> notes{}; // one a row of shop.tests, in its order
};

/// A cut of the job's stock as it was seen and measured.
struct SeenCut {
    tune::Signs signs{};
    tune::MeasuredCut measured{};
    std::optional<Speed> feed{};    // none: the next test's
    std::optional<Length> height{}; // none: the usual cut height
    std::optional<Voltage> arc{};   // at the torch
    friend bool operator==(const SeenCut&, const SeenCut&) = default;
};

/// The outlook alone. `metal`: the model of the job's metal.
[[nodiscard]] Outcome<tune::Outlook> outlook(const MetalModel& metal, const Workbook& workbook);

/// `model`, here and below: the shop's, where the caller has one.
[[nodiscard]] Outcome<Tuning> tuning(const Workbook& workbook, const ShopModel& model = {});

/// Its cause, the knob to turn, and its row for the log.
[[nodiscard]] Outcome<tune::CutDiagnosis> read_cut(const Workbook& workbook, const SeenCut& seen,
                                                   const ShopModel& model = {});

} // namespace torchside
