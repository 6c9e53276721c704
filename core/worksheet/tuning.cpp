#include "core/worksheet/tuning.hpp"

#include "core/quantity/print.hpp"

namespace torchside {

Outcome<tune::Outlook> outlook(const MetalModel& metal, const Workbook& workbook) {
    const cut::CutSetup plate = metal.plate(workbook.job.thickness, workbook.job.current);
    const auto reach = metal.cuts(plate);
    if (!reach) {
        return reach.fault();
    }
    return tune::look(metal.posterior(), plate, workbook.shop.table, reach.value() == cut::Reach::clean);
}

Outcome<Tuning> tuning(const Workbook& workbook, const ShopModel& model) {
    const MetalModel metal{workbook.shop, workbook.job.material, model};
    auto seen = outlook(metal, workbook);
    if (!seen) {
        return seen.fault();
    }
    const double w = metal.posterior().feed.model().window.width;
    const Speed next = seen.value().next;
    return Tuning{std::move(seen.value()), next / (1 + w), next / (1 - w), metal.posterior().notes};
}

Outcome<tune::CutDiagnosis> read_cut(const Workbook& workbook, const SeenCut& seen, const ShopModel& model) {
    const Shop& shop = workbook.shop;
    const MetalModel metal{shop, workbook.job.material, model};
    tune::MadeCut made;
    made.plate = metal.plate(workbook.job.thickness, workbook.job.current);
    made.arc = seen.arc;
    if (seen.feed) {
        made.feed = *seen.feed;
    } else {
        const auto now = outlook(metal, workbook);
        if (!now) {
            return now.fault();
        }
        made.feed = to_dial(now.value().next, shop.table.max_feed, shop.display.units); // as it was asked for
    }
    if (seen.height) {
        made.plate.height = *seen.height;
    }
    if (const Nozzle* nozzle = metal.nozzle(workbook.job.current)) {
        made.nozzle = nozzle->rated;
    }
    return tune::read_cut(seen.signs, seen.measured, made, {shop.machine, shop.height_control, shop.table, shop.tests});
}

} // namespace torchside
