#include "core/supply/checks.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/article_630.hpp"
#include "core/supply/conductor.hpp"
#include "core/supply/words.hpp"

namespace torchside::supply {
namespace {

constexpr double plug_share = 0.8;
constexpr double run_drop_note = 0.03;
constexpr double whole_drop_note = 0.05;

struct Case {
    const Input& input;
    const Load& load;
    const Report& report;
    std::vector<Check>& out;

    void add(CheckKind kind, bool ok, std::string text, std::string_view source) const {
        out.push_back({kind, ok, std::move(text), std::string{source}});
    }
};

bool nec(const Circuit& circuit) {
    return circuit.breaker_rule == BreakerRule::ul489;
}

std::string or_thicker(const std::optional<int>& awg) {
    return awg ? joined({std::to_string(*awg), " AWG or thicker"}) : "thicker than 2 AWG";
}

std::string need(const std::string& what) {
    return joined({": ", what, "."});
}

std::string least_run_words(const Case& c) {
    if (c.input.circuit.run_mm2)
        return c.report.run_min_mm2 ? joined({section_words(*c.report.run_min_mm2), " or more"}) : "more than 70 mm²";
    std::string words = or_thicker(c.report.run_min_awg);
    if (c.report.run_min_awg_60c != c.report.run_min_awg)
        words +=
            joined({" (NM cable, or a terminal without a 75 °C mark: ", or_thicker(c.report.run_min_awg_60c), ")"});
    return words;
}

void drop(const Case& c) {
    const double run = c.report.run_drop_share;
    const double all = c.report.drop_share;
    std::string text = joined({print_percent(all, 1).text(), " of the line voltage is lost on the way"});
    if (c.input.circuit.cord_awg)
        text += joined({", ", print_percent(run, 1).text(), " of it in the fixed wiring"});
    const bool ok = run <= run_drop_note && all <= whole_drop_note;
    text += ok ? "; within the 3 % and 5 % notes." : "; the notes advise at most 3 % in the fixed wiring, 5 % in all.";
    c.add(CheckKind::drop, ok, std::move(text),
          "NEC 210.19(A) informational note, quoted in secondary pages; advice, not a rule");
}

void low_line(const Case& c) {
    if (c.report.drop_share <= line_tolerance)
        return;
    c.add(CheckKind::low_line, false,
          joined({print(c.report.machine).text(),
                  " at the machine: more than 10 % below the line; it may shut off or run rough."}),
          "IEC 60974-1, supply tolerance of 10 %, from memory");
}

void plug_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!nec(circuit) || circuit.dedicated)
        return;
    const Current most = plug_share * circuit.breaker;
    const bool ok = c.load.asked <= most;
    c.add(CheckKind::plug_load, ok,
          joined({amps(c.load.asked), (ok ? " is within the " : " is over the "), amps(most),
                  " (80 %) that one plugged-in machine may take of a circuit with several outlets."}),
          "NEC 210.23(A)(1), in a trade journal");
}

void run_device(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (article_630_applies(circuit))
        return;
    const Current most = circuit.run_mm2 ? ampacity_mm2(*circuit.run_mm2) : ampacity(circuit.run_awg).device75;
    const bool ok = circuit.breaker <= most;
    std::string text = joined({run_words(circuit), " allows a breaker of at most ", amps(most), ", this one is ",
                               amps(circuit.breaker), ok ? "." : need(least_run_words(c))});
    if (ok && !circuit.run_mm2 && circuit.breaker > ampacity(circuit.run_awg).device60)
        text += joined(
            {" NM cable, or a terminal without a 75 °C mark, needs ", or_thicker(c.report.run_min_awg_60c), "."});
    c.add(CheckKind::run_device, ok, std::move(text),
          circuit.run_mm2 ? "IEC 60364-4-43, 433.1 and 60364-5-52 method B2, from memory"
                          : "NEC 240.4(D) and Table 310.16 (2023), 75 °C column, seen in reproductions");
}

void run_load(const Case& c) {
    if (article_630_applies(c.input.circuit))
        return;
    const Current most = run_ampacity(c.input.circuit);
    const Current total = c.load.asked + c.load.line.other;
    const bool ok = total <= most;
    c.add(CheckKind::run_load, ok,
          joined({run_words(c.input.circuit), " carries ", amps(most), ", the load is ", amps(total),
                  ok ? "." : need(least_run_words(c))}),
          c.input.circuit.run_mm2 ? "IEC 60364-5-52 method B2, from memory"
                                  : "NEC Table 310.16 (2023), 75 °C column, seen in reproductions");
}

