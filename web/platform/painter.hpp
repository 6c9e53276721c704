// Draws the kit's list by WebGL: one texture, one shader, triangles within clips. Dear ImGui's own OpenGL backend saves
// and restores a state that nobody else has, and its calls bring the compiler's whole GL layer into the page.
#pragma once

struct ImDrawData;
struct ImFontAtlas;

namespace torchside::web::painter {

/// False: the browser has no WebGL.
[[nodiscard]] bool open();
/// The font atlas, new or anew.
void take(ImFontAtlas& atlas);
/// One list over the ground's colour, 0xRRGGBB.
void paint(const ImDrawData& picture, unsigned ground);

} // namespace torchside::web::painter
