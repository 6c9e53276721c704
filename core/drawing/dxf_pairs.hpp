// The text of a DXF file as what it is: pairs of lines, a group code and its value. Internal to reading.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/words/text.hpp"

namespace torchside::drawing {

class DxfPairs {
public:
    struct Place {
        std::size_t offset = 0;
        std::size_t line = 0; // lines before it
    };

    explicit DxfPairs(std::string_view text) : text_(text) {}

    /// Reads the next pair that is not a comment. False at the end of the text and at a fault.
    bool next();
    [[nodiscard]] int code() const { return code_; }
    [[nodiscard]] std::string_view value() const { return value_; } // without blanks around it
    [[nodiscard]] bool is(int code, std::string_view value) const { return code_ == code && value_ == value; }
    [[nodiscard]] bool real(double& out); // false is a fault
    [[nodiscard]] bool integer(std::int32_t& out);

    [[nodiscard]] Place place() const { return {offset_, line_}; }    // behind the pair
    [[nodiscard]] Place pair_place() const { return pair_; }          // before it
    void go_to(const Place& place);                                   // the next pair is the one there
    [[nodiscard]] std::size_t line() const { return pair_.line + 1; } // of the pair's code, from 1
    [[nodiscard]] Word fault() const { return fault_; }

private:
    [[nodiscard]] bool take_line(std::string_view& line);
    std::string_view text_;
    std::size_t offset_ = 0;
    std::size_t line_ = 0;
    Place pair_{};
    int code_ = -1;
    std::string_view value_{};
    Word fault_{};
};

} // namespace torchside::drawing
