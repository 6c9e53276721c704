// What is said, apart from how: a text names a phrase of the table of words and holds what stands in its slots. say()
// (say.hpp) makes the sentence, in a language and in the reader's units.
//
// The table is assets/words/en.json, one file a language. tools/embed_words turns each group of it into a header of its
// own, generated/words/GROUP.hpp. There a phrase without slots is a Word, and one with slots a struct of them:
//
//   "circuit": {"holds": "Circuit holds",                     words::circuit::holds
//               "load": "{load} on a {breaker} breaker."}     words::circuit::Load{.breaker = ..., .load = ...}
//
// The members are in alphabetical order. A slot that is unknown or forgotten does not compile.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "core/quantity/quantity.hpp"

namespace torchside {

enum class FieldUnit : std::uint8_t; // core/quantity/field_unit.hpp
enum class Word : std::uint16_t;     // group and place in it, named in generated/words; 0 says nothing
class Text;

namespace words {

/// What stands in a slot. It may point into its source, so it lives no longer than the statement that makes the text.
class Slot {
public:
    enum class Form : std::uint8_t {
        text,
        verbatim,
        fixed,
        trimmed,
        significant,
        percent,
        money,
        length,
        size,
        limit,
        distance,
        speed,
        feed,
        pressure,
        pressure_up,
        flow,
        volume,
        mass,
        water,
        duration,
        current,
        voltage,
        power,
        section,
        temperature,
        low_end,
        high_end
    };

    Slot(const Text& text);
    Slot(Word word) : form_(Form::text), word_(true), value_(static_cast<double>(word)) {}
    Slot(std::string_view name) : form_(Form::verbatim), name_(name) {} // as it is: what a person called it
    Slot(const std::string& name) : Slot(std::string_view{name}) {}
    template <std::size_t N>
    Slot(const char (&english)[N]) = delete; // a phrase belongs in the table

    Slot(int count) : Slot(Form::trimmed, count) {}
    Slot(Length length) : Slot(Form::length, length.in(mm)) {}
    Slot(Speed speed) : Slot(Form::speed, speed.in(mm_min)) {}
    Slot(Pressure pressure) : Slot(Form::pressure, pressure.in(bar)) {}
    Slot(Flow flow) : Slot(Form::flow, flow.in(litre_min)) {}
    Slot(Volume volume) : Slot(Form::volume, volume.in(litre)) {}
    Slot(Mass mass) : Slot(Form::mass, mass.in(kg)) {}
    Slot(Duration duration) : Slot(Form::duration, duration.in(second)) {}
    Slot(Current current) : Slot(Form::current, current.in(ampere)) {}
    Slot(Voltage voltage) : Slot(Form::voltage, voltage.in(volt)) {}
    Slot(ApparentPower power) : Slot(Form::power, power.in(volt_ampere)) {}
    Slot(Form form, double value, int digits = 0)
        : form_(form), digits_(static_cast<std::uint8_t>(digits)), value_(value) {}

    Slot(const Slot&) = delete;
    Slot& operator=(const Slot&) = delete;
    ~Slot() = default;

private:
    friend class torchside::Text;
    Form form_;
    bool word_ = false;
    std::uint8_t digits_ = 0;
    union {
        double value_;
        std::string_view name_;
    };
};

} // namespace words

/// A phrase or several, each with its slots. Empty: nothing is said.
class Text {
public:
    Text() = default;
    Text(Word word);
    Text(Word word, std::initializer_list<const words::Slot*> slots);

    [[nodiscard]] bool empty() const { return bytes_.empty(); }
    /// Another sentence behind it.
    Text& operator+=(const Text& next);

    friend bool operator==(const Text&, const Text&) = default;

private:
    friend class words::Slot;
    friend class Teller; // say.cpp
    std::string bytes_;  // for each phrase: Word (2), number of slots (1), and a slot's form (1), size (2) and content
};

namespace words {

// Figures that their quantity alone does not say how to print.
[[nodiscard]] inline Slot fixed(double value, int decimals) {
    return {Slot::Form::fixed, value, decimals};
}
[[nodiscard]] inline Slot number(double value, int most_decimals) {
    return {Slot::Form::trimmed, value, most_decimals};
}
[[nodiscard]] inline Slot significant(double value, int figures) {
    return {Slot::Form::significant, value, figures};
}
[[nodiscard]] inline Slot percent(double share, int decimals = 0) {
    return {Slot::Form::percent, share, decimals};
}
/// An amount of money to the decimals of its currency, without its sign.
[[nodiscard]] inline Slot money(double amount, int decimals) {
    return {Slot::Form::money, amount, decimals};
}
/// A size as entered: "12.7 mm", "0.5 in".
[[nodiscard]] inline Slot size(Length length) {
    return {Slot::Form::size, length.in(mm)};
}
/// A limit that is an estimate, rounded down, for what is shown must not promise more: "18.5 mm", "0.72 in".
[[nodiscard]] inline Slot limit(Length thickness) {
    return {Slot::Form::limit, thickness.in(mm)};
}
/// How far a wire runs: "15 m", "50 ft".
[[nodiscard]] inline Slot distance(Length length) {
    return {Slot::Form::distance, length.in(mm)};
}
/// A feed that is an estimate, to two figures: "1600 mm/min", "64 in/min".
[[nodiscard]] inline Slot feed(Speed speed) {
    return {Slot::Form::feed, speed.in(mm_min)};
}
/// Up to the printed digit, for a setting rounded down would not be enough: "6.1 bar", "88 psi".
[[nodiscard]] inline Slot at_least(Pressure pressure) {
    return {Slot::Form::pressure_up, pressure.in(bar)};
}
/// Water to drain: "12 g", "0.41 fl oz".
[[nodiscard]] inline Slot water(double grams) {
    return {Slot::Form::water, grams};
}
/// A wire's section: "2.5 mm²", as it is sold by.
[[nodiscard]] inline Slot section(double mm2) {
    return {Slot::Form::section, mm2};
}
[[nodiscard]] inline Slot celsius(double degrees, int decimals = 0) {
    return {Slot::Form::temperature, degrees, decimals};
}
/// The ends of what a field takes, in the key's unit: "0.3" and "150 mm", in inches "0.0119" and "5.9 in".
[[nodiscard]] inline Slot low_end(double value, FieldUnit unit) {
    return {Slot::Form::low_end, value, static_cast<int>(unit)};
}
[[nodiscard]] inline Slot high_end(double value, FieldUnit unit) {
    return {Slot::Form::high_end, value, static_cast<int>(unit)};
}
/// What a metric reader is told, and what one in inches is: the plate is "12.7 mm" to one and "1/2 in" to the other.
[[nodiscard]] Text either(const Slot& metric, const Slot& inch);
/// What a person typed or a drawing is called.
[[nodiscard]] Text verbatim(std::string_view name);

} // namespace words

} // namespace torchside
