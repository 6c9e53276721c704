// Quantities as types: a length cannot be passed where a current is wanted.
//
// A Quantity<Kind> holds one double in the kind's base unit. The base units are the units of the saved workbook (mm,
// mm/min, A, V, s, bar ...), so a value read from a file and written again is the same to the last bit.
//
//   Length t{0.25, inch};        // 6.35 mm
//   double t_mm = t.in(mm);      // 6.35
//   Speed v{60, mm_s};           // 3600 mm/min
//
// Ranges: any finite double; a field's own range is checked where the field is read (core/schema). NaN and infinity
// are refused there and never reach a Quantity that a formula sees.
// Source of the conversion factors: inch = 25.4 mm exactly (yard-and-pound agreement of 1959), the rest follow from the
// SI brochure; psi = 6.894757293168361 kPa (from lbf, in and g_n, all exact).
#pragma once

#include <compare>

namespace torchside {

template <class Kind>
struct Unit {
    double per_base; // how many base units one of this unit is
};

template <class Kind>
class Quantity {
public:
    using kind = Kind;
    constexpr Quantity() = default;
    constexpr Quantity(double amount, Unit<Kind> unit) : base_(amount * unit.per_base) {}

    [[nodiscard]] constexpr double in(Unit<Kind> unit) const { return base_ / unit.per_base; }

    friend constexpr Quantity operator+(Quantity a, Quantity b) { return from(a.base_ + b.base_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return from(a.base_ - b.base_); }
    friend constexpr Quantity operator*(double k, Quantity a) { return from(k * a.base_); }
    friend constexpr Quantity operator*(Quantity a, double k) { return from(k * a.base_); }
    friend constexpr Quantity operator/(Quantity a, double k) { return from(a.base_ / k); }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.base_ / b.base_; }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

private:
    static constexpr Quantity from(double base) {
        Quantity q;
        q.base_ = base;
        return q;
    }
    double base_ = 0.0;
};

using Length = Quantity<struct LengthKind>;
using Area = Quantity<struct AreaKind>;
using Speed = Quantity<struct SpeedKind>;
using Acceleration = Quantity<struct AccelerationKind>;
using Duration = Quantity<struct DurationKind>;
using Mass = Quantity<struct MassKind>;
using Current = Quantity<struct CurrentKind>;
using Voltage = Quantity<struct VoltageKind>;
using Gradient = Quantity<struct GradientKind>; // volts per length: how arc voltage follows torch height
using Resistance = Quantity<struct ResistanceKind>;
using Power = Quantity<struct PowerKind>;
using ApparentPower = Quantity<struct ApparentPowerKind>;
using Pressure = Quantity<struct PressureKind>; // gauge pressure unless a name says absolute
using Volume = Quantity<struct VolumeKind>;
using Flow = Quantity<struct FlowKind>; // free air (at intake conditions)

inline namespace units {
inline constexpr Unit<LengthKind> mm{1.0}, metre{1000.0}, inch{25.4}, foot{304.8};
inline constexpr Unit<AreaKind> mm2{1.0}, m2{1e6}, in2{645.16};
inline constexpr Unit<SpeedKind> mm_min{1.0}, mm_s{60.0}, m_min{1000.0}, in_min{25.4};
inline constexpr Unit<AccelerationKind> mm_s2{1.0}, in_s2{25.4};
inline constexpr Unit<DurationKind> second{1.0}, minute{60.0}, hour{3600.0};
inline constexpr Unit<MassKind> kg{1.0}, lb{0.45359237};
inline constexpr Unit<CurrentKind> ampere{1.0};
inline constexpr Unit<VoltageKind> volt{1.0};
inline constexpr Unit<GradientKind> volt_per_mm{1.0};
inline constexpr Unit<ResistanceKind> ohm{1.0};
inline constexpr Unit<PowerKind> watt{1.0}, kilowatt{1000.0};
inline constexpr Unit<ApparentPowerKind> volt_ampere{1.0};
inline constexpr Unit<PressureKind> bar{1.0}, kilopascal{0.01}, psi{0.06894757293168361};
inline constexpr Unit<VolumeKind> litre{1.0}, us_gallon{3.785411784};
inline constexpr Unit<FlowKind> litre_min{1.0}, cfm{28.316846592};
} // namespace units

/// The section of a wire in thousands of circular mils, as thick cable is sold by in inches: pi/4 * (0.001 in)^2 * 1000.
inline constexpr double mm2_per_kcmil = 0.5067074790974977;

/// Distance covered at a steady speed; the one cross-kind product the code needs everywhere.
constexpr Duration travel_time(Length distance, Speed speed) {
    return Duration{distance.in(mm) / speed.in(mm_s), second};
}

} // namespace torchside
