// The colours of the paper traveller: daylight on paper, and a dark bay at night.
#pragma once

#include <cstdint>

namespace torchside::web {

/// 0xRRGGBB with full opacity.
struct Colour {
    std::uint32_t rgb = 0;
    friend bool operator==(Colour, Colour) = default;
};

struct Tokens {
    const char* name;
    Colour ground, fill;
    Colour ink, quiet;
    Colour rule, hairline;
    Colour accent;
    Colour caution, stop;
    const char* ground_css;
};

inline constexpr Tokens paper{"paper",    {0xFAF8F2}, {0xF0ECE1}, {0x14171A}, {0x5A5F63}, {0x14171A},
                              {0xCFCABD}, {0x0060A0}, {0x8A4B00}, {0xA1130E}, "#FAF8F2"};
inline constexpr Tokens night{"night",    {0x101418}, {0x181E24}, {0xF2EFE6}, {0xA9B0B5}, {0xD9D6CC},
                              {0x333A40}, {0x7CC4F2}, {0xF0B44A}, {0xFF8B7B}, "#101418"};

/// For those who ask for more contrast: every text at least 7:1 and every line at least 3:1 on its ground (WCAG 2.2, 1.4.6 and
/// 1.4.11; tests/screens/contrast.cpp).
inline constexpr Tokens paper_contrast{"paper",    {0xFFFFFF}, {0xF0F0F0}, {0x000000}, {0x26292C}, {0x000000},
                                       {0x757575}, {0x00477A}, {0x663700}, {0x8C0F0B}, "#FFFFFF"};
inline constexpr Tokens night_contrast{"night",    {0x000000}, {0x14181C}, {0xFFFFFF}, {0xDADDE0}, {0xFFFFFF},
                                       {0x808589}, {0xA3D8FA}, {0xFFC766}, {0xFFB0A5}, "#000000"};

} // namespace torchside::web
