// Readers of one dimension each, by the steps below core/quantity/read.hpp: the program has a field's unit and needs
// none of these; tests of what is typed read better with them.
#pragma once

#include <string_view>

#include "core/quantity/field_unit.hpp"
#include "core/quantity/typed.hpp"

namespace torchside::test {

using typed::Dimension;

template <class Kind>
Reading<Quantity<Kind>> typed_as(const typed::Plain& plain) {
    using Q = Quantity<Kind>;
    constexpr Unit<Kind> base{1.0};
    if (const auto* a = plain.answer()) {
        return Answer<Q>{Q{a->value, base}, a->as, a->looks_like_share};
    }
    if (const auto* q = plain.question()) {
        Question<Q> question{q->doubt, {}};
        for (const auto& a : q->answers) {
            question.answers.push_back({Q{a.value, base}, a.as});
        }
        return question;
    }
    if (const auto* g = plain.gauge()) {
        return *g;
    }
    return *plain.refusal();
}

template <class Kind>
Reading<Quantity<Kind>> read_as(std::string_view text, Dimension dimension, std::string_view bare) {
    typed::Wanted w;
    w.dimension = dimension;
    w.bare = *typed::find_unit(bare, dimension);
    return typed_as<Kind>(read_wanted(text, w));
}

inline std::string_view pick(UnitSystem units, std::string_view metric, std::string_view in_inch) {
    return units == UnitSystem::metric ? metric : in_inch;
}

inline Reading<Length> read_length(std::string_view text, UnitSystem bare) {
    return read_as<LengthKind>(text, Dimension::length, pick(bare, "mm", "in"));
}
inline Reading<Speed> read_speed(std::string_view text, UnitSystem bare) {
    return read_as<SpeedKind>(text, Dimension::speed, pick(bare, "mm/min", "in/min"));
}
inline Reading<Acceleration> read_acceleration(std::string_view text, UnitSystem bare) {
    return read_as<AccelerationKind>(text, Dimension::acceleration, pick(bare, "mm/s2", "in/s2"));
}
inline Reading<Pressure> read_pressure(std::string_view text, UnitSystem bare) {
    return read_as<PressureKind>(text, Dimension::pressure, pick(bare, "bar", "psi"));
}
inline Reading<Flow> read_flow(std::string_view text, UnitSystem bare) {
    return read_as<FlowKind>(text, Dimension::flow, pick(bare, "l/min", "cfm"));
}
inline Reading<Volume> read_volume(std::string_view text, UnitSystem bare) {
    return read_as<VolumeKind>(text, Dimension::volume, pick(bare, "l", "gal"));
}
inline Reading<Mass> read_mass(std::string_view text, UnitSystem bare) {
    return read_as<MassKind>(text, Dimension::mass, pick(bare, "kg", "lb"));
}
inline Reading<Duration> read_duration(std::string_view text, Unit<DurationKind> bare) {
    return read_as<DurationKind>(text, Dimension::duration,
                                 bare.per_base >= hour.per_base     ? "h"
                                 : bare.per_base >= minute.per_base ? "min"
                                                                    : "s");
}
inline Reading<Current> read_current(std::string_view text) {
    return read_as<CurrentKind>(text, Dimension::current, "a");
}
inline Reading<Voltage> read_voltage(std::string_view text) {
    return read_as<VoltageKind>(text, Dimension::voltage, "v");
}
inline Reading<double> read_number(std::string_view text) {
    return read_field(text, FieldUnit::none, UnitSystem::metric);
}
inline Reading<double> read_percent(std::string_view text) {
    return read_field(text, FieldUnit::share, UnitSystem::metric);
}

} // namespace torchside::test
