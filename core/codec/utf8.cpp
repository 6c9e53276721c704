#include "core/codec/utf8.hpp"

namespace torchside::codec {

namespace {

constexpr unsigned bad = 0xFFFFFFFF;

// Takes the next code point off the front; `bad` when it is not whole and shortest.
unsigned next(std::string_view& text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned head = byte(0);
    const std::size_t size = head < 0x80   ? 1
                             : head < 0xC2 ? 0
                             : head < 0xE0 ? 2
                             : head < 0xF0 ? 3
                             : head < 0xF5 ? 4
                                           : 0;
    if (size == 0 || text.size() < size) {
        text.remove_prefix(1);
        return bad;
    }
    unsigned point = size == 1 ? head : head & (0xFFU >> (size + 1));
    for (std::size_t i = 1; i < size; ++i) {
        if ((byte(i) & 0xC0) != 0x80) {
            text.remove_prefix(1);
            return bad;
        }
        point = point << 6 | (byte(i) & 0x3FU);
    }
    text.remove_prefix(size);
    const bool too_long = (size == 3 && point < 0x800) || (size == 4 && point < 0x10000);
    const bool surrogate = point >= 0xD800 && point < 0xE000;
    return too_long || surrogate || point > 0x10FFFF ? bad : point;
}

bool hidden(unsigned p) {
    return p < 0x20 || (p >= 0x7F && p < 0xA0) || p == 0xAD || p == 0x061C || p == 0x180E ||
           (p >= 0x200B && p <= 0x200F) || (p >= 0x2028 && p <= 0x202E) || (p >= 0x2060 && p <= 0x206F) ||
           p == 0xFEFF || (p >= 0xFFF9 && p <= 0xFFFB) || (p >= 0xE0000 && p <= 0xE007F);
}

} // namespace

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        if (next(text) == bad) {
            return false;
        }
    }
    return true;
}

std::size_t letters(std::string_view text) {
    std::size_t count = 0;
    for (; !text.empty(); ++count) {
        static_cast<void>(next(text));
    }
    return count;
}

bool has_hidden(std::string_view utf8) {
    while (!utf8.empty()) {
        if (hidden(next(utf8))) {
            return true;
        }
    }
    return false;
}

std::string without_hidden(std::string_view utf8) {
    std::string out;
    while (!utf8.empty()) {
        if (const unsigned point = next(utf8); !hidden(point)) {
            append_utf8(out, point);
        }
    }
    return out;
}

void append_utf8(std::string& out, unsigned code_point) {
    const unsigned p = code_point;
    const auto put = [&](unsigned byte) { out += static_cast<char>(static_cast<unsigned char>(byte)); };
    if (p < 0x80) {
        put(p);
        return;
    }
    if (p < 0x800) {
        put(0xC0 | p >> 6);
    } else {
        if (p < 0x10000) {
            put(0xE0 | p >> 12);
        } else {
            put(0xF0 | p >> 18);
            put(0x80 | (p >> 12 & 0x3F));
        }
        put(0x80 | (p >> 6 & 0x3F));
    }
    put(0x80 | (p & 0x3F));
}

std::string one_line(std::string_view text, std::size_t most) {
    std::string out;
    for (std::size_t count = 0; !text.empty(); ++count) {
        if (count == most) {
            return out + "...";
        }
        const unsigned point = next(text);
        append_utf8(out, point == bad || hidden(point) ? '?' : point);
    }
    return out;
}

} // namespace torchside::codec
