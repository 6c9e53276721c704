// One output current on one circuit, solved: what assess() reads its report from, and what the search for the highest
// current (limits.hpp) asks again and again.
#pragma once

#include <optional>

#include "core/supply/assess.hpp"
#include "core/supply/breaker.hpp"
#include "core/supply/line.hpp"
#include "core/supply/machine_input.hpp"

namespace torchside::supply {

/// Common practice, no source: a generator is not loaded past this share of its rating.
inline constexpr double generator_loading = 0.8;

/// The machine's tolerance of its supply voltage, IEC 60974-1 (from memory).
inline constexpr double line_tolerance = 0.10;

/// Duty period, IEC 60974-1 (from memory).
inline constexpr double duty_period_s = 600.0;

struct Load {
    Line line{};
    Conversion conversion{};
    ApparentPower machine{}; // at the machine, while cutting
    Draw draw{};             // while cutting
    Current rated{};         // at the rated load voltage, before any drop
    Current asked{}; // what wires must be sized for: draw.current, or what it would be without drop if not delivered
    Current total{}; // draw.current + other
    ApparentPower source{}; // at the panel or generator
    double duty = 1.0;
    Current effective{};
    bool effective_from_plate = false;
    BreakerState breaker{};
    CircuitVerdict verdict = CircuitVerdict::holds;
    Current motor{};              // the compressor's part of line.other
    bool generator_within = true; // loaded to 80 % at most
    bool generator_short = false; // the verdict is the generator's
};

[[nodiscard]] Load solve_load(const Input& input, Current output);

} // namespace torchside::supply
