// B612 in the sizes the traveller uses, rasterised at the screen's real density.
#pragma once

#include <array>

struct ImFont;
struct ImFontAtlas;

namespace torchside::web {

enum class Type { label, strong_label, text, title, second, figure };
inline constexpr int type_count = 6;

/// B612's own measures, as shares of its size (its hhea table: ascent 1930, descent -500, 2000 units to the em). ImGui
/// takes the height from ascender to descender for a font's size, a style sheet takes the em.
inline constexpr float face_height = 1.215F;
inline constexpr float face_ascent = 0.965F;

/// How much larger words are drawn for a hand in a glove, which reads from farther away; figures are large already.
inline constexpr float glove_scale = 1.2F;

/// Sizes of the two largest types where figures are to be read from a meter away, times the scale of such figures.
inline constexpr float far_figure = 118;
inline constexpr float far_second = 56;

/// Size of the em in CSS pixels, as the fonts were built.
[[nodiscard]] float size_of(Type type);

/// The one font atlas.
[[nodiscard]] ImFontAtlas& font_atlas();

class Fonts {
public:
    /// Rebuild the atlas for this density (device pixels per CSS pixel) and this scale of words; the painter must be
    /// given it anew. `accents`: every size has the letters of Latin-1, and not only those that names are written in. `far`: the
    /// two largest types are that many times as large as is read from a meter away, and have figures alone; 0: as ever.
    void build(float density, float scale = 1, bool accents = false, float far = 0);
    [[nodiscard]] ImFont* at(Type type) const { return fonts_[static_cast<std::size_t>(type)]; }

private:
    std::array<ImFont*, type_count> fonts_{};
};

} // namespace torchside::web
