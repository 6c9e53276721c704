#include "core/worksheet/hindrance.hpp"

#include <algorithm>

#include "core/drawing/problems.hpp"
#include "generated/words/part.hpp"
#include "generated/words/reach.hpp"

namespace torchside {

std::optional<Hindrance> hindrance(const Workbook& workbook, const Worksheet& worksheet) {
    const PartStage& part = *worksheet.part;
    if (!worksheet.settings) {
        return Hindrance{words::reach::Refused{.current = workbook.job.current}, worksheet.capacity.reason};
    }
    if (!part.path.runs.empty()) {
        return std::nullopt;
    }
    if (part.fault) {
        return Hindrance{words::part::sizes_impossible, part.fault->told()};
    }
    const auto stop = std::find_if(part.problems.begin(), part.problems.end(), drawing::hinders_cutting);
    if (stop != part.problems.end()) {
        return Hindrance{words::part::fix_drawing, stop->title};
    }
    if (part.outline.contours.empty()) {
        return Hindrance{words::part::nothing_drawn, words::part::nothing_drawn_do};
    }
    return Hindrance{words::part::nothing_left,
                     part.problems.empty() ? Text{words::part::nothing_left_why} : Text{part.problems.front().title}};
}

} // namespace torchside
