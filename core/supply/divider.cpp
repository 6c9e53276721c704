#include "core/supply/divider.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "generated/words/height.hpp"
#include "generated/words/height_more.hpp"
#include "generated/words/refusal.hpp"

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

void add_shock(Text& text, Voltage before_arc) {
    text += words::height::TapShockVolts{.volts = before_arc};
    text += words::height::tap_wait;
}

words::Slot ratio_slot(double ratio) {
    return words::number(ratio, 2);
}

Text describe(const DividerMatch& match) {
    if (match.runner_up) {
        return words::height::ReadingTwo{.other = ratio_slot(*match.runner_up), .ratio = ratio_slot(match.ratio)};
    }
    if (match.sure) {
        return words::height::ReadingSure{.ratio = ratio_slot(match.ratio)};
    }
    return words::height::ReadingOdd{.ratio = ratio_slot(match.measured)};
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
    if (arc <= Voltage{}) {
        return Fault{"arc_v", words::refusal::no_arc};
    }
    if (reading <= Voltage{}) {
        return Fault{"reading_v", words::refusal::no_reading};
    }
    DividerMatch match;
    match.measured = arc / reading;
    if (match.measured < 1 - arc_uncertainty) {
        return Fault{"reading_v", words::refusal::reading_high};
    }
    const double fits = std::log1p(arc_uncertainty);
    double nearest = distance(match.measured, match.ratio);
    for (const Trade& row : trade) {
        if (distance(match.measured, row.ratio) < nearest) {
            match.ratio = row.ratio;
            nearest = distance(match.measured, row.ratio);
        }
    }
    if (nearest <= fits) {
        for (const Trade& row : trade) {
            if (row.ratio != match.ratio && distance(match.measured, row.ratio) <= fits) {
                match.runner_up = row.ratio;
            }
        }
    }
    match.off = match.measured / match.ratio - 1;
    match.sure = nearest <= fits && !match.runner_up;
    match.text = describe(match);
    return match;
}

Outcome<Gradient> calibrate(const VoltsAtHeight& low, const VoltsAtHeight& high) {
    const Length rise = high.height - low.height;
    if (rise < least_rise) {
        return Fault{"height_mm", words::refusal::HeightsNear{.rise = least_rise}};
    }
    const Voltage gain = high.voltage - low.voltage;
    if (gain <= Voltage{}) {
        return Fault{"arc_v", words::refusal::volts_fall};
    }
    return Gradient{gain.in(volt) / rise.in(mm), volt_per_mm};
}

Length height_at(Voltage voltage, const VoltsAtHeight& known, Gradient gradient) {
    return known.height + Length{(voltage - known.voltage).in(volt) / gradient.in(volt_per_mm), mm};
}

double least_divider(Voltage input_limit, Voltage arc) {
    const double needed = std::max(open_circuit_v, arc.in(volt)) / input_limit.in(volt);
    for (const Trade& row : trade) {
        if (row.ratio >= needed) {
            return row.ratio;
        }
    }
    return std::ceil(needed);
}

ControllerInput check_tap(const HeightControl& control, Voltage arc) {
    ControllerInput report;
    report.controller = at_controller(arc, control.divider_ratio);
    report.before_arc = at_controller(Voltage{open_circuit_v, volt}, control.divider_ratio);
    report.shock = report.before_arc > touchable;
    const bool over = report.controller > control.input_limit;
    if (over || report.before_arc > control.input_limit) {
        report.message =
            Message{.code = over           ? "height_input_over_limit"
                            : report.shock ? "raw_tap"
                                           : "height_input_before_arc",
                    .topic = Topic::height,
                    .severity = Severity::stop,
                    .remedy = words::height::TapLimit{.limit = control.input_limit,
                                                      .ratio = ratio_slot(least_divider(control.input_limit, arc))},
                    .field = "shop.height_control.divider_ratio"};
        if (over) {
            report.message->title = words::height::TapCutting{.volts = report.controller};
        } else {
            report.message->title = words::height::TapBefore{.volts = report.before_arc};
        }
        if (report.shock) {
            add_shock(report.message->remedy, report.before_arc);
        }
    } else if (report.shock) {
        report.message = Message{.code = "raw_tap",
                                 .topic = Topic::height,
                                 .severity = Severity::caution,
                                 .title = words::height::tap_shock,
                                 .field = "shop.height_control.divider_ratio"};
        add_shock(report.message->remedy, report.before_arc);
    }
    report.basis = {words::height_more::basis_divider, words::height_more::basis_before_arc,
                    words::height_more::basis_contact, words::height_more::basis_manuals};
    return report;
}

} // namespace torchside::supply
