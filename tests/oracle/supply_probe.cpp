// Solves circuits given on standard input, one a line, for tests/oracle/supply_line.py; no part of the product.
//   line_v phases run_awg run_m cord_awg|0 cord_m other_a share offset_v per_a output_a breaker_a
// answers: delivered input_a outlet_v machine_v largest_a|-1
#include <cstdio>

#include "core/supply/assess.hpp"

using namespace torchside;

int main() {
    double line, run, cord, other, share, offset, per_a, output, breaker;
    int phases, run_awg, cord_awg;
    while (std::scanf("%lf %d %d %lf %d %lf %lf %lf %lf %lf %lf %lf", &line, &phases, &run_awg, &run, &cord_awg, &cord,
                      &other, &share, &offset, &per_a, &output, &breaker) == 12) {
        supply::Input input;
        input.circuit.line = Voltage{line, volt};
        input.circuit.breaker = Current{breaker, ampere};
        input.circuit.run_awg = run_awg;
        input.circuit.run = Length{run, metre};
        if (cord_awg > 0) {
            input.circuit.cord_awg = cord_awg;
        }
        input.circuit.cord = Length{cord, metre};
        input.circuit.other_load = Current{other, ampere};
        input.machine.phases = phases;
        input.machine.efficiency = share;
        input.machine.power_factor = 1.0;
        input.machine.max_current = Current{1e9, ampere};
        input.output = Current{output, ampere};
        input.arc = {Voltage{offset, volt}, Resistance{per_a, ohm}};
        const supply::Report report = assess(input);
        const double outlet = line * (1 - report.run_drop_share);
        std::printf("%d %.17g %.17g %.17g %.17g\n", report.verdict != supply::CircuitVerdict::cannot_deliver,
                    report.input.in(ampere), outlet, report.machine.in(volt),
                    report.largest_deliverable ? report.largest_deliverable->in(ampere) : -1.0);
    }
}
