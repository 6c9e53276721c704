#include "core/air/receiver.hpp"

#include <algorithm>

namespace torchside::air {
namespace {

// Free air that the receiver holds between two pressures, over the flow it gains or loses: minutes.
Duration exchange(Volume receiver, Pressure span, double net_l_min, Pressure atmospheric) {
    const double held = receiver.in(litre)*std::max(0.0, span / atmospheric);
    return Duration{held / net_l_min, minute};
}

} // namespace

std::optional<Duration> run_down(Volume receiver, Pressure from, Pressure to, Flow out, Flow in, Pressure atmospheric) {
    const double net = (out - in).in(litre_min);
    if (net <= 0) {
        return {};
    }
    return exchange(receiver, from - to, net, atmospheric);
}

std::optional<Duration> fill(Volume receiver, Pressure from, Pressure to, Flow out, Flow in, Pressure atmospheric) {
    const double net = (in - out).in(litre_min);
    if (net <= 0) {
        return {};
    }
    return exchange(receiver, to - from, net, atmospheric);
}

} // namespace torchside::air
