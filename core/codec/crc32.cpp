#include "core/codec/crc32.hpp"

namespace torchside::codec {

std::uint32_t crc32(std::string_view bytes, std::string_view more) {
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const std::string_view part : {bytes, more}) {
        for (const char c : part) {
            crc ^= static_cast<unsigned char>(c);
            for (int bit = 0; bit < 8; ++bit) {
                crc = crc >> 1 ^ ((crc & 1U) != 0 ? 0xEDB88320U : 0U);
            }
        }
    }
    return ~crc;
}

} // namespace torchside::codec
