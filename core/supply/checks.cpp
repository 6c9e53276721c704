#include "core/supply/checks.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/article_630.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/words.hpp"

namespace torchside::supply {
namespace {

constexpr double plug_share = 0.8;
constexpr double shared_to_a = 20; // 210.23(A)
constexpr double larger_to_a = 30; // 210.23(B); above it no such rule was seen
constexpr double run_drop_note = 0.03;
constexpr double whole_drop_note = 0.05;

struct Case {
    const Input& input;
    const Load& load;
    const Report& report;
    std::vector<Check>& out;
    Rules rules;
    bool article_630;

    void add(CheckKind kind, Weight weight, bool ok, std::string text, std::string_view source) const {
        out.push_back({kind, ok, std::move(text), std::string{source}, weight});
    }
};

std::string or_thicker(const std::optional<int>& awg) {
    return awg ? joined({std::to_string(*awg), " AWG or thicker"}) : "thicker than 2 AWG";
}

std::string or_more(const std::optional<double>& mm2, std::string_view beyond) {
    return mm2 ? joined({section_words(*mm2), " or more"}) : std::string{beyond};
}

std::string need(const std::string& what) {
    return joined({": ", what, "."});
}

std::string least_run_words(const Case& c) {
    const Report& r = c.report;
    if (c.input.circuit.run_mm2)
        return or_more(r.run_min_mm2, "more than 70 mm²");
    if (c.input.circuit.marked_75c || r.run_min_awg == r.run_min_awg_60c)
        return or_thicker(r.run_min_awg);
    return joined({or_thicker(r.run_min_awg_60c), " (", or_thicker(r.run_min_awg),
                   " where cable and both terminals are marked 75 °C)"});
}

std::string_view run_source(const Case& c) {
    if (c.input.circuit.run_mm2)
        return c.input.machine.phases == 3 ? "IEC 60364-5-52 method B2, three loaded, as cited in two machine manuals"
                                           : "IEC 60364-5-52 method B2, two loaded, from memory";
    return c.input.circuit.marked_75c ? "NEC 2023, Table 310.16, 75 °C column, seen in reproductions"
                                      : "NEC 2023, Table 310.16, 60 °C column by 110.14(C), seen in reproductions";
}

void plug_fit(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!circuit.plug)
        return;
    const PlugRow& plug = row_of(*circuit.plug);
    const bool supply = plug_fits_supply(circuit, c.input.machine.phases);
    const bool ok = supply && plug_fits_breaker(c.input);
    std::string text{plug.name};
    if (!supply)
        text += joined({" is a plug for ", print_trimmed(plug.volts, 0), " V",
                        plug.phases == 3 ? ", three phases." : ", one phase."});
    else
        text += joined({" takes a breaker of at most ", print_trimmed(plug.breaker_max, 0), " A, this one is ",
                        amps(circuit.breaker), "."});
    c.add(CheckKind::plug_fit, Weight::stop, ok, std::move(text),
          plug.where == PlugWhere::us ? "NEMA numbers, seen in part; NEC Table 210.21(B)(3), in a forum's quotation"
                                      : "BS 1363, CEE 7 and IEC 60309, from memory");
}

void run_device(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    const Current most = largest_device(c.input);
    const bool ok = circuit.breaker <= most;
    std::string text;
    if (most <= Current{})
        text = joined({run_words(circuit), " is not in the table, which begins at 1.5 mm²", need(least_run_words(c))});
    else
        text = joined({run_words(circuit), c.article_630 ? ", 200 % of its ampacity," : "",
                       " allows a breaker of at most ", amps(most), ", this one is ", amps(circuit.breaker),
                       ok ? "." : need(least_run_words(c))});
    c.add(CheckKind::run_device, Weight::stop, ok, std::move(text),
          c.article_630 ? "NEC 630.12(B), text of 2008 seen in reproductions; later editions from memory"
          : c.rules == Rules::nec
              ? "NEC 2023 Table 310.16, 240.4(D) of 2011 to 2017 (later from memory), seen in reproductions"
              : "IEC 60364-4-43, 433.1, seen in a copy");
}

void breaker_load(const Case& c) {
    if (c.rules != Rules::iec)
        return;
    const bool ok = c.load.verdict != CircuitVerdict::cannot_deliver && c.load.total <= c.input.circuit.breaker;
    c.add(CheckKind::breaker_load, Weight::caution, ok,
          joined({amps(c.load.total), " on a breaker of ", amps(c.input.circuit.breaker),
                  "; its rating must be at least the load."}),
          "IEC 60364-4-43, 433.1, seen in a copy");
}

void run_load(const Case& c) {
    const Current most = run_ampacity(c.input);
    const Current asked = run_asked(c.input, c.load);
    const bool ok = asked <= most;
    const bool motor = motor_share(c.input, c.load) > Current{};
    c.add(c.article_630 ? CheckKind::welder_run : CheckKind::run_load, Weight::stop, ok,
          joined({run_words(c.input.circuit),
                  most > Current{} ? joined({" carries ", amps(most)}) : std::string{" is not in the table"},
                  c.article_630 ? ", the effective current is " : ", the load is ", amps(asked),
                  motor ? " with 125 % of the motor" : "", ok ? "." : need(least_run_words(c))}),
          motor ? joined({run_source(c), "; motor: NEC 430.24, seen in a reproduction"}) : std::string{run_source(c)});
}

void cord_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    const auto most = cord_carries(c.input);
    if (!most)
        return;
    const bool ok = c.load.asked <= *most;
    const bool memory = circuit.cord_mm2 ? cord_from_memory_mm2(*circuit.cord_mm2)
                                         : cord_from_memory(*circuit.cord_awg, c.input.machine.phases);
    c.add(CheckKind::cord_load, Weight::stop, ok,
          joined({cord_words(circuit), " cord",
                  *most > Current{} ? joined({" carries ", amps(*most)}) : " is not in the table",
                  ", the machine draws ", amps(c.load.asked),
                  ok ? "; lay it out, a coiled cord overheats."
                     : need(circuit.cord_mm2 ? or_more(c.report.cord_min_mm2, "more than 16 mm²")
                                             : or_thicker(c.report.cord_min_awg))}),
          joined({circuit.cord_mm2 ? "BS 7671, Table 4F3A" : "NEC Table 400.5(A)",
                  memory             ? ", this row from memory"
                  : circuit.cord_mm2 ? ", seen in a supplier's reproduction"
                                     : ", as quoted in an appliance standard"}));
}

