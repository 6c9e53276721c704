#include "core/codec/fold.hpp"

namespace torchside::codec {

std::string folded(std::string_view text) {
    // Of U+00C0 to U+00FF, in UTF-8 C3 80 to C3 BF; where a question mark stands the letter stays as it is.
    constexpr std::string_view plain = "aaaaaaaceeeeiiii?nooooo?ouuuuy??aaaaaaaceeeeiiii?nooooo?ouuuuy?y";
    std::string out;
    out.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c - 'A' + 'a');
        } else if (c == '\xC3' && next >= 0x80 && next <= 0xBF && plain[next - 0x80] != '?') {
            out += plain[next - 0x80];
            ++i;
        } else {
            out += c;
        }
    }
    return out;
}

} // namespace torchside::codec
