// CRC-32 as in ITU-T V.42: polynomial 0x04C11DB7 reflected, start and final xor 0xFFFFFFFF.
//
// Finds every error burst of up to 32 bits, so every single damaged byte.
// Example: "123456789" has 0xCBF43926.
#pragma once

#include <cstdint>
#include <string_view>

namespace torchside::codec {

/// Of some bytes and those that follow them.
[[nodiscard]] std::uint32_t crc32(std::string_view bytes, std::string_view more = {});

} // namespace torchside::codec
