#include "web/kit/pen.hpp"

#include <algorithm>
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
    const float end = at.x + width(type, text);
    if (witness != nullptr) {
        const ImVec4& clip = list_._CmdHeader.ClipRect;
        witness->push_back(
            {std::string(text),
             type,
             {at.x, at.y, end - at.x, line_height(type)},
             {clip.x / density_, clip.y / density_, (clip.z - clip.x) / density_, (clip.w - clip.y) / density_},
             false,
             colour});
    }
    return end;
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
    if (witness != nullptr) {
        witness->back().text = whole;
        witness->back().shortened = true;
    }
    return text(type, {end, at.y}, colour, "…");
}

namespace {

constexpr std::size_t longest_line = 75; // letters; from the end of a longer one an eye does not find back

std::size_t letters_of(std::string_view words) {
    return static_cast<std::size_t>(std::count_if(
        words.begin(), words.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

} // namespace

std::size_t Pen::line_end(Type type, std::string_view words, float room) const {
    std::size_t best = 0;
    std::size_t kept = 0; // the same, without parting a number from its unit
    std::size_t at = 0;
    float wide = 0;
    std::size_t signs = 0;
    while (at <= words.size()) {
        const std::size_t from = at;
        at = std::min(words.find_first_of(" \n", from), words.size());
        const std::string_view word = words.substr(from, at - from);
        wide += width(type, word);
        signs += letters_of(word) + 1;
        if (wide > room || (best > 0 && signs > longest_line + 1)) {
            break;
        }
        best = at;
        if (at == words.size() || words[at] == '\n') {
            return at;
        }
        const char last = at > from ? words[at - 1] : ' ';
        if (last < '0' || last > '9') {
            kept = at;
        }
        wide += width(type, words.substr(at, 1));
        ++at;
    }
    if (kept > 0 && 2 * kept >= best) {
        return kept;
    }
    if (best > 0) {
        return best;
    }
    // One word is wider than the room: as many letters as go in, and one at least.
    std::size_t letters = 0;
    do {
        best = letters;
        do {
            ++letters;
        } while (letters < words.size() && (static_cast<unsigned char>(words[letters]) & 0xC0) == 0x80);
    } while (letters < words.size() && width(type, words.substr(0, letters)) <= room);
    return best > 0 ? best : letters;
}

float Pen::paragraph(Type type, Point at, Colour colour, std::string_view words, float room, bool draw,
                     Align align) const {
    float y = at.y;
    while (!words.empty()) {
        const std::size_t end = line_end(type, words, room);
        if (draw) {
            const float x = align == Align::left ? at.x : align == Align::centre ? at.x + room / 2 : at.x + room;
            text(type, {x, y}, colour, words.substr(0, end), align);
        }
        y += line_height(type);
        const bool gap = end < words.size() && (words[end] == ' ' || words[end] == '\n');
        words.remove_prefix(end + (gap ? 1 : 0));
    }
    return y - at.y;
}

bool Pen::goes_in(Type type, std::string_view words, Rect box) const {
    if (paragraph(type, {}, {}, words, box.w, false) > box.h + 0.5F) {
        return false;
    }
    while (!words.empty()) { // no word may be broken
        const std::size_t end = std::min(words.find_first_of(" \n"), words.size());
        if (width(type, words.substr(0, end)) > box.w) {
            return false;
        }
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return true;
}

void Pen::words_in(Rect box, Type largest, Colour colour, std::string_view words, Align align) const {
    constexpr Type smaller[] = {Type::figure, Type::second, Type::title, Type::text, Type::label};
    Type type = largest;
    for (const Type candidate : smaller) {
        if (size_of(candidate) < size_of(largest) || candidate == largest) {
            type = candidate;
            if (goes_in(type, words, box)) {
                break;
            }
        }
    }
    const float height = paragraph(type, {}, {}, words, box.w, false);
    if (!goes_in(type, words, box) && height > box.h + 0.5F) { // a person's own long words: what can be shown of them
        const float w = std::min(width(type, words), box.w);
        const float x = align == Align::left     ? box.x
                        : align == Align::centre ? box.centre().x - w / 2
                                                 : box.right() - w;
        text_fit(type, {x, box.centre().y - line_height(type) / 2}, colour, words, box.w);
        return;
    }
    paragraph(type, {box.x, box.centre().y - height / 2}, colour, words, box.w, true, align);
}

Type Pen::unit_type(Type type) {
    return type == Type::figure || type == Type::second ? Type::text : Type::label;
}

float Pen::unit_gap(Type type) {
    return type == Type::figure ? 8.0F : 5.0F;
}

Type Pen::figure_type(Type largest, std::string_view number, std::string_view unit, float room) const {
    for (const Type type : {Type::figure, Type::second, Type::title}) {
        const bool wanted = size_of(type) <= size_of(largest);
        const float tail = unit.empty() ? 0 : unit_gap(type) + width(unit_type(type), unit);
        if (wanted && width(type, number) + tail <= room) {
            return type;
        }
    }
    return Type::strong_label;
}

float Pen::figure(Type type, Point at, Colour ink, Colour quiet, std::string_view number, std::string_view unit) const {
    float x = text(type, at, ink, number);
    if (unit.empty()) {
        return x;
    }
    const Type small = unit_type(type);
    const auto base_line = [](Type of) {
        return (line_height(of) - size_of(of) * face_height) / 2 + size_of(of) * face_ascent;
    };
    x += unit_gap(type);
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
