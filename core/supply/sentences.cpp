#include "core/supply/sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "core/supply/limits.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/circuit_more.hpp"

namespace torchside::supply {
namespace {

constexpr double low_line_v = 150; // a 120 V class outlet
constexpr double rated_air_c = 40;

// Down to a tenth: a highest current rounded up would not hold.
Current floor_tenth(Current current) {
    return Current{std::floor(current.in(ampere)*10) / 10, ampere};
}

Text load_on_breaker(const Input& input, const Load& load) {
    if (load.line.other > Current{}) {
        return words::circuit::LoadShared{
            .breaker = input.circuit.breaker, .load = load.total, .other = load.line.other};
    }
    return words::circuit::Load{.breaker = input.circuit.breaker, .load = load.total};
}

Word elsewhere(const Input& input) {
    if (input.circuit.line.in(volt) < low_line_v) {
        return words::circuit::outlet_240;
    }
    return input.circuit.generator ? words::circuit::larger_generator : words::circuit::larger_circuit;
}

// All limits are kept; what is not as the notes would have it.
Text remaining(const std::vector<Check>& checks) {
    for (const Check& check : checks) {
        if (!check.ok) {
            Text text = check.message.detail;
            return text += check.message.remedy;
        }
    }
    return {};
}

const Check* stopped_by(const Report& report) {
    for (const Check& check : report.checks) {
        if (!check.ok && check.message.severity == Severity::stop) {
            return &check;
        }
    }
    return nullptr;
}

Text at_most(Current most, Cap cap) {
    switch (cap) {
    case Cap::run:
        return words::circuit::MostRun{.most = most};
    case Cap::cord:
        return words::circuit::MostCord{.most = most};
    case Cap::plug:
        return words::circuit::MostPlug{.most = most};
    case Cap::generator:
        return words::circuit::MostGenerator{.most = most};
    case Cap::voltage:
        return words::circuit::MostVoltage{.most = most};
    default:
        return words::circuit::MostBreaker{.most = most};
    }
}

Text none_holds(const Input& input, const Load& load, const Report& report) {
    if (!breaker_is_sound(input)) {
        return words::circuit::first_breaker;
    }
    if (report.capped_by == Cap::plug) {
        return words::circuit::first_plug;
    }
    if (load.line.other > Current{}) {
        return words::circuit::other_takes_all;
    }
    return words::circuit::NothingHolds{.elsewhere = elsewhere(input)};
}

Text remedy_of(const Input& input, const Load& load, const Report& report) {
    if (!report.highest_current) {
        return none_holds(input, load, report);
    }
    if (!first_over(input, load)) {
        return remaining(report.checks);
    }
    const bool other = load.line.other > Current{};
    const Current most = floor_tenth(*report.highest_current);
    const Current least = input.machine.min_current;
    if (report.highest_below_machine && other) {
        return words::circuit::BelowMachineShared{.elsewhere = elsewhere(input), .least = least, .most = most};
    }
    if (report.highest_below_machine) {
        return words::circuit::BelowMachine{.elsewhere = elsewhere(input), .least = least, .most = most};
    }
    Text text = at_most(most, report.capped_by);
    if (other) {
        return text += words::circuit::or_move_other;
    }
    if (report.capped_by == Cap::cord) {
        return text += words::circuit::or_cord;
    }
    if (report.capped_by == Cap::plug) {
        return text += words::circuit::or_plug;
    }
    return text += words::circuit::OrElsewhere{.elsewhere = elsewhere(input)};
}

struct Named {
    std::string_view code;
    Severity severity;
    const char* field;
};

Named name_of(CircuitVerdict verdict) {
    switch (verdict) {
    case CircuitVerdict::holds:
        break;
    case CircuitVerdict::may_trip:
        return {"circuit_may_trip", Severity::caution, "shop.circuit.breaker_a"};
    case CircuitVerdict::trips_within_hour:
        return {"circuit_trips", Severity::caution, "shop.circuit.breaker_a"};
    case CircuitVerdict::trips_soon:
        return {"circuit_trips_soon", Severity::stop, "shop.circuit.breaker_a"};
    case CircuitVerdict::cannot_deliver:
        return {"circuit_cannot_deliver", Severity::stop, "shop.circuit.line_v"};
    }
    return {"circuit_holds", Severity::note, "shop.circuit.breaker_a"};
}

void describe(const Input& input, const Load& load, const Report& report, Message& out) {
    if (load.generator_short && load.verdict == CircuitVerdict::cannot_deliver) {
        out.title = words::circuit::generator_small;
        out.detail = words::circuit::GeneratorAsked{.load = load.source, .rating = *input.circuit.generator};
        return;
    }
    if (load.verdict == CircuitVerdict::cannot_deliver) {
        out.title = words::circuit::CannotDeliver{.output = input.output};
        out.detail = words::circuit::wires_take;
        return;
    }
    if (load.generator_short) {
        out.title = words::circuit::generator_past;
        out.detail = words::circuit::GeneratorLoad{.load = load.source, .rating = *input.circuit.generator};
        return;
    }
    // The breaker will not end it: what is overloaded comes first.
    if (const Check* stop = stopped_by(report); stop && load.verdict <= CircuitVerdict::may_trip) {
        out.title = stop->message.title;
        out.detail = stop->message.detail;
        out.detail += stop->message.remedy;
        return;
    }
    out.detail = load_on_breaker(input, load);
    if (load.verdict == CircuitVerdict::holds) {
        out.title = words::circuit::holds;
    } else if (load.verdict == CircuitVerdict::may_trip) {
        out.title = words::circuit::may_trip;
        out.detail += words::circuit::no_time;
    } else {
        out.title = words::circuit::Trips{.time = *load.breaker.within};
    }
}

Word power_basis(const Load& load) {
    switch (load.conversion.basis) {
    case PowerBasis::nameplate:
        return words::circuit_more::basis_nameplate;
    case PowerBasis::corrected:
        return words::circuit_more::basis_corrected;
    case PowerBasis::plate_refuted:
        return words::circuit_more::basis_plate_refuted;
    case PowerBasis::estimate:
        break;
    }
    return words::circuit_more::basis_estimate;
}

Text breaker_basis(const Circuit& circuit, bool from_memory) {
    const std::string_view name = breaker_name(circuit.breaker_rule);
    if (circuit.breaker_rule == BreakerRule::ul489 && from_memory) {
        return words::circuit_more::BasisUl489Memory{.name = name};
    }
    if (circuit.breaker_rule == BreakerRule::ul489) {
        return words::circuit_more::BasisUl489{.name = name};
    }
    if (from_memory) {
        return words::circuit_more::BasisIec60898Memory{.name = name};
    }
    return words::circuit_more::BasisIec60898{.name = name};
}

Text run_basis(const Input& input) {
    const double air = input.circuit.ambient_c;
    if (input.circuit.run_mm2 && input.machine.phases == 3) {
        return words::circuit_more::BasisRunThree{.air = words::celsius(air)};
    }
    if (input.circuit.run_mm2) {
        return words::circuit_more::BasisRunTwo{.air = words::celsius(air)};
    }
    if (article_630_applies(input)) {
        return words::circuit_more::BasisRun630{.air = words::celsius(air)};
    }
    return words::circuit_more::BasisRunNec{.air = words::celsius(air)};
}

Word cord_basis(const Circuit& circuit, int phases) {
    if (circuit.cord_mm2) {
        return cord_from_memory_mm2(*circuit.cord_mm2) ? words::circuit_more::basis_cord_bs_memory
                                                       : words::circuit_more::basis_cord_bs;
    }
    return cord_from_memory(*circuit.cord_awg, phases) ? words::circuit_more::basis_cord_nec_memory
                                                       : words::circuit_more::basis_cord_nec;
}

} // namespace

Message message_of(const Input& input, const Load& load, const Report& report) {
    const Named named = name_of(load.verdict);
    Message out{.code = named.code, .topic = Topic::circuit, .severity = named.severity, .field = named.field};
    describe(input, load, report, out);
    out.remedy = remedy_of(input, load, report);
    return out;
}

Text duty_note_of(const Load& load) {
    if (load.duty >= 1) {
        return words::circuit_more::DutyFull{.rated = words::celsius(rated_air_c)};
    }
    return words::circuit_more::Duty{.arc = Duration{duty_period_s * load.duty, second},
                                     .rated = words::celsius(rated_air_c)};
}

Text guard_of(const Input& input) {
    return rules_of(input) == Rules::nec ? words::circuit_more::guard_nec : words::circuit_more::guard_iec;
}

std::vector<Text> basis_of(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    std::vector<Text> basis{power_basis(load), words::circuit_more::BasisDuty{.rated = words::celsius(rated_air_c)}};
    const auto add = [&](const Text& text) { basis.push_back(text); };
    if (load.effective_from_plate) {
        add(words::circuit_more::basis_effective);
    }
    if (circuit.generator) {
        add(words::circuit_more::basis_generator);
    }
    add(breaker_basis(circuit, load.breaker.from_memory));
    add(run_basis(input));
    if (cord_carries(input)) {
        add(cord_basis(circuit, input.machine.phases));
    }
    if (circuit.plug) {
        add(words::circuit_more::basis_plug);
    }
    if (circuit.compressor_motor_hp) {
        add(words::circuit_more::basis_motor);
    }
    add(words::circuit_more::basis_electrician);
    return basis;
}

} // namespace torchside::supply