void plug_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (circuit.plug) {
        const PlugRow& plug = row_of(*circuit.plug);
        c.add(CheckKind::plug, Weight::stop, c.load.asked.in(ampere) <= plug.amps,
              joined({plug.name, plug.plug == Plug::uk_13 ? " has a fuse of " : " carries ",
                      print_trimmed(plug.amps, 0), " A, the machine draws ", amps(c.load.asked), "."}),
              plug.where == PlugWhere::us ? "NEMA WD 6 numbering, seen in part"
                                          : "BS 1363, CEE 7 and IEC 60309, from memory");
    }
    if (c.rules != Rules::nec || circuit.dedicated || circuit.breaker.in(ampere) > larger_to_a)
        return;
    Current most = plug_share * circuit.breaker;
    if (circuit.plug)
        most = std::min(most, Current{plug_share * row_of(*circuit.plug).amps, ampere}); // Table 210.21(B)(2)
    const Current rated = rated_input(c.input, c.load.conversion);
    c.add(CheckKind::plug_load, Weight::note, rated <= most,
          joined({"The machine is rated ", amps(rated), c.input.machine.plate_i1max ? "" : " (estimated)",
                  "; on a circuit with several outlets one plugged-in machine may be rated ", amps(most),
                  " at most (80 %)."}),
          circuit.breaker.in(ampere) <= shared_to_a ? "NEC 2023, 210.23(A)(1), in reproductions"
                                                    : "NEC 2023, 210.23(B), in reproductions");
}

