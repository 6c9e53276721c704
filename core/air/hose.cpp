#include "core/air/hose.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/air/receiver.hpp"

namespace torchside::air {
namespace {

constexpr double roughness_mm = 0.01, roughest_mm = 0.05; // prior: hose rubber
constexpr double margin = 0.2;                            // prior
constexpr double gas_constant = 287.05, room_k = 293.15, viscosity = 1.82e-5;
constexpr Basis hose_basis{.published = "darcy_haaland"};

/// p1^2 - p2^2, in bar2.
double loss(const Hose& hose, double rough_mm) {
    const double d = hose.bore.in(metre);
    const double mass = hose.flow.in(litre_min) / 60000 * 101325 / (gas_constant * room_k);
    const double flux = 4 * mass / (std::numbers::pi * d * d);
    const double reynolds = flux * d / viscosity;
    if (!(reynolds > 0)) {
        return 0;
    }
    const double root = -1.8 * std::log10(std::pow(rough_mm / (3.7 * hose.bore.in(mm)), 1.11) + 6.9 / reynolds);
    // Below a Reynolds number of 6.9 the logarithm turns; there the flow is laminar by far.
    const double friction = std::max(64 / reynolds, root > 0 ? 1 / (root * root) : 0.0);
    return friction * hose.length.in(metre) / d * flux * flux * gas_constant * room_k * 1e-10;
}

struct Losses {
    double value, low, high;
};

Losses losses(const Hose& hose) {
    return {loss(hose, roughness_mm), (1 - margin) * loss(hose, 0), (1 + margin) * loss(hose, roughest_mm)};
}

double absolute_bar(Pressure gauge) {
    return (gauge + atmosphere).in(bar);
}

Pressure drop_of(double loss, Pressure inlet) {
    const double p = absolute_bar(inlet);
    return Pressure{p - std::sqrt(std::max(0.0, p * p - loss)), bar};
}

Pressure inlet_of(double loss, Pressure outlet) {
    const double p = absolute_bar(outlet);
    return Pressure{std::sqrt(p * p + loss), bar} - atmosphere;
}

} // namespace

Estimate<Pressure> drop(const Hose& hose, Pressure inlet) {
    const Losses k = losses(hose);
    return {drop_of(k.value, inlet), drop_of(k.low, inlet), drop_of(k.high, inlet), hose_basis};
}

Estimate<Pressure> inlet_for(const Hose& hose, Pressure outlet) {
    const Losses k = losses(hose);
    return {inlet_of(k.value, outlet), inlet_of(k.low, outlet), inlet_of(k.high, outlet), hose_basis};
}

} // namespace torchside::air
