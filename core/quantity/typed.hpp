// The steps of reading, below the types of read.hpp: letters, numbers, units. Internal to core/quantity.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/read.hpp"

namespace torchside::typed {

// ---- letters: any bytes to a short line of plain ones ----

/// What is left: 0-9 a-z . , / - + space # ' " % $ and four stand-ins: '_' a thin or no-break gap, '|' before a
/// fraction that came as one letter or in raised digits, '^' a degree sign, '?' anything else.
struct Folded {
    enum class Problem { none, too_long, not_text };
    std::array<char, 96> letters{};
    std::size_t size = 0;
    Problem problem = Problem::none;
    [[nodiscard]] std::string_view text() const { return {letters.data(), size}; }
};

inline constexpr std::size_t most_letters = 48;

/// Runs of spaces become one, none at either end. Linear in the text; a text above 4096 bytes is not looked at.
[[nodiscard]] Folded fold(std::string_view text);

// ---- numbers ----

/// over / under: both integers a double holds exactly, so that a unit's factor costs one rounding and no more.
struct Number {
    double over = 0.0;
    double under = 1.0;
    std::string as{};      // "6.5", as its reader writes it, "3/16", "1 1/2"
    bool fraction = false; // written with a line
    bool whole = false;    // an integer, written without a mark
    [[nodiscard]] double value() const { return over / under; }
};

struct Scan {
    std::vector<Number> candidates{};   // one; more when it can be meant in several ways; none with a problem
    Doubt doubt{};                      // why there is more than one
    Unread problem = Unread::no_number; // why there is none
    std::size_t used = 0;               // letters of the text that belong to the number
};

/// The number at the start of the folded text `s`, of a reader who writes decimals behind this sign.
[[nodiscard]] Scan scan_number(std::string_view s, char decimal = '.');

// ---- units ----

enum class Dimension {
    number,
    share,
    money,
    length,
    gauge,
    area,
    speed,
    acceleration,
    duration,
    mass,
    current,
    voltage,
    gradient,
    power,
    apparent_power,
    pressure,
    volume,
    flow,
    temperature,
    angle,
    wire,
};

/// In the base unit of the dimension: (amount - shift) * up / down. Integers where the unit has an exact factor.
struct FoundUnit {
    Dimension dimension = Dimension::number;
    double up = 1.0;
    double down = 1.0;
    double shift = 0.0;
    std::string symbol{};
    [[nodiscard]] double size() const { return up / down; }
};

/// `word` is folded and without spaces: "mm", "in/min", "inches/minute", "\"".
[[nodiscard]] std::optional<FoundUnit> find_unit(std::string_view word, Dimension wanted);

/// The same in whatever dimension knows the word.
[[nodiscard]] std::optional<FoundUnit> find_unit(std::string_view word);

// ---- all of it ----

/// A reading before it is given its type: the values are in `target` units of the field.
using Plain = Reading<double>;

/// What a field wants.
struct Wanted {
    Dimension dimension = Dimension::number;
    FoundUnit bare{};   // the unit of a number without one
    FoundUnit target{}; // the unit of the answer
    bool gauge = false; // a gauge may be handed back
    double sign = 1.0;  // -1 after a minus sign, where one is accepted
    Units units{};      // of the reader
};

[[nodiscard]] Plain read_wanted(std::string_view text, Wanted wanted);

} // namespace torchside::typed
