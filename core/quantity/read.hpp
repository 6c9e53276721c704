// Reading what people type. A text is understood, or asked back, or refused with the reason; it is never guessed at.
//
// A number is  6 | 6.5 | 6,5 | .125 | 1 700 (thin or no-break gap) | 3/16 | 1 1/2 | 1-1/2 | 1½ | ⅛ , then a unit or
// none. Letters count alike in both cases; typographic quotes and primes are inch and foot marks; a unit may be written
// "in/min", "in per min" or "ipm".
//
//   typed                         read as
//   6                             in the field's own unit (core/quantity/field_unit.hpp)
//   3/16                          a length: inches, in either system; anything else: the field's own unit
//   11/4                          Question: 2 3/4 in, or was 1 1/4 in meant? (any improper fraction)
//   1,000                         Question: 1000 or 1.000? (comma, then exactly three digits; 0,125 is 0.125). Of a
//                                 reader who writes decimals behind a comma, 1.000 is asked back instead
//   6 mil                         Question below 40: 0.006 in or, in the workshop's slang, 6 mm? From 40 on: 1/1000 in
//   16 ga, 16ga, #16, gauge 16    Gauge{16}; the metal is needed, see core/stock/thickness.hpp
//   4' 6", 3 min 20 s             a larger unit, then a smaller one of the same kind
//   0.3 in a percentage           0.3 %, marked as one that 30 % may be meant by
//   nan, inf, 1e3, -2, 5 A for a length, two numbers, more than 15 digits, more than 48 letters, no number, bytes that
//   are not UTF-8                 Refusal
//
// Works for any bytes whatever. Texts of an answer hold only what this file wrote; why something was refused or is asked
// back is a code. A value is the double nearest to what was typed, also in inches; else off by at
// most 2 units in the last place.
//
// Worked example (also a test): read_length_or_gauge("3/16\"", UnitSystem::metric) is 4.7625 mm, as "3/16 in".
// Source of the forms: common practice, no source. Factors: core/quantity/quantity.hpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

template <class Q>
struct Answer {
    Q value{};
    std::string as{};              // how it was understood: "3/16 in", "6.5 mm"
    bool looks_like_share = false; // "0.3" in a percentage: 30 % may have been meant
};

/// Why a text can be meant in more than one way.
enum class Doubt : std::uint8_t {
    fraction, // more than 1
    comma,    // this mark parts thousands, or decimals
    mil       // a thousandth of an inch, or slang for a millimetre
};

/// The text can be meant in more than one way: 2 to 4 answers to choose from, the likeliest first.
template <class Q>
struct Question {
    Doubt doubt{};
    std::vector<Answer<Q>> answers{};
};

struct Gauge {
    int number = 0; // 0..999; which gauges exist depends on the metal
};

/// Why a text cannot be used.
enum class Unread : std::uint8_t {
    nothing,
    too_long,
    not_text,
    not_understood,
    no_number, // nor "nan" or "inf"
    negative,
    plus_sign,
    power_of_ten,
    many_digits,
    many_numbers,
    marks_clash,         // points and commas
    unfinished_fraction, // "3/"
    long_fraction,
    zero_below,
    mark_before_fraction, // "1.5 1/2"
    large_fraction,       // "1 5/4"
    unknown_unit,
    other_quantity, // a unit of something else
    gauge,          // where a gauge says nothing
    broken_gauge,
    no_such_gauge,    // in the table of the metal
    sold_by_thickness // the metal has no gauges
};

struct Refusal {
    Unread why{};
};

template <class Q>
class [[nodiscard]] Reading {
public:
    Reading(Answer<Q> a) : held_(std::move(a)) {}
    Reading(Question<Q> q) : held_(std::move(q)) {}
    Reading(Gauge g) : held_(g) {}
    Reading(Refusal r) : held_(r) {}

    /// Exactly one of the four is not null.
    [[nodiscard]] const Answer<Q>* answer() const { return std::get_if<0>(&held_); }
    [[nodiscard]] const Question<Q>* question() const { return std::get_if<1>(&held_); }
    [[nodiscard]] const Gauge* gauge() const { return std::get_if<2>(&held_); } // from read_length_or_gauge alone
    [[nodiscard]] const Refusal* refusal() const { return std::get_if<3>(&held_); }

private:
    std::variant<Answer<Q>, Question<Q>, Gauge, Refusal> held_;
};

/// A thickness: millimetres or inches, or the number of a gauge. Other fields: core/quantity/field_unit.hpp.
[[nodiscard]] Reading<Length> read_length_or_gauge(std::string_view text, Units units);

} // namespace torchside
