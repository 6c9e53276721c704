#include "web/kit/fonts.hpp"

#include <cmath>
#include <imgui.h>
#include <span>

namespace torchside::web {
namespace {

// Made by tools/embed_font: subsets of B612 cut to what the app prints.
constexpr unsigned char regular_otf[] = {
#include "generated/b612_regular.inc"
};
constexpr unsigned char bold_otf[] = {
#include "generated/b612_bold.inc"
};
constexpr unsigned char figures_otf[] = {
#include "generated/b612_figures.inc"
};

struct Cut {
    float size;
    std::span<const unsigned char> face;
};
constexpr Cut cuts[type_count] = {{13, regular_otf}, {13, bold_otf}, {15, regular_otf},
                                  {15, bold_otf},    {25, bold_otf}, {60, figures_otf}};
float scale_of_words = 1;
float scale_of_far = 0;

// The big figures print digits only: a full alphabet at 180 device pixels would cost start-up time for nothing.
constexpr ImWchar figure_range[] = {0x20, 0x20, 0x2B, 0x39, 0x2212, 0x2212, 0};
constexpr ImWchar clock_range[] = {0x20, 0x20, 0x2B, 0x3A, 0x2212, 0x2212, 0};
constexpr ImWchar second_range[] = {0x20, 0x7E, 0xB0,   0xB0,   0xB5,   0xB5,   0xBC, 0xBE,
                                    0xD7, 0xD7, 0x215B, 0x215E, 0x2212, 0x2212, 0};
constexpr ImWchar accented_range[] = {0x20, 0x7E, 0xA0, 0xFF, 0x215B, 0x215E, 0x2212, 0x2212, 0};
constexpr ImWchar text_range[] = {0x20,   0x7E,   0xA0,   0xFF,   0x3B7,  0x3C0,  0x2013, 0x2026, 0x2032, 0x2033,
                                  0x2082, 0x2083, 0x20AC, 0x20AC, 0x215B, 0x215E, 0x2190, 0x2193, 0x2206, 0x2206,
                                  0x2212, 0x2212, 0x2248, 0x2248, 0x2264, 0x2265, 0x2713, 0x2713, 0};

/// Every glyph costs start-up time at a phone's density: a size gets the signs it prints, and no more.
const ImWchar* range_of(Type type, bool accents) {
    switch (type) {
    case Type::figure:
        return figure_range;
    case Type::second:
        if (scale_of_far > 0) {
            return clock_range;
        }
        [[fallthrough]];
    case Type::strong_label:
        return accents ? accented_range : second_range;
    default:
        return text_range;
    }
}

} // namespace

float size_of(Type type) {
    if (scale_of_far > 0 && type >= Type::second) {
        return (type == Type::figure ? far_figure : far_second) * scale_of_far;
    }
    const float scale = type < Type::second ? scale_of_words : 1;
    return cuts[static_cast<std::size_t>(type)].size * scale;
}

ImFontAtlas& font_atlas() {
    static ImFontAtlas atlas;
    return atlas;
}

void Fonts::build(float density, float scale, bool accents, float far) {
    scale_of_words = scale;
    scale_of_far = far;
    ImFontAtlas& atlas = font_atlas();
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoMouseCursors; // height stays a power of two: WebGL 1 wants it
    atlas.TexDesiredWidth = density > 2.0F ? 1024 : 512;
    for (int i = 0; i < type_count; ++i) {
        ImFontConfig config;
        config.FontDataOwnedByAtlas = false;
        config.OversampleH = 1;
        config.OversampleV = 1;
        config.PixelSnapH = true;
        config.GlyphRanges = range_of(static_cast<Type>(i), accents);
        const std::span<const unsigned char> face = cuts[i].face;
        const float pixels = std::round(size_of(static_cast<Type>(i)) * face_height * density);
        ImFont* font = atlas.AddFontFromMemoryTTF(const_cast<unsigned char*>(face.data()),
                                                  static_cast<int>(face.size()), pixels, &config);
        font->FallbackChar = '?';
        fonts_[static_cast<std::size_t>(i)] = font;
    }
    atlas.Build();
    for (ImFont* font : fonts_) {
        font->AddRemapChar(0x2009, 0x20); // thin spaces of grouped numbers: the face has none
        font->AddRemapChar(0x202F, 0x20);
    }
}

} // namespace torchside::web
