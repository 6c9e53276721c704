// torchside tune: what the test cuts say about the job's stock, and the next test to cut.
#include "core/worksheet/tuning.hpp"

#include "tools/cli/command.hpp"
#include "tools/cli/results/tune.hpp"

namespace torchside::cli {

Outcome<std::string> run_tune(const Arguments& arguments, const Language& language) {
    const auto words = Words::sort(arguments, 1, {});
    if (!words) {
        return words.fault();
    }
    const auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    const Job& job = workbook.value().job;
    const MetalModel metal(workbook.value().shop, job.material);
    const auto seen = outlook(metal, workbook.value());
    if (!seen) {
        return seen.fault();
    }
    const tune::Trail trail = metal.trail(metal.plate(job.thickness, job.current));
    const Speech speech(language, workbook.value().shop.display.units);
    return printed(tune_json(metal.posterior(), trail, seen.value(), job, speech));
}

} // namespace torchside::cli
