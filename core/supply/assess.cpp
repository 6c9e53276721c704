#include "core/supply/assess.hpp"

#include <algorithm>

#include "core/supply/chain.hpp"
#include "core/supply/checks.hpp"
#include "core/supply/limits.hpp"
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
        report.largest_deliverable = largest_deliverable(input);
    } else {
        report.trips_within = load.breaker.within;
        report.trips_within_interpolated = load.breaker.interpolated;
        report.trips_not_before = load.breaker.not_before;
    }
    const Advised advised = advise(input);
    report.highest_current = advised.most;
    report.capped_by = advised.cap;
    report.highest_is_machine_limit = advised.most && advised.cap == Cap::machine;
    report.highest_below_machine = advised.most && *advised.most < input.machine.min_current;
}

void add_least(Report& report, const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    const int phases = input.machine.phases;
    const auto factor = [&](Column column) { return ambient_factor(column, circuit.ambient_c); };
    report.by_section = circuit.run_mm2 || rules_of(input) == Rules::iec;
    report.cord_min_awg = least_cord(load.asked, phases, factor(Column::c60));
    report.cord_min_mm2 = least_cord_mm2(load.asked, phases, factor(Column::c60));
    Current carries = run_asked(input, load);
    const auto least = [&](Column column) {
        return article_630_applies(input) ? least_run_for(carries, column, factor(column))
                                          : least_run(circuit.breaker, carries, column, factor(column));
    };
    if (article_630_applies(input)) {
        carries = std::max({carries, welder_run_size(input, load), circuit.breaker / 2});
    }
    report.run_min_awg = least(Column::c75);
    report.run_min_awg_60c = least(Column::c60);
    if (circuit.run_mm2) {
        report.run_min_mm2 = least_run_mm2(article_630_applies(input) ? carries : std::max(circuit.breaker, carries),
                                           phases, factor(Column::c70));
    }
    if (load.draw.delivered) {
        report.generator_min = load.source / generator_loading;
    }
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
    report.message = message_of(input, load, report);
    report.guard = guard_of(input);
    report.basis = basis_of(input, load);
    return report;
}

} // namespace torchside::supply
