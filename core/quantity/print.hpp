// Printing numbers for people. What is rounded here is shown and goes no further: no calculation may take its input
// from a printed text or from sensible(); it would carry a display's rounding into an answer.
//
// Numbers are written with the reader's decimal sign (a point unless said), no sign on zero, U+2212 for minus, and from 10 000 on with thin gaps
// (U+2009) between groups of three. Ties go away from zero: 0.125 to 2 decimals is 0.13; a value within 2^-50 of a tie
// counts as one, so that 1.005, which no double can hold, prints as 1.01. NaN and infinity print as an em dash. From
// 1e15 on only ">1e15" is said.
// Every text of a positive quantity is read back by core/quantity/read.hpp to within half a step of its last digit.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/print_band.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

/// A number and its unit apart, as a screen draws them. A duration such as "3 min 20 s" is all in `number`.
struct Printed {
    std::string number{};
    std::string_view unit{};
    [[nodiscard]] std::string text() const; // "6.35 mm"
};

[[nodiscard]] std::string print_fixed(double value, int decimals, Units units = {}); // exactly `decimals` (0..9)
[[nodiscard]] std::string print_plain(double value, int decimals, Units units = {}); // the same without gaps, for money
[[nodiscard]] std::string print_trimmed(double value, int most_decimals, Units units = {}); // without zeros at the end
[[nodiscard]] std::string print_significant(double value, int figures,
                                            Units units = {}); // 1..12: 1234.5 to 3 is "1230"

// Lengths: mm with 3 decimals below 1, 2 below 100, 1 below 1000, none above (zeros dropped), m from 10 m on;
// in with 4 decimals below 1 and 3 above (a zero in the fourth dropped: "0.250"), ft with 1 decimal from 20 ft on.
[[nodiscard]] Printed print(Length length, Units units);
[[nodiscard]] Printed print(Speed speed, Units units); // "1637 mm/min", "64.4 in/min"
/// The feed to dial in, as every screen, chart and file gives it: three figures in these units, for no torch is better
/// known, but never more than the table's fastest. 1641 is 1640 mm/min; 5230 on a table of 3048 mm/min is 3048.
[[nodiscard]] Speed to_dial(Speed feed, Speed fastest, Units units);
[[nodiscard]] Printed print(Acceleration acceleration, Units units); // "500 mm/s²", "19.7 in/s²"
[[nodiscard]] Printed print(Pressure pressure, Units units);         // "4.5 bar", "65 psi"
[[nodiscard]] Printed print(Flow flow, Units units);                 // "150 L/min", "5.3 cfm"
[[nodiscard]] Printed print(Volume volume, Units units);             // "100 L", "26.4 gal"
[[nodiscard]] Printed print(Mass mass, Units units);                 // "0.74 kg", "1.63 lb"
[[nodiscard]] Printed print(Duration duration, Units units = {});    // "0.48 s", "12 s", "3 min 20 s", "1 h 05 min"
[[nodiscard]] Printed print(Current current, Units units = {});      // "45 A", one decimal when there is one
[[nodiscard]] Printed print(Voltage voltage, Units units = {});      // "128 V", one decimal when there is one
[[nodiscard]] Printed print_percent(double share, int decimals = 0, Units units = {});
/// A limit that is an estimate, rounded down, for what is shown must not promise more: "18.5 mm", "0.72 in".
[[nodiscard]] Printed print_at_most(Length thickness, Units units);
/// Water by its mass: "74 g", "2.5 fl oz".
[[nodiscard]] Printed print_water(double grams, Units units);

/// The nearest 1/64 in, reduced. Worked example (also a test): 6 mm is 15/64 in, error -0.0018 in.
struct InchFraction {
    std::string text{}; // "15/64 in", "1 1/2 in", "1 in"
    Length error{};     // what the fraction is more than the length
    bool exact = false; // the error is below 0.00005 in, the last digit an inch is printed to
};
/// None below 1/128 in and above 1000 in.
[[nodiscard]] std::optional<InchFraction> inch_fraction(Length length);

} // namespace torchside
