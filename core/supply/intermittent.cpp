#include "core/supply/intermittent.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/figure_rows.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/low_voltage.hpp"

namespace torchside::supply {
namespace {

constexpr FigureRow<IntermittentRules> rows[] = {
#include "generated/intermittent.inc"
};
constexpr IntermittentRules rules = figures_of(rows);

double square(double x) {
    return x * x;
}

/// What a point carries with the arc on and off, over its rating.
struct Point {
    double on = 0.0;
    double off = 0.0;
};

/// Lengthens the arc's rest, or shortens the arc, until this point keeps cool. False: nothing helps it.
bool cool(const Point& point, double& arc_s, double& rest_s) {
    if (point.on <= 1.0) {
        return true;
    }
    if (point.off >= 1.0 || point.on > rules.most_multiple) {
        return false;
    }
    const double room = (1 - square(point.off)) / (square(point.on) - square(point.off));
    const double arc = std::min(arc_s, -rules.arc_share * rules.tau_s * std::log1p(-room));
    const double heated = -std::expm1(-arc / rules.tau_s);
    const double rest = -rules.tau_s * std::log1p(-std::min(heated / room, 1 - 1e-12)) - arc;
    rest_s = std::max(rest, rest_s * arc / arc_s);
    arc_s = arc;
    return true;
}

// Smallest breaker first, then the voltage that draws least.
bool is_less(const UsualSupply& a, const UsualSupply& b) {
    return a.breaker_a != b.breaker_a ? a.breaker_a < b.breaker_a : a.line_v > b.line_v;
}

Circuit fed_by(const Circuit& circuit, const UsualSupply& supply) {
    Circuit next = circuit;
    next.line = Voltage{supply.line_v, volt};
    next.breaker = Current{supply.breaker_a, ampere};
    next.breaker_rule = supply.rule;
    next.run_mm2 = supply.run_mm2;
    next.run_awg = supply.run_awg.value_or(next.run_awg);
    next.plug.reset();
    next.other_load = {};
    next.compressor_motor_hp.reset();
    next.generator.reset();
    next.dedicated = false;
    return next;
}

} // namespace

const IntermittentRules& intermittent_rules() {
    return rules;
}

std::optional<Bursts> bursts_at(const Input& input) {
    const Load load = solve_load(input, input.output);
    const Circuit& circuit = input.circuit;
    const bool sound = breaker_is_sound(input) && plug_fits_supply(circuit, input.machine.phases) &&
                       plug_fits_breaker(input) && load.draw.delivered && load.generator_within &&
                       load.draw.machine >= (1 - line_tolerance) * circuit.line;
    if (!sound || !(load.draw.current > Current{}) || !first_over(input, load)) {
        return {};
    }
    const Current idle = std::min(input.machine.idle_input, load.draw.current);
    const Current rest_of_it = load.line.other + motor_share(input, load);
    const auto cord = cord_carries(input);
    std::vector<Point> points{
        {load.total / circuit.breaker, (idle + load.line.other) / circuit.breaker},
        {(load.draw.current + rest_of_it) / run_ampacity(input), (idle + rest_of_it) / run_ampacity(input)}};
    if (cord) {
        points.push_back({load.draw.current / *cord, idle / *cord});
    }
    if (circuit.plug) {
        const Current carries{row_of(*circuit.plug).amps, ampere};
        points.push_back({load.draw.current / carries, idle / carries});
    }
    double arc = duty_period_s;
    double rest = 0.0;
    for (const Point& point : points) {
        if (!std::isfinite(point.on) || !cool(point, arc, rest)) {
            return {};
        }
    }
    rest = std::max(rest, arc * (1 / load.duty - 1));
    if (arc < 1.0) {
        return {}; // nothing that a hand or a program could keep to
    }
    const bool beyond = std::any_of(points.begin() + 1, points.end(), [](const Point& p) { return p.on > 1.0; });
    return Bursts{input.output, Duration{arc, second}, Duration{rest, second}, beyond};
}

std::optional<UsualSupply> supply_for(const Input& input, const Machine& machine) {
    std::optional<UsualSupply> least;
    for (const UsualSupply& supply : all_usual_supplies()) {
        const bool nec = supply.rule == BreakerRule::ul489;
        const bool here = input.country == Country::other || nec == (input.country == Country::us);
        if (!here || supply.phases != machine.phases || (least && is_less(*least, supply))) {
            continue;
        }
        Input next = input;
        next.circuit = fed_by(input.circuit, supply);
        next.machine = machine_on(machine, next.circuit.line);
        const Advised most = advise(next);
        if (most.most && *most.most >= input.output) {
            least = supply;
        }
    }
    return least;
}

} // namespace torchside::supply
