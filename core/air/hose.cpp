#include "core/air/hose.hpp"

#include <algorithm>
#include <cmath>

#include "core/air/receiver.hpp"

namespace torchside::air {
namespace {

constexpr double band = 0.25;
constexpr double bar_per_kgf_cm2 = 0.980665; // exact, from g_n
constexpr Basis hose_basis{.published = "pipe_drop_b"};

// Each form is K / p; K in bar2 with p in bar absolute.
struct Constants {
    double a, b, c;
    [[nodiscard]] double mean() const { return (a + b + c) / 3; }
    [[nodiscard]] double low() const { return std::min(std::min({a, b, c}), (1 - band) * mean()); }
    [[nodiscard]] double high() const { return std::max(std::max({a, b, c}), (1 + band) * mean()); }
};

Constants constants_of(const Hose& hose) {
    const double d = hose.bore.in(mm);
    const double length = hose.length.in(metre);
    const double m3_min = hose.flow.in(litre_min) / 1000;
    const double d5 = d * d * d * d * d;
    const double ft3_s = hose.flow.in(cfm) / 60;
    const double a = 7.57e4 * std::pow(m3_min, 1.85) * length / d5 * bar_per_kgf_cm2 * bar_per_kgf_cm2;
    const double b = 1.6e12 * std::pow(m3_min / 60, 1.85) * length / d5 * 1e-4; // kPa2 to bar2
    // r = p / 14.7 psi, so dp p = 0.1025 L Q^2 14.7 / d^5.31 in psi2.
    const double psi2 = 0.1025 * hose.length.in(foot)*ft3_s * ft3_s * 14.7 / std::pow(hose.bore.in(inch), 5.31);
    const double bar_per_psi = Pressure{1, psi}.in(bar);
    return {a, b, psi2 * bar_per_psi * bar_per_psi};
}

double absolute_bar(Pressure gauge) {
    return (gauge + atmosphere).in(bar);
}

Pressure inlet_of(double constant, Pressure outlet) {
    const double p = absolute_bar(outlet);
    return Pressure{(p + std::sqrt(p * p + 4 * constant)) / 2, bar} - atmosphere;
}

} // namespace

DropForms drop_forms(const Hose& hose, Pressure inlet) {
    const Constants k = constants_of(hose);
    const double p = absolute_bar(inlet);
    return {Pressure{k.a / p, bar}, Pressure{k.b / p, bar}, Pressure{k.c / p, bar}};
}

Estimate<Pressure> drop(const Hose& hose, Pressure inlet) {
    const Constants k = constants_of(hose);
    const double p = absolute_bar(inlet);
    return {Pressure{k.mean() / p, bar}, Pressure{k.low() / p, bar}, Pressure{k.high() / p, bar}, hose_basis};
}

Estimate<Pressure> inlet_for(const Hose& hose, Pressure outlet) {
    const Constants k = constants_of(hose);
    return {inlet_of(k.mean(), outlet), inlet_of(k.low(), outlet), inlet_of(k.high(), outlet), hose_basis};
}

} // namespace torchside::air
