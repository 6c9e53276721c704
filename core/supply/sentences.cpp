#include "core/supply/sentences.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/checks.hpp"
#include "core/supply/conductor.hpp"
#include "core/supply/words.hpp"

namespace torchside::supply {
namespace {

constexpr double low_line_v = 150; // a 120 V class outlet

// Down to a tenth: a highest current rounded up would not hold.
std::string floor_amps(Current current) {
    return amps(Current{std::floor(current.in(ampere)*10) / 10, ampere});
}

std::string load_on_breaker(const Input& input, const Load& load) {
    std::string text = joined({amps(load.total), " on a ", amps(input.circuit.breaker), " breaker"});
    if (load.line.other > Current{})
        text += joined({", ", amps(load.line.other), " of it other load"});
    return text;
}

std::string elsewhere(const Input& input) {
    if (input.circuit.line.in(volt) < low_line_v)
        return "the 240 V outlet";
    return input.circuit.generator ? "a larger generator" : "a larger circuit";
}

bool about_wires(CheckKind kind) {
    return kind == CheckKind::run_device || kind == CheckKind::run_load || kind == CheckKind::cord_load ||
           kind == CheckKind::welder_run || kind == CheckKind::welder_device;
}

// The breaker holds; what else is not as it should be, wires first.
std::string remaining(const std::vector<Check>& checks) {
    for (const Check& check : checks)
        if (!check.ok && about_wires(check.kind))
            return check.text;
    for (const Check& check : checks)
        if (!check.ok)
            return check.text;
    return {};
}

std::string power_basis(const Load& load) {
    switch (load.conversion.basis) {
    case PowerBasis::nameplate:
        return "Input current: the nameplate's I1max, scaled by the power at the torch";
    case PowerBasis::corrected:
        return "Input current: energy balance, efficiency as entered, power factor 0.99 of a corrected input (from "
               "memory)";
    case PowerBasis::plate_refuted:
        return "Input current: energy balance with efficiency and power factor as entered; the nameplate's I1max was "
               "put "
               "aside, it is too small to be true";
    case PowerBasis::estimate:
        break;
    }
    return "Input current: energy balance, efficiency and power factor as entered (estimate)";
}

std::string breaker_basis(const Circuit& circuit, const BreakerState& state) {
    std::string text = joined({"Breaker: ", breaker_name(circuit.breaker_rule)});
    text += circuit.breaker_rule == BreakerRule::ul489 ? ", calibration points seen in a trade page"
                                                       : ", characteristics seen in reproductions";
    if (state.from_memory)
        text += "; the point used here is from memory";
    return joined({text, "; upper times only, from cold"});
}

std::string run_basis(const Circuit& circuit) {
    if (circuit.run_mm2)
        return "Fixed wiring: IEC 60364-5-52 method B2 (from memory); resistance computed from the section at 75 °C";
    if (article_630_applies(circuit))
        return "Fixed wiring: NEC Article 630, text of 2008 seen in reproductions, later editions from memory; Table "
               "310.16 (2023) and Chapter 9 Table 8, seen in reproductions";
    return "Fixed wiring: NEC Table 310.16 (2023) at 30 °C ambient (36 to 40 °C: 0.88 of it), 240.4(D) and Chapter 9 "
           "Table 8, seen in reproductions";
}

} // namespace

std::string summary_of(const Input& input, const Load& load) {
    if (load.verdict == CircuitVerdict::cannot_deliver) {
        if (load.generator_short)
            return joined({"Generator too small: ", kva(load.source), " asked of ", kva(*input.circuit.generator)});
        return joined({"This run cannot deliver ", amps(input.output), ": the wires take too much of the voltage"});
    }
    if (load.generator_short)
        return joined({"Generator loaded past 80 %: ", kva(load.source), " of ", kva(*input.circuit.generator)});
    const std::string figure = load_on_breaker(input, load);
    switch (load.verdict) {
    case CircuitVerdict::holds:
        return joined({"Circuit holds: ", figure});
    case CircuitVerdict::may_trip:
        return joined({"Circuit may trip: ", figure, "; no time is promised"});
    default:
        return joined({"Circuit trips within ", print(*load.breaker.within).text(), ": ", figure});
    }
}

std::string duty_note_of(const Load& load) {
    if (load.duty >= 1)
        return "The arc may stay on: 100 % duty by equal heating, rated at 40 °C; the machine's plate governs.";
    return joined(
        {print(Duration{duty_period_s * load.duty, second}).text(),
         " of arc in any 10 min by equal heating, rated at 40 °C; less in warmer air; the machine's plate governs."});
}

std::string way_out_of(const Input& input, const Load& load, const Report& report) {
    if (load.verdict == CircuitVerdict::holds)
        return remaining(report.checks);
    const bool other = load.line.other > Current{};
    if (!report.highest_current) {
        if (other)
            return "The other load alone is all this circuit holds. Move it to another circuit.";
        return joined({"Nothing holds here. Use ", elsewhere(input), "."});
    }
    const std::string holds = floor_amps(*report.highest_current);
    if (report.highest_below_machine)
        return joined({holds, " would hold here, but this machine starts at ", amps(input.machine.min_current), ". ",
                       (other ? "Move the other load to another circuit, or use " : "Use "), elsewhere(input), "."});
    std::string text = joined({holds, " holds here."});
    if (other)
        return joined({text, " Or move the other load to another circuit."});
    return joined({text, " Or use ", elsewhere(input), "."});
}

std::vector<std::string> basis_of(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    std::vector<std::string> basis;
    basis.push_back(power_basis(load));
    basis.push_back(
        "Rated load voltage 80 V + 0.4 V/A, effective current, duty: IEC 60974-1 (from memory); duty by equal "
        "heating, rated at 40 °C; the machine's plate governs, and warmer air leaves less");
    if (load.effective_from_plate)
        basis.push_back("Effective current: the nameplate's I1eff");
    if (circuit.generator)
        basis.push_back("Generator: 80 % loading, common practice, no source");
    basis.push_back(breaker_basis(circuit, load.breaker));
    basis.push_back(run_basis(circuit));
    if (circuit.cord_awg)
        basis.push_back(cord_from_memory(*circuit.cord_awg, input.machine.phases)
                            ? "Cord: NEC Table 400.5(A), this row from memory"
                            : "Cord: NEC Table 400.5(A), seen as quoted in an appliance standard");
    if (circuit.compressor_motor_hp)
        basis.push_back(
            "Compressor motor: NEC Table 430.248, seen in reproductions of 1999; its starting current is not "
            "counted");
    basis.push_back("Local code and a licensed electrician decide");
    return basis;
}

} // namespace torchside::supply
