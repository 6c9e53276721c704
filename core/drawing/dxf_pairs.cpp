#include "core/drawing/dxf_pairs.hpp"

#include <cstring>

#include "core/drawing/number.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

constexpr int comment = 999;
constexpr int highest_code = 1071;

// A group code: few digits, blanks around them, -5 to 1071.
bool group_code(std::string_view line, int& code) {
    std::int32_t n = 0;
    if (!whole_integer(line, n) || n < -5 || n > highest_code) {
        return false;
    }
    code = n;
    return true;
}

} // namespace

bool DxfPairs::take_line(std::string_view& line) {
    if (offset_ >= text_.size()) {
        return false;
    }
    const char* begin = text_.data() + offset_;
    const std::size_t left = text_.size() - offset_;
    const void* end = std::memchr(begin, '\n', left);
    const std::size_t length = end ? static_cast<std::size_t>(static_cast<const char*>(end) - begin) : left;
    line = without_blanks({begin, length});
    offset_ += length + (end ? 1 : 0);
    ++line_;
    return true;
}

bool DxfPairs::next() {
    do {
        pair_ = {offset_, line_};
        std::string_view line;
        if (fault_ != Word{} || !take_line(line)) {
            return false;
        }
        if (!group_code(line, code_)) {
            if (line.empty() && without_blanks(text_.substr(offset_)).empty()) {
                return false; // empty lines at the very end
            }
            fault_ = words::drawing_fault::no_code;
            return false;
        }
        if (!take_line(value_)) {
            fault_ = words::drawing_fault::no_value;
            return false;
        }
    } while (code_ == comment);
    return true;
}

bool DxfPairs::real(double& out) {
    if (!whole_decimal(value_, out)) {
        fault_ = words::drawing_fault::no_number;
        return false;
    }
    return true;
}

bool DxfPairs::integer(std::int32_t& out) {
    if (!whole_integer(value_, out)) {
        fault_ = words::drawing_fault::no_whole_number;
        return false;
    }
    return true;
}

void DxfPairs::go_to(const Place& place) {
    offset_ = place.offset;
    line_ = place.line;
}

} // namespace torchside::drawing
