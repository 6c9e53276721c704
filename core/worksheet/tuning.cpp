#include "core/worksheet/tuning.hpp"

#include "core/worksheet/advice.hpp"

namespace torchside {

Outcome<Tuning> tuning(const Workbook& workbook) {
    const Advice advice{workbook.shop, workbook.job.material};
    const cut::Plate plate = advice.plate(workbook.job.thickness, workbook.job.current);
    auto outlook = tune::look(advice.posterior(), plate, workbook.shop.table);
    if (!outlook.ok())
        return outlook.fault();
    const double w = advice.posterior().feed.model().window.width;
    const Speed next = outlook.value().next;
    return Tuning{std::move(outlook.value()), next / (1 + w), next / (1 - w), advice.posterior().notes};
}

Outcome<tune::CutReading> read_cut(const Workbook& workbook, const SeenCut& seen) {
    const Shop& shop = workbook.shop;
    const Advice advice{shop, workbook.job.material};
    tune::MadeCut made;
    made.plate = advice.plate(workbook.job.thickness, workbook.job.current);
    made.arc = seen.arc;
    if (seen.feed) {
        made.feed = *seen.feed;
    } else {
        const auto outlook = tune::look(advice.posterior(), made.plate, shop.table);
        if (!outlook)
            return outlook.fault();
        made.feed = outlook.value().next;
    }
    if (seen.height)
        made.plate.height = *seen.height;
    if (const Nozzle* nozzle = advice.nozzle(workbook.job.current))
        made.nozzle = nozzle->rated;
    return tune::read_cut(seen.signs, seen.measured, made, {shop.machine, shop.height_control, shop.table, shop.tests});
}

} // namespace torchside
