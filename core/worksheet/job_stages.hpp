// From the part on: its time, what it wears, what it costs. Internal to core/worksheet, but for part_load().
#pragma once

#include "core/wear/assess.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {

/// What the job's plate has of gaps: counted by the user, or worked out from the sizes of its openings.
[[nodiscard]] Gaps gaps_of(const Job& job);

/// Fills mass, time, wear and price of a sheet whose settings, circuit and part are there. `arc` is the arc's voltage.
void fill_job(const Workbook& workbook, const Estimate<Voltage>& arc, Worksheet& worksheet);

/// What one part of the job does to the consumables; nothing when there is no path.
[[nodiscard]] wear::Load part_load(const Job& job, const Worksheet& worksheet);

} // namespace torchside
