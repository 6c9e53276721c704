// torchside worksheet: a workbook in, everything there is to know about its job out.
#include "tools/cli/results/worksheet.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

Outcome<std::string> run_worksheet(const Arguments& arguments, const Language& language) {
    const auto words = Words::sort(arguments, 1, {});
    if (!words) {
        return words.fault();
    }
    const auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    return printed(worksheet_json(evaluate(workbook.value()), workbook.value(), language));
}

} // namespace torchside::cli
