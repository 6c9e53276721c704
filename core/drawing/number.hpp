// Numbers and names in the text of a drawing: plain, fast, the same double on every machine.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace torchside::drawing {

/// Reads a decimal number at text[at] ("-1", ".5", "+2.50E-3"), moves `at` behind it. False, and `at` unmoved, when
/// there is none or it does not fit a double.
[[nodiscard]] bool take_decimal(std::string_view text, std::size_t& at, double& value);

/// The whole of `text` but for blanks around it.
[[nodiscard]] bool whole_decimal(std::string_view text, double& value);
[[nodiscard]] bool whole_integer(std::string_view text, std::int32_t& value);

[[nodiscard]] std::string_view without_blanks(std::string_view text);
[[nodiscard]] bool alike(std::string_view a, std::string_view b); // ASCII letters in either case

/// Of a name or value out of a drawing, what may be repeated in a sentence: plain signs, at most 32.
[[nodiscard]] std::string quotable(std::string_view text);

/// Names with a number each, found by halving once sorted. A name given twice keeps its first number.
class NameIndex {
public:
    explicit NameIndex(bool letters_alike) : letters_alike_(letters_alike) {}
    void add(std::string_view name, std::uint32_t number) { entries_.push_back({name, number}); }
    void sort();
    [[nodiscard]] const std::uint32_t* find(std::string_view name) const;

private:
    struct Entry {
        std::string_view name{};
        std::uint32_t number = 0;
    };
    [[nodiscard]] bool before(std::string_view a, std::string_view b) const;
    std::vector<Entry> entries_{};
    bool letters_alike_ = false; // "Plate" is "PLATE"
};

} // namespace torchside::drawing
