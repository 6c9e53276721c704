#include "core/supply/divider.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"

namespace torchside::supply {
namespace {

struct Trade {
    double ratio;
};
constexpr Trade trade[] = {
// rising
#include "generated/dividers.inc"
};

constexpr double open_circuit_v = 500;
constexpr Voltage touchable{100, volt}; // DC open circuit, 29 CFR 1910.254(b)(3)
constexpr Length least_rise{0.1, mm};

Resistance thevenin(const Divider& divider) {
    const double upper = divider.upper.in(ohm);
    const double lower = divider.lower.in(ohm);
    return Resistance{upper * lower / (upper + lower), ohm};
}

double distance(double measured, double ratio) {
    return std::abs(std::log(measured / ratio));
}

std::string name(double ratio) {
    return joined({print_trimmed(ratio, 2), ":1"});
}

std::string volts(Voltage voltage) {
    return joined({print_trimmed(voltage.in(volt), 1), " V"});
}

std::string describe(const DividerMatch& match) {
    if (match.runner_up)
        return joined({"The reading points to ", name(match.ratio), "; ", name(*match.runner_up),
                       " fits too. Measure the arc at the torch to be sure."});
    if (match.sure)
        return joined({"The reading points to a ", name(match.ratio), " divider."});
    return joined({"The reading gives ", name(match.measured),
                   ", none of the usual ratios; enter it as it is, or check the controller's own scaling."});
}

} // namespace

double ratio(const Divider& divider) {
    return (divider.upper + divider.lower) / divider.lower;
}

double loading_error(const Divider& divider, Resistance input) {
    const Resistance source = thevenin(divider);
    return -(source / (source + input));
}

double loaded_ratio(const Divider& divider, Resistance input) {
    return ratio(divider) * (1 + thevenin(divider) / input);
}

Power heat(const Divider& divider, Voltage arc) {
    const double v = arc.in(volt);
    return Power{v * v / (divider.upper + divider.lower).in(ohm), watt};
}

Voltage at_controller(Voltage arc, double divider_ratio) {
    return arc / divider_ratio;
}

Outcome<DividerMatch> identify_divider(Voltage arc, Voltage reading) {
    if (arc <= Voltage{})
        return Fault{"arc_v", "not above 0 V, accepted is the arc's voltage at the torch, 20 to 500 V"};
    if (reading <= Voltage{})
        return Fault{"reading_v", "not above 0 V, accepted is what the controller showed while cutting"};
    DividerMatch match;
    match.measured = arc / reading;
    if (match.measured < 1 - arc_uncertainty)
        return Fault{"reading_v",
                     "more than the arc's own voltage, accepted is a reading of at most the arc's voltage"};
    const double fits = std::log1p(arc_uncertainty);
    double nearest = distance(match.measured, match.ratio);
    for (const Trade& row : trade)
        if (distance(match.measured, row.ratio) < nearest) {
            match.ratio = row.ratio;
            nearest = distance(match.measured, row.ratio);
        }
    if (nearest <= fits)
        for (const Trade& row : trade)
            if (row.ratio != match.ratio && distance(match.measured, row.ratio) <= fits)
                match.runner_up = row.ratio;
    match.off = match.measured / match.ratio - 1;
    match.sure = nearest <= fits && !match.runner_up;
    match.text = describe(match);
    return match;
}

Outcome<Gradient> calibrate(const VoltsAtHeight& low, const VoltsAtHeight& high) {
    const Length rise = high.height - low.height;
    if (rise < least_rise)
        return Fault{"height_mm",
                     "the second height is not at least 0.1 mm above the first, accepted is 0.1 mm or more"};
    const Voltage gain = high.voltage - low.voltage;
    if (gain <= Voltage{})
        return Fault{"arc_v",
                     "the voltage does not rise with height, accepted is a higher voltage at the greater height; "
                     "cut both at the same feed with the same nozzle"};
    return Gradient{gain.in(volt) / rise.in(mm), volt_per_mm};
}

Length height_at(Voltage voltage, const VoltsAtHeight& known, Gradient gradient) {
    return known.height + Length{(voltage - known.voltage).in(volt) / gradient.in(volt_per_mm), mm};
}

double least_divider(Voltage input_limit, Voltage arc) {
    const double needed = std::max(open_circuit_v, arc.in(volt)) / input_limit.in(volt);
    for (const Trade& row : trade)
        if (row.ratio >= needed)
            return row.ratio;
    return std::ceil(needed);
}

ControllerInput check_tap(const HeightControl& control, Voltage arc) {
    ControllerInput report;
    report.controller = at_controller(arc, control.divider_ratio);
    report.before_arc = at_controller(Voltage{open_circuit_v, volt}, control.divider_ratio);
    report.shock = report.before_arc > touchable;
    const bool over = report.controller > control.input_limit;
    if (over || report.before_arc > control.input_limit) {
        report.severity = TapSeverity::stop;
        report.text =
            joined({"Do not connect: ", over ? "" : "up to ", volts(over ? report.controller : report.before_arc),
                    over ? " while cutting" : " before the arc strikes", " is more than this input's limit of ",
                    volts(control.input_limit), ". Use a divider of ", name(least_divider(control.input_limit, arc)),
                    " or more."});
    }
    if (report.shock) {
        report.severity = std::max(report.severity, TapSeverity::caution);
        report.text += report.text.empty() ? "" : " ";
        report.text += joined({"Shock hazard: up to ", volts(report.before_arc),
                               " may stand on this tap before the arc strikes, and a high-frequency start puts more on "
                               "it. Unplug the machine and wait for its capacitors before you touch it; a 50:1 divider "
                               "inside the machine is safer."});
    }
    report.basis = {
        "Divider: circuit theory",
        "Before the arc strikes: 500 V peak is the limit of the no-load voltage, EN 60974-1 as reproduced in a "
        "manual; start peaks are excluded from it, and no standard bounds them",
        "100 V open circuit unless contact is prevented: 29 CFR 1910.254(b)(3)",
        "The manuals of machine and controller, local code and a licensed electrician decide"};
    return report;
}

} // namespace torchside::supply
