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

} // namespace torchside
