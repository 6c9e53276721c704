// One ImGui draw list a frame, without ImGui's windows: the kit draws all of its controls itself, and what is not
// called is not in the page. web/platform/painter.cpp draws the list.
#pragma once

#include <memory>

struct ImDrawData;
struct ImDrawList;
struct ImDrawListSharedData;

namespace torchside::web {

class Canvas {
public:
    Canvas();
    ~Canvas();
    Canvas(const Canvas&) = delete;
    Canvas& operator=(const Canvas&) = delete;

    /// Start an empty picture of this many device pixels; the font atlas must be built.
    ImDrawList& start(float pixels_w, float pixels_h);
    /// The picture, until the next start().
    [[nodiscard]] ImDrawData* finish();

private:
    std::unique_ptr<ImDrawListSharedData> shared_;
    std::unique_ptr<ImDrawList> list_;
    std::unique_ptr<ImDrawData> data_;
};

} // namespace torchside::web
