#include "core/supply/sentences.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/limits.hpp"
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

// All limits are kept; what is not as the notes would have it.
std::string remaining(const std::vector<Check>& checks) {
    for (const Check& check : checks)
        if (!check.ok)
            return check.text;
    return {};
}

const Check* stopped_by(const Report& report) {
    for (const Check& check : report.checks)
        if (!check.ok && check.weight == Weight::stop)
            return &check;
    return nullptr;
}

std::string_view title_of(CheckKind kind) {
    switch (kind) {
    case CheckKind::run_device:
        return "Breaker too large for the wire: ";
    case CheckKind::cord_load:
        return "Cord overloaded: ";
    case CheckKind::plug:
        return "Plug overloaded: ";
    case CheckKind::plug_fit:
        return "Wrong plug: ";
    default:
        return "Wire overloaded: ";
    }
}

// "14 AWG cord carries 18 A, the machine draws 29.4 A: 10 AWG or thicker." under its title, without the full stop.
std::string stop_summary(const Check& check) {
    return joined({title_of(check.kind), std::string_view{check.text}.substr(0, check.text.size() - 1)});
}

std::string_view above_it(Cap cap) {
    switch (cap) {
    case Cap::run:
        return ": more overloads the wiring.";
    case Cap::cord:
        return ": more overloads the cord.";
    case Cap::plug:
        return ": more overloads the plug.";
    case Cap::generator:
        return ": more overloads the generator.";
    case Cap::voltage:
        return ": more leaves the machine short of volts.";
    default:
        return ": more trips the breaker.";
    }
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
    return joined(
        {text, circuit.breaker_rule == BreakerRule::ul489
                   ? "; upper times only, from cold"
                   : "; upper times, from cold, and one least time: at 2.55 times its rating not within 1 s"});
}

std::string run_basis(const Input& input) {
    const Circuit& circuit = input.circuit;
    std::string text;
    if (circuit.run_mm2)
        text = joined({"Fixed wiring: IEC 60364-5-52 method B2, 70 °C column, ",
                       input.machine.phases == 3 ? "three loaded conductors, as cited in two machine manuals"
                                                 : "two loaded conductors, from memory",
                       "; resistance by its Annex G, seen in a reproduction"});
    else if (article_630_applies(input))
        text =
            "Fixed wiring: NEC Article 630, text of 2008 seen in reproductions, later editions from memory; NEC 2023 "
            "Table 310.16 and Chapter 9 Table 8, seen in reproductions";
    else
        text = "Fixed wiring: NEC 2023 Table 310.16, 240.4(D) of 2011 to 2017 (later from memory) and Chapter 9 Table "
               "8, seen in reproductions";
    return joined({text, "; air of ", print_trimmed(circuit.ambient_c, 0), " °C"});
}

std::string cord_basis(const Circuit& circuit, int phases) {
    if (circuit.cord_mm2)
        return cord_from_memory_mm2(*circuit.cord_mm2) ? "Cord: BS 7671, this row from memory"
                                                       : "Cord: BS 7671 Table 4F3A, seen in a supplier's reproduction";
    return cord_from_memory(*circuit.cord_awg, phases)
               ? "Cord: NEC Table 400.5(A), this row from memory"
               : "Cord: NEC Table 400.5(A), seen as quoted in an appliance standard";
}

} // namespace

std::string summary_of(const Input& input, const Load& load, const Report& report) {
    if (load.verdict == CircuitVerdict::cannot_deliver) {
        if (load.generator_short)
            return joined({"Generator too small: ", kva(load.source), " asked of ", kva(*input.circuit.generator)});
        return joined({"This run cannot deliver ", amps(input.output), ": the wires take too much of the voltage"});
    }
    if (load.generator_short)
        return joined({"Generator loaded past 80 %: ", kva(load.source), " of ", kva(*input.circuit.generator)});
    const std::string figure = load_on_breaker(input, load);
    // The breaker will not end it: what is overloaded comes first.
    if (const Check* stop = stopped_by(report); stop && load.verdict <= CircuitVerdict::may_trip)
        return stop_summary(*stop);
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
    const bool other = load.line.other > Current{};
    if (!report.highest_current) {
        if (report.capped_by == Cap::plug || !breaker_is_sound(input))
            return "Do not use this circuit until that is put right.";
        if (other)
            return "The other load alone is all this circuit holds. Move it to another circuit.";
        return joined({"Nothing holds here. Use ", elsewhere(input), "."});
    }
    if (!first_over(input, load))
        return remaining(report.checks);
    const std::string most = floor_amps(*report.highest_current);
    if (report.highest_below_machine)
        return joined({"At most ", most, " here, but this machine starts at ", amps(input.machine.min_current), ". ",
                       (other ? "Move the other load to another circuit, or use " : "Use "), elsewhere(input), "."});
    if (report.capped_by == Cap::breaker && !other)
        return joined({"Use at most ", most, " (breaker), or ", elsewhere(input), "."});
    std::string text = joined({"Use at most ", most, above_it(report.capped_by)});
    if (other)
        return joined({text, " Or move the other load to another circuit."});
    if (report.capped_by == Cap::cord)
        return joined({text, " Or use a thicker cord."});
    if (report.capped_by == Cap::plug)
        return joined({text, " Or use a larger plug on a larger circuit."});
    return joined({text, " Or use ", elsewhere(input), "."});
}

std::string guard_of(const Input& input) {
    return rules_of(input) == Rules::nec
               ? "Have a GFCI on an outlet up to 50 A in a garage or shop, and never bypass it. NEC 2023, 210.8, from "
                 "memory."
               : "Have a 30 mA RCD on a socket up to 32 A, and never bypass it. IEC 60364-4-41, 411.3.3, from memory.";
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
    basis.push_back(run_basis(input));
    if (cord_carries(input))
        basis.push_back(cord_basis(circuit, input.machine.phases));
    if (circuit.plug)
        basis.push_back("Plug: NEMA, BS 1363, CEE 7 and IEC 60309 ratings, in part from memory");
    if (circuit.compressor_motor_hp)
        basis.push_back(
            "Compressor motor: NEC Table 430.248, seen in reproductions of 1999; its starting current is not "
            "counted");
    basis.push_back("Local code and a licensed electrician decide");
    return basis;
}

} // namespace torchside::supply
