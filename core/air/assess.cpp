#include "core/air/assess.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "core/air/cycle.hpp"
#include "core/air/hose.hpp"
#include "core/air/water.hpp"
#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"

namespace torchside::air {
namespace {

constexpr Pressure worth_a_hose{0.1, bar}; // a drop below this is not cured by another hose

std::string temperature(double c, UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    return joined({print_fixed(metric ? c : c * 1.8 + 32, 0), metric ? " °C" : " °F"});
}

// Up to the printed digit: a setting rounded down would not be enough.
std::string at_least(Pressure pressure, UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    const double step = metric ? 0.1 : 1.0;
    const auto unit = metric ? bar : psi;
    return print(Pressure{std::ceil(pressure.in(unit) / step - 1e-9) * step, unit}, units).text();
}

} // namespace

std::string water_words(double grams, UnitSystem units) {
    constexpr double grams_per_ounce = 29.5735295625; // of water in a US fluid ounce, 1/128 gal
    if (units == UnitSystem::metric)
        return joined({print_significant(grams, 2), " g"});
    return joined({print_significant(grams / grams_per_ounce, 2), " fl oz"});
}

namespace {

void add_hose(Report& report, const AirSystem& s) {
    const Hose hose{s.hose_bore, s.hose, s.torch};
    report.receiver_min = inlet_for(hose, s.torch_pressure);
    report.hose_drop = drop(hose, report.receiver_min.value);
    report.inlet_at_cut_in = std::max(Pressure{}, s.cut_in - drop(hose, s.cut_in).value);
    report.inlet_at_cut_out = std::max(Pressure{}, s.cut_out - drop(hose, s.cut_out).value);
}

void add_cycle(Report& report, const AirSystem& s) {
    Cycle cycle = cycle_of(s, report.receiver_min.value);
    report.verdict = cycle.verdict;
    report.runs = cycle.runs;
    report.recovers = cycle.recovers;
    report.cycle = std::move(cycle.points);
    report.hose_decides = cycle_of(s, report.receiver_min.low).verdict != cycle.verdict ||
                          cycle_of(s, report.receiver_min.high).verdict != cycle.verdict;
    report.demand_share = s.torch / s.compressor;
    report.arc_share = std::min(1.0, s.duty * (s.compressor / s.torch));
    report.post_flow_air = Volume{s.torch.in(litre_min)*s.post_flow.in(minute), litre};
    report.post_flow_refill = Duration{report.post_flow_air.in(litre) / s.compressor.in(litre_min), minute};
}

void add_water(Report& report, const AirSystem& s, UnitSystem units) {
    const TankAir air{s.intake_c, s.humidity, (s.cut_in + s.cut_out) / 2, s.intake_c};
    report.water_g_h = condensate_g_m3(air) * s.torch.in(litre_min)*60 / 1000;
    report.dew_point_c = dew_point_c(air);
    report.water_class = water_class(report.dew_point_c);
    const std::string point =
        joined({"Without a dryer the pressure dew point is at least ", temperature(report.dew_point_c, units)});
    report.dryness =
        report.water_class == 0
            ? joined({point,
                      ": wetter than class 6 of ISO 8573-1. Drain the tank, and dry and filter the air before the "
                      "torch."})
            : joined({point, ": class ", std::to_string(report.water_class),
                      " of ISO 8573-1 at best. The machine's manual says which class it asks for."});
}

std::string summary_of(const Report& report, const AirSystem& s, UnitSystem units) {
    switch (report.verdict) {
    case AirVerdict::sustained:
        return joined(
            {"Air holds: ", print(s.compressor, units).text(), " delivered, ", print(s.torch, units).text(), " used"});
    case AirVerdict::overworked:
        return joined({"Compressor overworks: ", print_percent(report.demand_share).text(),
                       " running in a steady cut, made for ", print_percent(s.duty).text()});
    case AirVerdict::runs_then_waits:
        return joined({"Air runs ", print(*report.runs).text(), ", then waits ", print(*report.recovers).text()});
    case AirVerdict::not_enough_pressure:
        break;
    }
    const std::string needs =
        joined({"Air pressure too low: the tank needs ", at_least(report.receiver_min.value, units)});
    if (report.receiver_min.value >= s.cut_out)
        return joined({needs, ", full it has ", print(s.cut_out, units).text()});
    return joined({needs, ", the compressor starts at ", print(s.cut_in, units).text()});
}

std::string way_out_of(const Report& report, const AirSystem& s, UnitSystem units) {
    switch (report.verdict) {
    case AirVerdict::sustained:
        if (report.hose_decides)
            return "The hose's drop is near the edge; watch the gauge at the machine while air flows.";
        if (report.water_g_h >= 1)
            return joined({"About ", water_words(report.water_g_h, units), " of water to drain in an hour of arc."});
        return {};
    case AirVerdict::overworked:
        return joined(
            {"Keep the arc on ", print_percent(report.arc_share).text(), " of the time or less, or it overheats."});
    case AirVerdict::runs_then_waits:
        return joined({"The compressor keeps up with the arc on ", print_percent(report.arc_share).text(),
                       " of the time. For more, get one of ", print((1 / s.duty) * s.torch, units).text(), "."});
    case AirVerdict::not_enough_pressure:
        break;
    }
    if (report.hose_drop.value > worth_a_hose && s.torch_pressure <= s.cut_in)
        return joined({"A wider or shorter hose, or a cut-in of ", at_least(report.receiver_min.value, units), "."});
    if (report.receiver_min.value >= s.cut_out)
        return "It takes a compressor that reaches a higher pressure.";
    return joined(
        {"Set the cut-in to ", at_least(report.receiver_min.value, units), " if the pressure switch allows it."});
}

std::vector<std::string> basis_of() {
    constexpr const char* lines[] = {
        "Tank: free air over pressure at a steady temperature, as two engineering notes have it",
        "Hose: Darcy-Weisbach, from a smooth pipe less 20 % to a rough one plus 20 %; couplings not counted",
        "Compressor: 60 % of the time is common practice for piston machines, no source; its manual decides",
        "Dew point: taken at the intake's temperature; the tank is warmer, so it is at least that",
        "Water: Magnus formula, WMO coefficients (from memory); classes of ISO 8573-1:2010, seen in reproductions",
        "Post-flow: its length is a guess until the machine's own is entered",
        "Manuals of machine and compressor; for their supply local code and a licensed electrician decide",
    };
    return {std::begin(lines), std::end(lines)};
}

} // namespace

Report assess(const AirSystem& system, UnitSystem units) {
    Report report;
    add_hose(report, system);
    add_cycle(report, system);
    add_water(report, system, units);
    report.summary = summary_of(report, system, units);
    report.way_out = way_out_of(report, system, units);
    report.basis = basis_of();
    return report;
}

} // namespace torchside::air
