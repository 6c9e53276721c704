// The answer: Workbook in, Worksheet out. The one entry that runs every calculation and collects the warnings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/air/report.hpp"
#include "core/cut/settings.hpp"
#include "core/safety/report.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/report.hpp"
#include "core/tune/posterior.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

enum class Severity { note, caution, stop };

struct Warning {
    std::string code; // a short stable word, e.g. "plate_refused"
    Severity severity = Severity::note;
    std::string field; // the workbook key it is about, e.g. "job.thickness_mm"
    std::string text;  // one sentence fit for the screen
};

struct Worksheet {
    std::optional<cut::Settings> settings{}; // none when the plate is refused; the reason is in capacity and warnings
    cut::Capacity capacity{};
    std::optional<cut::ByHand> by_hand{}; // none when the plate is refused
    std::optional<tune::Trail> trail{};   // what moved the feed; none when the plate is refused
    supply::TapReport tap{};              // what the height control's input gets
    supply::Report circuit{};
    air::Report air{};
    safety::Report safety{};
    std::vector<Warning> warnings{}; // worst first
};

/// Total: every workbook whose fields are in range has a worksheet.
[[nodiscard]] Worksheet evaluate(const Workbook& workbook);

} // namespace torchside
