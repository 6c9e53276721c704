// B612 in the sizes the traveller uses, rasterised at the screen's real density.
#pragma once

#include <array>

struct ImFont;

namespace torchside::web {

enum class Type { label, text, title, second, figure };
inline constexpr int type_count = 5;

/// Size in CSS pixels.
[[nodiscard]] float size_of(Type type);

class Fonts {
public:
    /// Rebuild the atlas for this density (device pixels per CSS pixel). Needs an ImGui context; the renderer's old
    /// texture must be dropped by the caller.
    void build(float density);
    [[nodiscard]] ImFont* at(Type type) const { return fonts_[static_cast<std::size_t>(type)]; }

private:
    std::array<ImFont*, type_count> fonts_{};
};

} // namespace torchside::web
