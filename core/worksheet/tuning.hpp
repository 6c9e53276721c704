// What the log has taught about the job's own stock, and the next test cut to make.
//
// What       tune::look() asked for the job's plate with the shop's nozzle, table and log, and a note on every row of
// the log. Edges      a plate that the energy balance refuses: the Fault of that refusal. Example    the default shop
// has no cuts: the outlook of 6 mm mild steel at 45 A offers a ladder.
#pragma once

#include <vector>

#include "core/tune/next_test.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

struct Tuning {
    tune::Outlook outlook{};
    Speed right_from{};                 // the next cut is clean when the right feed lies between these two:
    Speed right_to{};                   // next / (1 + w) and next / (1 - w), w the half-width of the clean window
    std::vector<tune::RowNote> notes{}; // one a row of shop.tests, in its order
};

[[nodiscard]] Outcome<Tuning> tuning(const Workbook& workbook);

} // namespace torchside
