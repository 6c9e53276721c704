// The unit of a workbook key: how it is named in files, and how a field shows it and reads it for each reader.
//
// A reader in inches sees the counterpart: in, ft, in/min, psi, cfm, gal, °F, kcmil, V/in; a price of a kilogram is one
// of a pound. Horsepower is kW to a metric reader. Values are always in the key's own unit.
// Factors: core/quantity/quantity.hpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/quantity/read.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

enum class FieldUnit : std::uint8_t {
    none, // a plain number
    mm,
    metre,
    mm2,
    mm_min,
    mm_s2,
    second,
    minute,
    ampere,
    volt,
    volt_per_mm,
    volt_ampere,
    horsepower,
    bar,
    litre,
    litre_min,
    celsius,
    degree,
    share, // 0.3, typed and shown as 30 %
    money,
    money_per_kg,
    per_metre,
    kw_per_m3_min, // power of a compressor for the air it delivers
    awg,
    days,
    kilohm,
};

/// As files and the command line name it: "mm/min", "share"; empty for a plain number.
[[nodiscard]] std::string_view unit_name(FieldUnit unit);

/// As a field shows it: "6.35 mm", "30 %", "77 °F". Money goes without its currency.
[[nodiscard]] std::string print_field(double value, FieldUnit unit, Units units);

/// What was typed into a field. A bare number is in the reader's unit; a share is a percentage: "30 %" and "30" are 0.3,
/// "0.3" is 0.003. Only a temperature and an angle may be negative.
[[nodiscard]] Reading<double> read_field(std::string_view text, FieldUnit unit, Units units);

/// An end of what a field accepts, in the reader's unit, rounded inwards to 3 figures so that it is accepted itself: 0.3 mm is
/// "0.3", in inches "0.0119". The high end goes with its unit: 150 mm is "150 mm", in inches "5.9 in".
[[nodiscard]] std::string print_low_end(double value, FieldUnit unit, Units units);
[[nodiscard]] std::string print_high_end(double value, FieldUnit unit, Units units);

/// The unit of a bare number in such a field: "mm", "in", "%"; empty for a plain number and for money.
[[nodiscard]] std::string bare_unit(FieldUnit unit, Units units);

} // namespace torchside
