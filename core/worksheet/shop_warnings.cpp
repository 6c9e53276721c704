// Warnings that other reports have already put into words: here they get their code, weight and field.
#include <string_view>

#include "core/safety/assess.hpp"
#include "core/worksheet/warnings.hpp"

namespace torchside {
namespace {

std::string with_way_out(const std::string& summary, const std::string& way_out) {
    if (way_out.empty())
        return summary;
    const bool closed = !summary.empty() && summary.back() == '.';
    return summary + (closed ? " " : ". ") + way_out;
}

struct Named {
    supply::CheckKind kind;
    std::string_view code;
    std::string_view field;
};

constexpr Named checks[] = {
    {supply::CheckKind::drop, "circuit_drop", "shop.circuit.run_awg"},
    {supply::CheckKind::low_line, "circuit_low_line", "shop.circuit.line_v"},
    {supply::CheckKind::plug_load, "circuit_plug_load", "shop.circuit.breaker_a"},
    {supply::CheckKind::run_device, "circuit_run_device", "shop.circuit.run_awg"},
    {supply::CheckKind::run_load, "circuit_run_load", "shop.circuit.run_awg"},
    {supply::CheckKind::cord_load, "circuit_cord_load", "shop.circuit.cord_awg"},
    {supply::CheckKind::welder_device, "circuit_welder_device", "shop.circuit.breaker_a"},
    {supply::CheckKind::welder_run, "circuit_welder_run", "shop.circuit.run_awg"},
    {supply::CheckKind::generator, "circuit_generator", "shop.circuit.generator_va"},
    {supply::CheckKind::nameplate, "circuit_nameplate", "shop.machine.plate_i1max_a"},
    {supply::CheckKind::breaker_load, "circuit_breaker_load", "shop.circuit.breaker_a"},
    {supply::CheckKind::plug, "circuit_plug", "shop.circuit.plug"},
    {supply::CheckKind::plug_fit, "circuit_plug_fit", "shop.circuit.plug"},
    {supply::CheckKind::welder_size, "circuit_welder_size", "shop.circuit.run_awg"},
};

Severity severity_of(supply::Weight weight) {
    return weight == supply::Weight::stop      ? Severity::stop
           : weight == supply::Weight::caution ? Severity::caution
                                               : Severity::note;
}

} // namespace

void warn_of_tap(const Findings& f, std::vector<Warning>& out) {
    const supply::ControllerInput& tap = f.sheet.tap;
    if (tap.severity == supply::TapSeverity::fine)
        return;
    const bool over = tap.controller > f.workbook.shop.height_control.input_limit;
    out.push_back({over        ? "height_input_over_limit"
                   : tap.shock ? "raw_tap"
                               : "height_input_before_arc",
                   tap.severity == supply::TapSeverity::stop ? Severity::stop : Severity::caution,
                   "shop.height_control.divider_ratio", tap.text});
}

void warn_of_circuit(const Findings& f, std::vector<Warning>& out) {
    const supply::Report& circuit = f.sheet.circuit;
    const std::string text = with_way_out(circuit.summary, circuit.way_out);
    switch (circuit.verdict) {
    case supply::CircuitVerdict::holds:
        break;
    case supply::CircuitVerdict::may_trip:
        out.push_back({"circuit_may_trip", Severity::caution, "shop.circuit.breaker_a", text});
        break;
    case supply::CircuitVerdict::trips_within_hour:
        out.push_back({"circuit_trips", Severity::caution, "shop.circuit.breaker_a", text});
        break;
    case supply::CircuitVerdict::trips_soon:
        out.push_back({"circuit_trips_soon", Severity::stop, "shop.circuit.breaker_a", text});
        break;
    case supply::CircuitVerdict::cannot_deliver:
        out.push_back({"circuit_cannot_deliver", Severity::stop, "shop.circuit.line_v", text});
        break;
    }
    for (const supply::Check& check : circuit.checks)
        for (const Named& named : checks)
            if (!check.ok && named.kind == check.kind)
                out.push_back(
                    {std::string(named.code), severity_of(check.weight), std::string(named.field), check.text});
}

void warn_of_air(const Findings& f, std::vector<Warning>& out) {
    const air::Report& air = f.sheet.air;
    const std::string text = with_way_out(air.summary, air.way_out);
    if (air.verdict == air::AirVerdict::not_enough_pressure)
        out.push_back({"air_pressure", Severity::stop, "shop.air.cut_in_bar", text});
    if (air.verdict == air::AirVerdict::overworked)
        out.push_back({"air_compressor_duty", Severity::caution, "shop.air.compressor_duty", text});
    if (air.verdict == air::AirVerdict::runs_then_waits)
        out.push_back({"air_runs_out", Severity::caution, "shop.air.compressor_l_min", text});
}

void warn_of_hazards(const Findings& f, std::vector<Warning>& out) {
    for (const safety::Caution& c : safety::worst_two(f.sheet.safety)) {
        const Severity severity = c.weight == safety::Weight::stop      ? Severity::stop
                                  : c.weight == safety::Weight::caution ? Severity::caution
                                                                        : Severity::note;
        out.push_back({std::string(c.code), severity, "job.material", std::string(c.head)});
    }
}

} // namespace torchside
