#include "core/supply/arc_check.hpp"

#include <cmath>

#include "core/supply/divider.hpp"
#include "generated/words/arc.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::supply {
namespace {

constexpr double wanders_v = 2.0;   // rule of thumb
constexpr double not_an_arc = 0.30; // our estimate

/// "2.7 V × 50 = 135 V", or the volts alone where nothing divides them.
Text product(Voltage reading, double ratio, double torch) {
    if (ratio == 1.0) {
        return words::arc::Whole{.volts = words::fixed(torch, 0)};
    }
    return words::arc::Product{.ratio = words::number(ratio, 2),
                               .reading = words::number(reading.in(volt), 2),
                               .torch = words::fixed(torch, 0)};
}

void doubt(ArcCheck& c, Voltage expected, double ratio, Voltage reading) {
    const double far = std::abs(std::log(c.torch / expected));
    if (far < std::log1p(arc_uncertainty)) {
        return;
    }
    const auto match = identify_divider(expected, reading);
    const bool fits = match.ok() && (match.value().sure || match.value().runner_up) && match.value().ratio != ratio;
    if (fits && match.value().runner_up != ratio) {
        c.state = ArcState::divider;
        c.ratio = match.value().ratio;
    } else if (far >= std::log1p(not_an_arc)) {
        c.state = ArcState::no_reading;
    }
}

void describe(ArcCheck& c, const Text& product, double volts_off, double ratio) {
    const double off = std::abs(volts_off);
    switch (c.state) {
    case ArcState::as_expected:
        c.text = words::arc::AsExpected{.product = product};
        c.to_do = words::arc::as_expected_do;
        break;
    case ArcState::high:
        c.text = words::arc::High{.off = words::fixed(off, 0), .product = product};
        c.to_do = words::arc::high_do;
        break;
    case ArcState::low:
        c.text = words::arc::Low{.off = words::fixed(off, 0), .product = product};
        c.to_do = words::arc::low_do;
        break;
    case ArcState::divider:
        c.text = words::arc::Divider{
            .entered = words::number(ratio, 2), .product = product, .ratio = words::number(*c.ratio, 2)};
        c.to_do = words::arc::DividerDo{.ratio = words::number(*c.ratio, 2)};
        break;
    case ArcState::no_reading:
        c.text = words::arc::NoReading{.product = product};
        c.to_do = words::arc::no_reading_do;
        break;
    }
    if (c.in_band && (c.state == ArcState::high || c.state == ArcState::low)) {
        c.to_do += words::arc::in_band;
    }
}

} // namespace

Outcome<ArcCheck> check_arc(const Estimate<Voltage>& expected, double divider_ratio, Voltage reading) {
    if (!(reading > Voltage{})) {
        return Fault{"reading_v", words::refusal::no_reading};
    }
    ArcCheck c;
    c.torch = divider_ratio * reading;
    // As the screen has it: 135 V against 130 V is 5 V, whatever the decimals.
    const double torch_v = std::round(c.torch.in(volt));
    const double off_v = torch_v - std::round(expected.value.in(volt));
    c.off = Voltage{off_v, volt};
    c.in_band = c.torch >= expected.low && c.torch <= expected.high;
    c.state = std::abs(off_v) <= wanders_v ? ArcState::as_expected : off_v > 0 ? ArcState::high : ArcState::low;
    doubt(c, expected.value, divider_ratio, reading);
    describe(c, product(reading, divider_ratio, torch_v), off_v, divider_ratio);
    return c;
}

} // namespace torchside::supply
