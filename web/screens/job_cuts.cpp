#include "web/screens/job_cuts.hpp"

#include "core/worksheet/set_wear.hpp"

namespace torchside::web {

bool is_stock(const tune::TestCut& cut, Metal material, Length thickness, Current current) {
    const double dt = cut.thickness.in(mm)-thickness.in(mm);
    const double di = cut.current.in(ampere)-current.in(ampere);
    return cut.material == material && dt * dt < 0.0025 && di * di < 0.25;
}

bool is_job_stock(const Workbook& book, const tune::TestCut& cut) {
    return is_stock(cut, book.job.material, book.job.thickness, book.job.current);
}

tune::TestCut cut_of_job(const Workbook& book, Speed feed) {
    tune::TestCut cut;
    cut.material = book.job.material;
    cut.thickness = book.job.thickness;
    cut.current = book.job.current;
    cut.cut_height = book.shop.height_control.cut_height;
    cut.feed = feed;
    cut.starts = starts_now(book.shop);
    return cut;
}

std::vector<const tune::TestCut*> cuts_of_job(const Workbook& book) {
    std::vector<const tune::TestCut*> cuts;
    for (const tune::TestCut& cut : book.shop.tests) {
        if (is_job_stock(book, cut)) {
            cuts.push_back(&cut);
        }
    }
    return cuts;
}

} // namespace torchside::web
