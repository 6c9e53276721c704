// The frame of a link by other code than the program's, to make links that are wrong inside and right around it.
#pragma once

#include <string>
#include <string_view>

#include "core/codec/crc32.hpp"
#include "core/store/record.hpp"

namespace torchside::test {

inline constexpr std::string_view link_letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// The bytes of "x=letters".
inline std::string link_bytes(std::string_view link) {
    std::string bits;
    for (const char c : link.substr(2)) {
        const auto value = link_letters.find(c);
        for (int bit = 5; bit >= 0; --bit) {
            bits += (value >> bit & 1U) != 0 ? '1' : '0';
        }
    }
    std::string out;
    for (std::size_t i = 0; i + 8 <= bits.size(); i += 8) {
        unsigned byte = 0;
        for (std::size_t j = i; j < i + 8; ++j) {
            byte = byte * 2 + (bits[j] == '1' ? 1 : 0);
        }
        out += static_cast<char>(static_cast<unsigned char>(byte));
    }
    return out;
}

inline std::string link_of(char kind, std::string_view bytes) {
    std::string bits;
    for (const char c : bytes) {
        for (unsigned bit = 8; bit-- > 0;) {
            bits += (static_cast<unsigned char>(c) >> bit & 1U) != 0 ? '1' : '0';
        }
    }
    while (bits.size() % 6 != 0) {
        bits += '0';
    }
    std::string out{kind, '='};
    for (std::size_t i = 0; i < bits.size(); i += 6) {
        std::size_t value = 0;
        for (std::size_t j = i; j < i + 6; ++j) {
            value = value * 2 + (bits[j] == '1' ? 1 : 0);
        }
        out += link_letters[value];
    }
    return out;
}

/// Version, kind and content with a checksum that fits.
inline std::string checked_link(char kind, std::string_view content) {
    std::string bytes(content);
    const std::uint32_t check = codec::crc32(content);
    for (unsigned shift = 32; shift > 0;) {
        shift -= 8;
        bytes += static_cast<char>(static_cast<unsigned char>(check >> shift & 0xFFU));
    }
    return link_of(kind, bytes);
}

} // namespace torchside::test
