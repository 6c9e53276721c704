// torchside tune: what the test cuts say about the job's stock, and the next test to cut.
#include "core/document/tune_file.hpp"
#include "core/worksheet/advice.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

Outcome<std::string> run_tune(const Arguments& arguments) {
    const auto words = Words::sort(arguments, 1, {});
    if (!words) {
        return words.fault();
    }
    const auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    const Shop& shop = workbook.value().shop;
    const Job& job = workbook.value().job;
    const tune::Posterior posterior = tune::learn(shop.tests, shop.machine, shop.height_control.gradient);
    const cut::Plate plate = Advice(shop, job.material).plate(job.thickness, job.current);
    const auto outlook = tune::look(posterior, plate, shop.table);
    if (!outlook) {
        return outlook.fault();
    }
    return document::write_tune(posterior, tune::trail(posterior, plate), outlook.value(), job);
}

} // namespace torchside::cli
