#include "core/cut/balance.hpp"

#include <cmath>
#include <numbers>

#include "core/cut/conduction.hpp"
#include "core/cut/kerf_heat.hpp"
#include "core/stock/properties.hpp"
#include "core/words/range.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::cut {
namespace {

bool inside(double x, double low, double high) {
    return x >= low && x <= high;
} // false for NaN

std::optional<Fault> refusal(const CutSetup& plate) {
    if (!inside(plate.thickness.in(mm), 0.1, 200.0)) {
        return Fault{"job.thickness_mm", words::range(0.1, 200, FieldUnit::mm)};
    }
    if (!inside(plate.current.in(ampere), 5.0, 1000.0)) {
        return Fault{"job.current_a", words::range(5, 1000, FieldUnit::ampere)};
    }
    if (plate.bore && !inside(plate.bore->in(mm), 0.2, 20.0)) {
        return Fault{"shop.machine.nozzles.bore_mm", words::range(0.2, 20, FieldUnit::mm)};
    }
    if (plate.arc && !inside(plate.arc->in(volt), 20.0, 500.0)) {
        return Fault{"arc_v", words::range(20, 500, FieldUnit::volt)};
    }
    if (!inside(plate.height.in(mm), 0.0, 25.0)) {
        return Fault{"cut_height_mm", words::range(0, 25, FieldUnit::mm)};
    }
    return std::nullopt;
}

// eta U I = melt_slope v + loss G(p_slope v), all per unit of power and m/s.
struct Equation {
    double power;
    double melt_slope;
    double loss;
    double p_slope;

    double excess(double v) const { return melt_slope * v + loss * conduction_shape(p_slope * v) - power; }
    double log_slope(double v) const { // d excess / d ln v
        const double p = p_slope * v;
        return melt_slope * v + loss * conduction_shape(p) * conduction_slope(p);
    }
};

// The excess rises and is convex in ln v, so Newton's steps in ln v come down from the feed without conduction and
// never pass the root; they end at the last bits, which is what makes native and wasm agree.
double root(const Equation& e) {
    double v = e.power / e.melt_slope;
    for (int i = 0; i < 100; ++i) {
        const double step = e.excess(v) / e.log_slope(v);
        v *= std::exp(-step);
        if (std::abs(step) <= 3e-16) {
            break;
        }
    }
    return v;
}

constexpr double slowest = 1e-3 / 60000.0; // m/s; below it the plate takes all the heat, and p would underflow

} // namespace

KerfHeat kerf_heat(Metal metal, const Terms& terms) {
    const stock::Properties& m = stock::properties(metal);
    const double enthalpy =
        terms.superheat.value * stock::melt_heat_j_kg(m) - terms.burnt_share.value * terms.burning_heat.value;
    return {m.density_kg_m3 * enthalpy, m.conductivity_w_m_k * (m.melting_k - stock::room_k),
            stock::diffusivity_m2_s(m)};
}

Voltage arc_volts(const CutSetup& plate, const Terms& terms) {
    if (plate.arc) {
        return *plate.arc;
    }
    return Voltage{terms.arc_offset.value + terms.arc_per_a.value * plate.current.in(ampere) +
                       terms.arc_per_mm.value * plate.thickness.in(mm) +
                       terms.arc_per_height.value * (plate.height.in(mm)-terms.reference_height.value),
                   volt};
}

Length bore(const CutSetup& plate, const Terms& terms) {
    if (plate.bore) {
        return *plate.bore;
    }
    const double i = plate.current.in(ampere);
    const double density = i > terms.large_current.value ? terms.density_large.value : terms.density.value;
    return Length{std::sqrt(4.0 * i / (std::numbers::pi * density)), mm};
}

Length kerf(const CutSetup& plate, const Terms& terms) {
    return terms.kerf_width.value * bore(plate, terms);
}

Outcome<Balance> balance(const CutSetup& plate, const Terms& terms) {
    if (auto fault = refusal(plate)) {
        return *fault;
    }
    const KerfHeat heat = kerf_heat(plate.metal, terms);
    const Voltage arc = arc_volts(plate, terms);
    const Length width = terms.melt_width.value * bore(plate, terms);
    const double t = plate.thickness.in(metre);
    const double w = width.in(metre);
    const double power = arc.in(volt)*plate.current.in(ampere);

    const Equation e{terms.efficiency.value * power, t * w * heat.melt_j_m3, t * terms.wall.value * heat.conduction_w_m,
                     w / (4.0 * heat.diffusivity_m2_s)};
    if (e.excess(slowest) > 0.0) {
        return Fault{"job.thickness_mm", words::refusal::no_melting};
    }
    const double v = root(e);
    const double melt = e.melt_slope * v;
    return Balance{Speed{v * 1000.0, mm_s},
                   arc,
                   width,
                   Power{power, watt},
                   Power{melt, watt},
                   Power{e.loss * conduction_shape(e.p_slope * v), watt}};
}

Speed balance_feed(const CutSetup& plate, const Terms& terms) {
    const Outcome<Balance> b = balance(plate, terms);
    return b ? b.value().feed : Speed{};
}

} // namespace torchside::cut
