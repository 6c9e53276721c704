// Circuits given on standard input, one a line, for tests/oracle/circuit_rules.py; no part of the product.
//   country rule line_v breaker_a run_awg run_mm2|0 run_m marked ambient_c plug|-1 cord_awg|0 cord_mm2|0 cord_m other_a
//   motor_hp|0 generator_va|0 dedicated phases efficiency power_factor corrected duty duty_a max_a idle_a i1max_a|0
//   i1eff_a|0 output_a offset_v per_a
// answers: verdict within_s|-1 advised_a|-1 cap run_min run_min_60 run_min_mm2 cord_min cord_min_mm2 (0: none), then each
// check as kind:ok
#include <cstdio>
#include <iostream>

#include "core/supply/assess.hpp"

using namespace torchside;

namespace {

template <class T>
bool given(double v, std::optional<T>& out, T value) {
    if (v > 0) {
        out = value;
    }
    return v > 0;
}

bool read(supply::Input& in) {
    int country, rule, run_awg, marked, plug, cord_awg, dedicated, phases, corrected;
    double line, breaker, run_mm2, run, ambient, cord_mm2, cord, other, hp, va, efficiency, factor, duty, duty_a, max_a,
        idle;
    double i1max, i1eff, output, offset, per_a;
    if (!(std::cin >> country >> rule >> line >> breaker >> run_awg >> run_mm2 >> run >> marked >> ambient >> plug >>
          cord_awg >> cord_mm2 >> cord >> other >> hp >> va >> dedicated >> phases >> efficiency >> factor >>
          corrected >> duty >> duty_a >> max_a >> idle >> i1max >> i1eff >> output >> offset >> per_a)) {
        return false;
    }
    in = {};
    in.country = static_cast<Country>(country);
    supply::Circuit& c = in.circuit;
    c.breaker_rule = static_cast<supply::BreakerRule>(rule);
    c.line = Voltage{line, volt};
    c.breaker = Current{breaker, ampere};
    c.run_awg = run_awg;
    given(run_mm2, c.run_mm2, run_mm2);
    c.run = Length{run, metre};
    c.marked_75c = marked != 0;
    c.ambient_c = ambient;
    if (plug >= 0) {
        c.plug = static_cast<supply::Plug>(plug);
    }
    given(cord_awg, c.cord_awg, cord_awg);
    given(cord_mm2, c.cord_mm2, cord_mm2);
    c.cord = Length{cord, metre};
    c.other_load = Current{other, ampere};
    given(hp, c.compressor_motor_hp, hp);
    given(va, c.generator, ApparentPower{va, volt_ampere});
    c.dedicated = dedicated != 0;
    Machine& m = in.machine;
    m.phases = phases;
    m.efficiency = efficiency;
    m.power_factor = factor;
    m.power_factor_corrected = corrected != 0;
    m.duty_cycle = duty;
    m.duty_current = Current{duty_a, ampere};
    m.max_current = Current{max_a, ampere};
    m.idle_input = Current{idle, ampere};
    given(i1max, m.plate_i1max, Current{i1max, ampere});
    given(i1eff, m.plate_i1eff, Current{i1eff, ampere});
    in.output = Current{output, ampere};
    in.arc = {Voltage{offset, volt}, Resistance{per_a, ohm}};
    return true;
}

} // namespace

int main() {
    supply::Input in;
    while (read(in)) {
        const supply::Report r = assess(in);
        std::printf("%d %.17g %.17g %d %d %d %g %d %g", static_cast<int>(r.verdict),
                    r.trips_within ? r.trips_within->in(second) : -1.0,
                    r.highest_current ? r.highest_current->in(ampere) : -1.0, static_cast<int>(r.capped_by),
                    r.run_min_awg.value_or(0), r.run_min_awg_60c.value_or(0), r.run_min_mm2.value_or(0),
                    r.cord_min_awg.value_or(0), r.cord_min_mm2.value_or(0));
        for (const supply::Check& check : r.checks) {
            std::printf(" %d:%d", static_cast<int>(check.kind), check.ok ? 1 : 0);
        }
        std::puts("");
    }
}
