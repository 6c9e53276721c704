#include "core/worksheet/hindrance.hpp"

#include <algorithm>

#include "core/drawing/problems.hpp"
#include "core/quantity/in_units.hpp"
#include "core/worksheet/words.hpp"

namespace torchside {

std::optional<Hindrance> hindrance(const Workbook& workbook, const Worksheet& sheet) {
    const PartStage& part = *sheet.part;
    const auto said = [&](const std::string& text) { return in_units(text, workbook.shop.display.units); };
    if (!sheet.settings)
        return Hindrance{words::amps(workbook.job.current) + " does not sever this plate", sheet.capacity.reason};
    if (!part.path.runs.empty())
        return std::nullopt;
    if (part.fault)
        return Hindrance{"the part cannot have these sizes", said(part.fault->text) + '.'};
    const auto stop = std::find_if(part.problems.begin(), part.problems.end(), drawing::hinders_cutting);
    if (stop != part.problems.end())
        return Hindrance{"the drawing must be mended first", said(stop->text)};
    if (part.outline.contours.empty())
        return Hindrance{"nothing is drawn", "Open a drawing, or choose a shape."};
    return Hindrance{"the kerf leaves nothing of this part",
                     part.problems.empty() ? "Every line is closer to another than the kerf is wide."
                                           : said(part.problems.front().text)};
}

} // namespace torchside