void cord_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!circuit.cord_awg)
        return;
    const Current most = cord_ampacity(*circuit.cord_awg, c.input.machine.phases);
    const bool ok = c.load.asked <= most;
    c.add(CheckKind::cord_load, ok,
          joined({std::to_string(*circuit.cord_awg), " AWG cord carries ", amps(most), ", the machine draws ",
                  amps(c.load.asked), ok ? "." : need(or_thicker(c.report.cord_min_awg))}),
          cord_from_memory(*circuit.cord_awg, c.input.machine.phases)
              ? "NEC Table 400.5(A), this row from memory"
              : "NEC Table 400.5(A), as quoted in an appliance standard");
}

void welder(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!article_630_applies(circuit))
        return;
    const Machine& machine = c.input.machine;
    const Current i1max = rated_input(c.input, c.load.conversion);
    const DeviceLimit device = welder_device(i1max);
    const Current most_device = device.permitted ? std::max(device.limit, *device.permitted) : device.limit;
    c.add(CheckKind::welder_device, circuit.breaker <= most_device,
          joined({"A circuit for this machine alone: breaker of at most 200 % of I1max ", amps(i1max),
                  (machine.plate_i1max ? "" : " (estimated)"), ", ", amps(most_device),
                  " with the next standard size; this one is ", amps(circuit.breaker), "."}),
          "NEC 630.12(A), text of 2008 seen in part; later editions from memory");
    const Current run = run_ampacity(circuit);
    const Current needs = welder_run_needs(c.input, c.load);
    const DeviceLimit wire = welder_device(run);
    const bool ok =
        run >= needs && circuit.breaker <= (wire.permitted ? std::max(wire.limit, *wire.permitted) : wire.limit);
    c.add(CheckKind::welder_run, ok,
          joined({run_words(circuit), " carries ", amps(run), "; the effective current asks for ", amps(needs),
                  ok ? "." : need(least_run_words(c))}),
          "NEC 630.11(A) and 630.12(B), text of 2008 seen in reproductions; later editions from memory");
}

void generator(const Case& c) {
    if (!c.input.circuit.generator)
        return;
    const double share = c.load.source / *c.input.circuit.generator;
    c.add(CheckKind::generator, share <= generator_loading,
          joined({"The generator is loaded to ", print_percent(share).text(), "; more than 80 % is not advised."}),
          "Common practice, no source");
}

void nameplate(const Case& c) {
    const double share = c.load.conversion.plate_share;
    if (c.load.conversion.basis == PowerBasis::plate_refuted)
        c.add(CheckKind::nameplate, false,
              "The nameplate's I1max is too small for the rated output at this line voltage; the estimate was used.",
              "Energy balance");
    else if (share > 0 && share < 0.4)
        c.add(CheckKind::nameplate, false,
              joined({"The nameplate's I1max means ", print_percent(share).text(),
                      " efficiency times power factor; is it for another supply voltage?"}),
              "Energy balance");
}

} // namespace

bool article_630_applies(const Circuit& circuit) {
    return circuit.dedicated && nec(circuit);
}

Current welder_run_needs(const Input& input, const Load& load) {
    const Machine& machine = input.machine;
    Current code{};
    if (machine.plate_i1eff) {
        code = *machine.plate_i1eff;
    } else {
        const Current duty = machine.duty_current;
        const Current primary = supply_current(apparent_power(duty, rated_load_voltage(duty), load.conversion.share),
                                               input.circuit.line, machine.phases);
        code = welder_multiplier(machine.duty_cycle) * primary;
    }
    return std::max(code, load.effective) + load.line.other;
}

Current run_ampacity(const Circuit& circuit) {
    return circuit.run_mm2 ? ampacity_mm2(*circuit.run_mm2) : ampacity(circuit.run_awg).at75;
}

std::vector<Check> checks_of(const Input& input, const Load& load, const Report& report) {
    std::vector<Check> out;
    const Case c{input, load, report, out};
    run_device(c);
    run_load(c);
    welder(c);
    cord_load(c);
    plug_load(c);
    low_line(c);
    drop(c);
    generator(c);
    nameplate(c);
    return out;
}

} // namespace torchside::supply
