// How long the page is busy after a letter typed into Thickness with 64 cuts in the log, by the model that the app keeps.
#include "core/worksheet/chart.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/bench/bench.hpp"
#include "tests/bench/log.hpp"

using namespace torchside;

int main() {
    bench::Bench bench;
    Workbook workbook;
    workbook.shop.tests = bench::everyday(64);
    const Shop& shop = workbook.shop;
    const Metal metal = workbook.job.material;
    ShopModel model(shop);
    PartMemo memo;
    const ChartInputs inputs = chart_inputs(shop, metal, model);
    double kept = 0.0; // charts that needed no new one
    const auto type = [&] {
        const bool six = workbook.job.thickness == Length{6, mm};
        workbook.job.thickness = Length{six ? 8.0 : 6.0, mm};
        model = model.fitted_to(shop);
        return evaluate(workbook, &memo, model).settings->feed.value.in(mm_min);
    };
    const auto next_test = [&] { return tuning(workbook, model).value().outlook.next_clean; };
    bench.at_most("Cut: the worksheet and the chart", 1.0, [&] {
        kept += inputs == chart_inputs(shop, metal, model) ? 1.0 : 0.0;
        return type() + kept;
    });
    bench.at_most("Tune: the next test as well", 1.2, [&] { return type() + next_test(); });
    bench.at_most("a new row in the log: the fit as well", 3.0, [&] {
        workbook.shop.tests.back().worn = !workbook.shop.tests.back().worn;
        return type() + next_test();
    });
    bench.at_most("a new row in the log: the chart anew", 10.0,
                  [&] { return chart(shop, metal, model).cells[0].settings->feed.value.in(mm_min); });
    return bench.done();
}
