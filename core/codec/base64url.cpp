#include "core/codec/base64url.hpp"

namespace torchside::codec {

namespace {

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

} // namespace

std::string to_base64url(std::string_view bytes) {
    std::string out;
    unsigned held = 0;
    unsigned bits = 0;
    for (const char c : bytes) {
        held = held << 8 | static_cast<unsigned char>(c);
        for (bits += 8; bits >= 6; bits -= 6) {
            out += alphabet[held >> (bits - 6) & 63U];
        }
    }
    if (bits > 0) {
        out += alphabet[held << (6 - bits) & 63U];
    }
    return out;
}

bool from_base64url(std::string_view text, std::string& out) {
    unsigned held = 0;
    unsigned bits = 0;
    for (const char c : text) {
        const std::size_t value = alphabet.find(c);
        if (value == std::string_view::npos) {
            return false;
        }
        held = held << 6 | static_cast<unsigned>(value);
        bits += 6;
        if (bits >= 8) {
            bits -= 8;
            out += static_cast<char>(static_cast<unsigned char>(held >> bits & 0xFFU));
        }
    }
    return bits < 6 && (held & ((1U << bits) - 1U)) == 0;
}

} // namespace torchside::codec
