#include "core/supply/arc_check.hpp"

#include <cmath>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/divider.hpp"

namespace torchside::supply {
namespace {

constexpr double wanders_v = 2.0;   // rule of thumb
constexpr double not_an_arc = 0.30; // our estimate

std::string whole_volts(double v) {
    return joined({print_fixed(v, 0), " V"});
}

std::string name(double ratio) {
    return joined({print_trimmed(ratio, 2), ":1"});
}

std::string product(Voltage reading, double ratio, double torch) {
    if (ratio == 1.0)
        return whole_volts(torch);
    return joined({print_trimmed(reading.in(volt), 2), " V × ", print_trimmed(ratio, 2), " = ", whole_volts(torch)});
}

void doubt(ArcCheck& c, Voltage expected, double ratio, Voltage reading) {
    const double far = std::abs(std::log(c.torch / expected));
    if (far < std::log1p(arc_uncertainty))
        return;
    const auto match = identify_divider(expected, reading);
    const bool fits = match.ok() && (match.value().sure || match.value().runner_up) && match.value().ratio != ratio;
    if (fits && match.value().runner_up != ratio) {
        c.state = ArcState::divider;
        c.ratio = match.value().ratio;
    } else if (far >= std::log1p(not_an_arc)) {
        c.state = ArcState::no_reading;
    }
}

void say(ArcCheck& c, const std::string& product, double volts_off, double ratio) {
    const std::string off = whole_volts(std::abs(volts_off));
    switch (c.state) {
    case ArcState::as_expected:
        c.text = joined({product, ": as expected."});
        c.to_do = "Nothing to turn. If the cut is good, log it.";
        break;
    case ArcState::high:
        c.text = joined({product, ", ", off, " above: torch high or electrode worn."});
        c.to_do = "Check the height with a gauge. If it is right, look at the electrode's pit.";
        break;
    case ArcState::low:
        c.text = joined({product, ", ", off, " below: torch low or nozzle worn."});
        c.to_do = "Check the height with a gauge. If it is right, look at the nozzle's bore.";
        break;
    case ArcState::divider:
        c.text = joined({"Not a ", name(ratio), " divider: that would be ", product, ". The reading points to ",
                         name(*c.ratio), "."});
        c.to_do = joined({"Enter ", name(*c.ratio), ", then read again."});
        break;
    case ArcState::no_reading:
        c.text = joined({product, " is not the arc of this cut, and no usual divider fits."});
        c.to_do = "Read it while the torch cuts. Then check the controller's own scaling and the wiring.";
        break;
    }
    if (c.in_band && (c.state == ArcState::high || c.state == ArcState::low))
        c.to_do += " Our own figure may be off as much until you log a reading.";
}

} // namespace

Outcome<ArcCheck> check_arc(const Estimate<Voltage>& expected, double divider_ratio, Voltage reading) {
    if (!(reading > Voltage{}))
        return Fault{"reading_v", "Enter what the controller shows while cutting, above 0 V."};
    ArcCheck c;
    c.torch = divider_ratio * reading;
    // As the screen has it: 135 V against 130 V is 5 V, whatever the decimals.
    const double torch_v = std::round(c.torch.in(volt));
    const double off_v = torch_v - std::round(expected.value.in(volt));
    c.off = Voltage{off_v, volt};
    c.in_band = c.torch >= expected.low && c.torch <= expected.high;
    c.state = std::abs(off_v) <= wanders_v ? ArcState::as_expected : off_v > 0 ? ArcState::high : ArcState::low;
    doubt(c, expected.value, divider_ratio, reading);
    say(c, product(reading, divider_ratio, torch_v), off_v, divider_ratio);
    return c;
}

} // namespace torchside::supply
