#include "core/supply/assess.hpp"

#include <algorithm>

#include "core/supply/article_630.hpp"
#include "core/supply/chain.hpp"
#include "core/supply/checks.hpp"
#include "core/supply/conductor.hpp"
#include "core/supply/load.hpp"
#include "core/supply/sentences.hpp"

namespace torchside::supply {
namespace {

void add_power(Report& report, const Input& input, const Load& load) {
    const Voltage line = input.circuit.line;
    report.input = load.draw.current;
    report.input_at_rated_load = load.rated;
    report.effective = load.effective;
    report.effective_from_plate = load.effective_from_plate;
    report.other = load.line.other;
    report.machine = load.draw.machine;
    report.drop_share = (line - load.draw.machine) / line;
    report.run_drop_share = (line - load.draw.outlet) / line;
    report.load_ratio = load.total / input.circuit.breaker;
    report.duty = load.duty;
    report.arc_per_10_min = Duration{duty_period_s * load.duty, second};
    report.duty_note = duty_note_of(load);
    report.power_basis = load.conversion.basis;
}

void add_verdict(Report& report, const Input& input, const Load& load) {
    report.verdict = load.verdict;
    report.band = breaker_band(input.circuit.breaker_rule, input.circuit.breaker, load.total);
    if (load.verdict == CircuitVerdict::cannot_deliver) {
        report.largest_deliverable = largest_deliverable(input, load);
    } else {
        report.trips_within = load.breaker.within;
        report.trips_within_interpolated = load.breaker.interpolated;
    }
    const std::optional<Current> highest = highest_holding(input, load);
    if (!highest)
        return;
    report.highest_current = std::min(*highest, input.machine.max_current);
    report.highest_is_machine_limit = *highest >= input.machine.max_current;
    report.highest_below_machine = *highest < input.machine.min_current;
}

void add_least(Report& report, const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    report.cord_min_awg = least_cord(load.asked, input.machine.phases);
    if (article_630_applies(circuit)) {
        const Current needed = std::max(welder_run_needs(input, load), circuit.breaker / 2);
        report.run_min_awg = least_run_for(needed, Column::c75);
        report.run_min_awg_60c = least_run_for(needed, Column::c60);
        if (circuit.run_mm2)
            report.run_min_mm2 = least_run_mm2(needed);
    } else {
        report.run_min_awg = least_run(circuit.breaker, load.asked + load.line.other, Column::c75);
        report.run_min_awg_60c = least_run(circuit.breaker, load.asked + load.line.other, Column::c60);
        if (circuit.run_mm2)
            report.run_min_mm2 = least_run_mm2(std::max(circuit.breaker, load.asked + load.line.other));
    }
    if (load.draw.delivered)
        report.generator_min = load.source / generator_loading;
}

} // namespace

Report assess(const Input& input) {
    const Load load = solve_load(input, input.output);
    Report report;
    add_power(report, input, load);
    add_verdict(report, input, load);
    add_least(report, input, load);
    report.checks = checks_of(input, load, report);
    report.chain = chain_of(input, load);
    report.summary = summary_of(input, load);
    report.way_out = way_out_of(input, load, report);
    report.basis = basis_of(input, load);
    return report;
}

} // namespace torchside::supply
