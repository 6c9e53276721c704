// Which units the reader of a screen thinks in, and how numbers are written in his language.
#pragma once

namespace torchside {

enum class UnitSystem { metric, inch };

/// What a figure is printed for and read by: units, and the sign before the decimals, '.' or ','.
struct Units {
    UnitSystem system = UnitSystem::metric;
    char decimal = '.';

    constexpr Units() = default;
    constexpr Units(UnitSystem in, char sign = '.') : system(in), decimal(sign) {}

    [[nodiscard]] constexpr bool metric() const { return system == UnitSystem::metric; }
    /// The other system, for what stands beside a figure.
    [[nodiscard]] constexpr Units other() const { return {metric() ? UnitSystem::inch : UnitSystem::metric, decimal}; }
};

} // namespace torchside
