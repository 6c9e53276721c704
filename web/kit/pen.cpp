#include "web/kit/pen.hpp"

#include <cmath>
#include <imgui.h>

namespace torchside::web {
namespace {

ImU32 packed(Colour c, float opacity = 1.0F) {
    return IM_COL32((c.rgb >> 16) & 0xFF, (c.rgb >> 8) & 0xFF, c.rgb & 0xFF, static_cast<int>(opacity * 255.0F + 0.5F));
}

} // namespace

float Pen::line_height(Type type) {
    return size_of(type) * 1.3F;
}

float Pen::width(Type type, std::string_view text) const {
    const ImFont* font = fonts_.at(type);
    return font->CalcTextSizeA(font->FontSize, 1e9F, 0.0F, text.data(), text.data() + text.size()).x / density_;
}

float Pen::text(Type type, Point at, Colour colour, std::string_view text, Align align) const {
    if (align != Align::left) {
        const float w = width(type, text);
        at.x -= align == Align::centre ? w / 2 : w;
    }
    const ImFont* font = fonts_.at(type);
    const float top = at.y + (line_height(type) - size_of(type) * face_height) / 2;
    const ImVec2 pixel{std::round(at.x * density_), std::round(top * density_)};
    list_.AddText(font, font->FontSize, pixel, packed(colour), text.data(), text.data() + text.size());
    return at.x + width(type, text);
}

float Pen::text_fit(Type type, Point at, Colour colour, std::string_view whole, float room) const {
    if (width(type, whole) <= room) {
        return text(type, at, colour, whole);
    }
    std::size_t keep = whole.size();
    const float dots = width(type, "…");
    while (keep > 0 && width(type, whole.substr(0, keep)) + dots > room) {
        do {
            --keep;
        } while (keep > 0 && (static_cast<unsigned char>(whole[keep]) & 0xC0) == 0x80);
    }
    const float end = text(type, at, colour, whole.substr(0, keep));
    return text(type, {end, at.y}, colour, "…");
}

namespace {

/// Where a line of text ends that the room would let run on past what an eye finds back from.
const char* shortened(const char* from, const char* stop) {
    constexpr int longest = 75; // signs
    const char* space = nullptr;
    int signs = 0;
    for (const char* at = from; at < stop; ++at) {
        if (*at == '\n') {
            return stop;
        }
        if (*at == ' ') {
            space = at;
        }
        signs += (static_cast<unsigned char>(*at) & 0xC0) != 0x80 ? 1 : 0;
        if (signs > longest) {
            return space != nullptr ? space : at;
        }
    }
    return stop;
}

} // namespace

float Pen::paragraph(Type type, Point at, Colour colour, std::string_view words, float room, bool draw) const {
    const ImFont* font = fonts_.at(type);
    const float height = line_height(type);
    float y = at.y;
    const char* from = words.data();
    const char* const end = from + words.size();
    while (from < end) {
        const char* stop = font->CalcWordWrapPositionA(1.0F, from, end, room * density_);
        if (stop == from) {
            ++stop; // narrower than one letter: never stand still
        }
        stop = shortened(from, stop);
        const char* newline = from;
        while (newline < stop && *newline != '\n') {
            ++newline;
        }
        if (draw) {
            text(type, {at.x, y}, colour, {from, static_cast<std::size_t>(newline - from)});
        }
        y += height;
        from = newline < stop ? newline + 1 : stop;
        while (from < end && *from == ' ') {
            ++from;
        }
    }
    return y - at.y;
}

float Pen::figure(Type type, Point at, Colour ink, Colour quiet, std::string_view number, std::string_view unit) const {
    float x = text(type, at, ink, number);
    if (unit.empty()) {
        return x;
    }
    const Type small = type == Type::figure || type == Type::second ? Type::text : Type::label;
    const auto base_line = [](Type of) {
        return (line_height(of) - size_of(of) * face_height) / 2 + size_of(of) * face_ascent;
    };
    x += type == Type::figure ? 8.0F : 5.0F;
    return text(small, {x, at.y + base_line(type) - base_line(small)}, quiet, unit);
}

void Pen::fill(Rect r, Colour colour, float opacity) const {
    list_.AddRectFilled({std::round(r.x * density_), std::round(r.y * density_)},
                        {std::round(r.right() * density_), std::round(r.bottom() * density_)}, packed(colour, opacity));
}

void Pen::frame(Rect r, Colour colour, float t) const {
    fill({r.x, r.y, r.w, t}, colour);
    fill({r.x, r.bottom() - t, r.w, t}, colour);
    fill({r.x, r.y + t, t, r.h - 2 * t}, colour);
    fill({r.right() - t, r.y + t, t, r.h - 2 * t}, colour);
}

void Pen::line(Point a, Point b, Colour colour, float thickness) const {
    list_.AddLine({a.x * density_, a.y * density_}, {b.x * density_, b.y * density_}, packed(colour),
                  thickness * density_);
}

void Pen::hline(float x0, float x1, float y, Colour colour, float t) const {
    fill({x0, y - t / 2, x1 - x0, t}, colour);
}

void Pen::vline(float x, float y0, float y1, Colour colour, float t) const {
    fill({x - t / 2, y0, t, y1 - y0}, colour);
}

void Pen::triangle(Point a, Point b, Point c, Colour colour) const {
    const float s = density_;
    list_.AddTriangleFilled({a.x * s, a.y * s}, {b.x * s, b.y * s}, {c.x * s, c.y * s}, packed(colour));
}

void Pen::disc(Point c, float radius, Colour colour) const {
    list_.AddCircleFilled({c.x * density_, c.y * density_}, radius * density_, packed(colour));
}

void Pen::ring(Point c, float radius, Colour colour, float thickness) const {
    list_.AddCircle({c.x * density_, c.y * density_}, radius * density_, packed(colour), 0, thickness * density_);
}

void Pen::polyline(const Point* points, int count, Colour colour, float thickness, bool closed) const {
    list_.PathClear();
    for (int i = 0; i < count; ++i) {
        list_.PathLineTo({points[i].x * density_, points[i].y * density_});
    }
    list_.PathStroke(packed(colour), closed ? ImDrawFlags_Closed : 0, thickness * density_);
}

void Pen::polygon(const Point* points, int count, Colour colour) const {
    list_.PathClear();
    for (int i = 0; i < count; ++i) {
        list_.PathLineTo({points[i].x * density_, points[i].y * density_});
    }
    list_.PathFillConvex(packed(colour));
}

void Pen::hatch(const Point* points, int count, Colour colour) const {
    constexpr float apart = 7;
    constexpr float half = 6;
    float at = 0;
    for (int i = 0; i + 1 < count; ++i) {
        const Point a = points[i];
        const Point d{points[i + 1].x - a.x, points[i + 1].y - a.y};
        const float length = std::hypot(d.x, d.y);
        for (; at < length; at += apart) {
            const Point c{a.x + d.x * at / length, a.y + d.y * at / length};
            const Point across{d.y / length * half, -d.x / length * half};
            line({c.x - across.x, c.y - across.y}, {c.x + across.x, c.y + across.y}, colour, 1.5F);
        }
        at -= length;
    }
}

void Pen::dashes(Point a, Point b, Colour colour, float thickness, float dash, float gap) const {
    const float dx = b.x - a.x;
    const float dy = b.y - a.y;
    const float length = std::sqrt(dx * dx + dy * dy);
    for (float d = 0; d < length; d += dash + gap) {
        const float e = std::min(d + dash, length);
        line({a.x + dx * d / length, a.y + dy * d / length}, {a.x + dx * e / length, a.y + dy * e / length}, colour,
             thickness);
    }
}

void Pen::push_clip(Rect r) const {
    list_.PushClipRect({std::round(r.x * density_), std::round(r.y * density_)},
                       {std::round(r.right() * density_), std::round(r.bottom() * density_)}, true);
}

void Pen::pop_clip() const {
    list_.PopClipRect();
}

} // namespace torchside::web
