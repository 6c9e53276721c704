#include "core/supply/limits.hpp"

#include <algorithm>
#include <cmath>

#include "core/supply/article_630.hpp"

namespace torchside::supply {
namespace {

constexpr double motor_extra = 0.25;      // NEC 430.24: 125 % of the largest motor
constexpr double plug_fits_within = 0.15; // own: 208 V on a 250 V plug, 240 V on a 230 V one

// Safety margin: whoever evaluates again at the advised current must find it within every limit, despite rounding.
constexpr double edge = 1e-12;
constexpr double least_output = 1e-6; // A
constexpr int most_halvings = 120;

struct Largest {
    Current found{};
    Current past{}; // just above it something gives
};

// `within` holds up to some output and never again above it.
template <class Within>
Largest largest_output(Current top, const Within& within) {
    Largest l{Current{least_output, ampere}, top};
    for (int i = 0; i < most_halvings && l.past - l.found > edge / 10 * l.past; ++i) {
        const Current middle = (l.found + l.past) / 2;
        (within(middle) ? l.found : l.past) = middle;
    }
    return l;
}

double run_factor(const Circuit& circuit) {
    return ambient_factor(run_column(circuit), circuit.ambient_c);
}

} // namespace

Rules rules_of(const Input& input) {
    if (input.country == Country::other) {
        return input.circuit.breaker_rule == BreakerRule::ul489 ? Rules::nec : Rules::iec;
    }
    return input.country == Country::us ? Rules::nec : Rules::iec;
}

bool article_630_applies(const Input& input) {
    return input.circuit.dedicated && rules_of(input) == Rules::nec;
}

Column run_column(const Circuit& circuit) {
    return circuit.run_mm2 ? Column::c70 : circuit.marked_75c ? Column::c75 : Column::c60;
}

Current run_ampacity(const Input& input) {
    const Circuit& circuit = input.circuit;
    if (circuit.run_mm2) {
        return run_factor(circuit) * ampacity_mm2(*circuit.run_mm2, input.machine.phases);
    }
    const Ampacity wire = ampacity(circuit.run_awg);
    return run_factor(circuit) * (circuit.marked_75c ? wire.at75 : wire.at60);
}

Current largest_device(const Input& input) {
    const Circuit& circuit = input.circuit;
    const Current carries = run_ampacity(input);
    if (article_630_applies(input)) {
        const DeviceLimit limit = welder_device(carries);
        return limit.permitted ? std::max(limit.limit, *limit.permitted) : limit.limit;
    }
    if (circuit.run_mm2 || rules_of(input) == Rules::iec) {
        return carries;
    }
    const Ampacity wire = ampacity(circuit.run_awg);
    return std::min(carries, circuit.marked_75c ? wire.device75 : wire.device60);
}

std::optional<Current> cord_carries(const Input& input) {
    const Circuit& circuit = input.circuit;
    const int phases = input.machine.phases;
    if (!circuit.cord_mm2 && !circuit.cord_awg) {
        return {};
    }
    return ambient_factor(Column::c60, circuit.ambient_c) *
           (circuit.cord_mm2 ? cord_ampacity_mm2(*circuit.cord_mm2, phases) : cord_ampacity(*circuit.cord_awg, phases));
}

Current motor_share(const Input& input, const Load& load) {
    return rules_of(input) == Rules::nec ? motor_extra * load.motor : Current{};
}

Current run_asked(const Input& input, const Load& load) {
    return (article_630_applies(input) ? load.effective : load.asked) + load.line.other + motor_share(input, load);
}

bool breaker_is_sound(const Input& input) {
    return input.circuit.breaker <= largest_device(input);
}

bool plug_fits_supply(const Circuit& circuit, int phases) {
    if (!circuit.plug) {
        return true;
    }
    const PlugRow& plug = row_of(*circuit.plug);
    return std::abs(circuit.line.in(volt) / plug.volts - 1) <= plug_fits_within && phases == plug.phases;
}

bool plug_fits_breaker(const Input& input) {
    const Circuit& circuit = input.circuit;
    return !circuit.plug || article_630_applies(input) ||
           circuit.breaker.in(ampere) <= row_of(*circuit.plug).breaker_max;
}

std::optional<Cap> first_over(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    if (!load.draw.delivered) {
        return Cap::voltage;
    }
    if (load.breaker.verdict != CircuitVerdict::holds) {
        return Cap::breaker;
    }
    if (!load.generator_within) {
        return Cap::generator;
    }
    if (run_asked(input, load) > run_ampacity(input)) {
        return Cap::run;
    }
    if (const auto cord = cord_carries(input); cord && load.asked > *cord) {
        return Cap::cord;
    }
    if (circuit.plug && load.asked.in(ampere) > row_of(*circuit.plug).amps) {
        return Cap::plug;
    }
    if (load.draw.machine < (1 - line_tolerance) * circuit.line) {
        return Cap::voltage;
    }
    return {};
}

Advised advise(const Input& input) {
    if (!breaker_is_sound(input)) {
        return {{}, Cap::run};
    }
    if (!plug_fits_supply(input.circuit, input.machine.phases) || !plug_fits_breaker(input)) {
        return {{}, Cap::plug};
    }
    const auto over = [&](Current output) { return first_over(input, solve_load(input, output)); };
    if (const auto cap = over(Current{least_output, ampere})) {
        return {{}, *cap};
    }
    const Current top = input.machine.max_current;
    if (!over(top)) {
        return {top, Cap::machine};
    }
    const Largest largest = largest_output(top, [&](Current output) { return !over(output); });
    return {(1 - edge) * largest.found, over(largest.past).value_or(Cap::machine)};
}

Current largest_deliverable(const Input& input) {
    const auto delivers = [&](Current output) {
        return solve_load(input, output).verdict != CircuitVerdict::cannot_deliver;
    };
    const Current least{least_output, ampere};
    return delivers(least) ? largest_output(input.output, delivers).found : Current{};
}

} // namespace torchside::supply
