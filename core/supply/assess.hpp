// Whether this current holds on this circuit, what gives first, and the highest current that holds.
#pragma once

#include "core/gear/country.hpp"
#include "core/gear/machine.hpp"
#include "core/quantity/quantity.hpp"
#include "core/supply/circuit.hpp"
#include "core/supply/report.hpp"

namespace torchside::supply {

/// Arc voltage as a straight line in the current, for this plate and height; a search over the current needs it.
struct ArcLine {
    Voltage offset{80, volt};
    Resistance per_ampere{0.4, ohm};

    [[nodiscard]] constexpr Voltage at(Current current) const {
        return offset + Voltage{per_ampere.in(ohm)*current.in(ampere), volt};
    }
};

struct Input {
    Circuit circuit{};
    Machine machine{};
    Current output{45, ampere};
    ArcLine arc{}; // while cutting this plate
    Country country = Country::us;
};

[[nodiscard]] Report assess(const Input& input);

} // namespace torchside::supply
