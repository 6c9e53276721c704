// torchside chart: every thickness against every current of a shop.
#include "core/worksheet/chart.hpp"

#include "tools/cli/command.hpp"
#include "tools/cli/results/chart.hpp"

namespace torchside::cli {

Outcome<std::string> run_chart(const Arguments& arguments, const Language&) {
    const auto words = Words::sort(arguments, 1, {"--material", "--units", "--format"});
    if (!words) {
        return words.fault();
    }
    const auto metal = words.value().material();
    const auto units = words.value().choice("--units", {"metric", "inch"}, std::size_t{2}); // 2: the workbook's own
    const auto format = words.value().choice("--format", {"csv", "json"}, std::size_t{0});
    if (!metal) {
        return metal.fault();
    }
    for (const auto* choice : {&units, &format}) {
        if (!*choice) {
            return choice->fault();
        }
    }
    const auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    const Shop& shop = workbook.value().shop;
    const UnitSystem system = units.value() == 2 ? shop.display.units : static_cast<UnitSystem>(units.value());
    const Chart made = chart(shop, metal.value(), system);
    return format.value() == 0 ? chart_csv(made, system) : printed(chart_json(made, system));
}

} // namespace torchside::cli