void low_line(const Case& c) {
    if (c.load.draw.machine >= (1 - line_tolerance) * c.input.circuit.line)
        return;
    c.add(CheckKind::low_line, Weight::caution, false,
          joined({print(c.report.machine).text(),
                  " at the machine: more than 10 % below the line; it may shut off or run rough."}),
          "IEC 60974-1, supply tolerance of 10 %, from memory");
}

void drop(const Case& c) {
    const bool nec = c.rules == Rules::nec;
    const double run = c.report.run_drop_share;
    const double all = c.report.drop_share;
    std::string text = joined({print_percent(all, 1).text(), " of the line voltage is lost on the way"});
    if (run < all)
        text += joined({", ", print_percent(run, 1).text(), " of it in the fixed wiring"});
    const bool ok = all <= whole_drop_note && (!nec || run <= run_drop_note);
    if (nec)
        text +=
            ok ? "; within the 3 % and 5 % notes." : "; the notes advise at most 3 % in the fixed wiring, 5 % in all.";
    else
        text += ok ? "; within the 5 % advised." : "; at most 5 % is advised.";
    c.add(CheckKind::drop, Weight::note, ok, std::move(text),
          nec ? "NEC 210.19 informational note, quoted in secondary pages; advice, not a rule"
              : "IEC 60364-5-52, G.52.1, seen in a reproduction; advice, not a rule");
}

void welder(const Case& c) {
    if (!c.article_630)
        return;
    const Circuit& circuit = c.input.circuit;
    const Machine& machine = c.input.machine;
    const Current run = run_ampacity(c.input);
    const Current size = welder_run_size(c.input, c.load);
    c.add(CheckKind::welder_size, Weight::note, run >= size,
          joined({run_words(circuit), " carries ", amps(run), "; the machine's rating asks for ", amps(size),
                  run >= size ? "." : need(least_run_words(c))}),
          "NEC 630.11(A), text of 2008 seen in reproductions; later editions from memory");
    const Current i1max = rated_input(c.input, c.load.conversion);
    const DeviceLimit device = welder_device(i1max);
    const Current most = device.permitted ? std::max(device.limit, *device.permitted) : device.limit;
    c.add(CheckKind::welder_device, Weight::note, circuit.breaker <= most,
          joined({"A circuit for this machine alone: breaker of at most 200 % of I1max ", amps(i1max),
                  (machine.plate_i1max ? "" : " (estimated)"), ", ", amps(most),
                  " with the next standard size; this one is ", amps(circuit.breaker), "."}),
          "NEC 630.12(A), text of 2008 seen in part; later editions from memory");
}

void generator(const Case& c) {
    if (!c.input.circuit.generator)
        return;
    const double share = c.load.source / *c.input.circuit.generator;
    c.add(CheckKind::generator, Weight::caution, c.load.generator_within,
          joined({"The generator is loaded to ", print_percent(share).text(), "; more than 80 % is not advised."}),
          "Common practice, no source");
}

void nameplate(const Case& c) {
    const double share = c.load.conversion.plate_share;
    if (c.load.conversion.basis == PowerBasis::plate_refuted)
        c.add(CheckKind::nameplate, Weight::note, false,
              "The nameplate's I1max is too small for the rated output at this line voltage; the estimate was used.",
              "Energy balance");
    else if (share > 0 && share < 0.4)
        c.add(CheckKind::nameplate, Weight::note, false,
              joined({"The nameplate's I1max means ", print_percent(share).text(),
                      " efficiency times power factor; is it for another supply voltage?"}),
              "Energy balance");
}

} // namespace

Current welder_run_size(const Input& input, const Load& load) {
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
    return code + load.line.other + motor_share(input, load);
}

std::vector<Check> checks_of(const Input& input, const Load& load, const Report& report) {
    std::vector<Check> out;
    const Case c{input, load, report, out, rules_of(input), article_630_applies(input)};
    plug_fit(c);
    run_device(c);
    run_load(c);
    cord_load(c);
    breaker_load(c);
    plug_load(c);
    generator(c);
    low_line(c);
    drop(c);
    welder(c);
    nameplate(c);
    return out;
}

} // namespace torchside::supply
