#include "web/kit/canvas.hpp"

#include <imgui.h>
#include <imgui_internal.h>

#include "web/kit/fonts.hpp"

// ImGui names its built-in font by this, the only text that what we use of it formats; our fonts go without a name.
int ImFormatString(char* buffer, std::size_t, const char*, ...) {
    *buffer = '\0';
    return 0;
}

namespace torchside::web {

Canvas::Canvas()
    : shared_(std::make_unique<ImDrawListSharedData>()), list_(std::make_unique<ImDrawList>(shared_.get())),
      data_(std::make_unique<ImDrawData>()) {
    // The tolerances of ImGui's default style.
    shared_->CurveTessellationTol = 1.25F;
    shared_->SetCircleTessellationMaxError(0.30F);
    shared_->InitialFlags = ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedLinesUseTex |
                            ImDrawListFlags_AntiAliasedFill | ImDrawListFlags_AllowVtxOffset;
}

Canvas::~Canvas() = default;

ImDrawList& Canvas::start(float pixels_w, float pixels_h) {
    const ImFontAtlas& atlas = font_atlas();
    shared_->TexUvWhitePixel = atlas.TexUvWhitePixel;
    shared_->TexUvLines = atlas.TexUvLines;
    shared_->ClipRectFullscreen = {0, 0, pixels_w, pixels_h};
    list_->_ResetForNewFrame();
    list_->PushTextureID(atlas.TexID);
    list_->PushClipRectFullScreen();
    data_->DisplaySize = {pixels_w, pixels_h};
    return *list_;
}

ImDrawData* Canvas::finish() {
    list_->PopClipRect();
    list_->PopTextureID();
    const ImVec2 size = data_->DisplaySize;
    data_->Clear();
    data_->Valid = true;
    data_->DisplaySize = size;
    data_->FramebufferScale = {1, 1};
    data_->AddDrawList(list_.get());
    return data_.get();
}

} // namespace torchside::web
