// Drawing in CSS pixels on ImGui's draw list; the only file that turns them into device pixels.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/kit/fonts.hpp"
#include "web/kit/theme.hpp"
#include "web/mirror/geometry.hpp"

struct ImDrawList;

namespace torchside::web {

enum class Align { left, centre, right };

/// One line of text as it was drawn, for tests that ask whether everything can be read.
struct Written {
    std::string text;
    Type type{};
    Rect place{};           // the line box
    Rect clip{};            // what of the screen it may be seen in
    bool shortened = false; // it ends in "…"
    Colour colour{};
};

class Pen {
public:
    Pen(ImDrawList& list, const Fonts& fonts, float density) : list_(list), fonts_(fonts), density_(density) {
        if (witness != nullptr) {
            witness->clear(); // this picture replaces the last
        }
    }

    /// Width of one line.
    [[nodiscard]] float width(Type type, std::string_view text) const;
    [[nodiscard]] static float line_height(Type type);

    /// One line; `at` is the top left (or top centre, top right) of the line box. Returns the x where the text ends.
    float text(Type type, Point at, Colour colour, std::string_view text, Align align = Align::left) const;
    /// The same, cut with "…" when it is wider than `room`.
    float text_fit(Type type, Point at, Colour colour, std::string_view text, float room) const;
    /// Words wrapped into `room`, a number kept with its unit; returns the height used. With `draw` false it only measures.
    float paragraph(Type type, Point at, Colour colour, std::string_view text, float room, bool draw = true,
                    Align align = Align::left) const;
    /// Words in a box, in as many lines as go in, in the middle of its height; in smaller type where they need it.
    void words_in(Rect box, Type largest, Colour colour, std::string_view words, Align align = Align::left) const;
    /// A figure and its unit on one base line: unit smaller and quiet, after a thin space. Returns the x of the end.
    float figure(Type type, Point at, Colour ink, Colour quiet, std::string_view number, std::string_view unit) const;
    /// The largest type up to `largest` in which figure() keeps within `room`.
    [[nodiscard]] Type figure_type(Type largest, std::string_view number, std::string_view unit, float room) const;

    void fill(Rect place, Colour colour, float opacity = 1.0F) const;
    void frame(Rect place, Colour colour, float thickness) const;
    void line(Point a, Point b, Colour colour, float thickness) const;
    void hline(float x0, float x1, float y, Colour colour, float thickness) const;
    void vline(float x, float y0, float y1, Colour colour, float thickness) const;
    void triangle(Point a, Point b, Point c, Colour colour) const;
    void disc(Point centre, float radius, Colour colour) const;
    void ring(Point centre, float radius, Colour colour, float thickness) const;
    void polyline(const Point* points, int count, Colour colour, float thickness, bool closed = false) const;
    void polygon(const Point* points, int count, Colour colour) const; // convex
    void dashes(Point a, Point b, Colour colour, float thickness, float dash, float gap) const;

    void push_clip(Rect place) const;
    void pop_clip() const;

    [[nodiscard]] float density() const { return density_; }

    /// Where a test wants every line written down. Nothing in the page sets it, so its linker leaves it out.
    static inline std::vector<Written>* witness = nullptr;

private:
    [[nodiscard]] std::size_t line_end(Type type, std::string_view words, float room) const;
    [[nodiscard]] bool goes_in(Type type, std::string_view words, Rect box) const;
    [[nodiscard]] static Type unit_type(Type type);
    [[nodiscard]] static float unit_gap(Type type);

    ImDrawList& list_;
    const Fonts& fonts_;
    float density_;
};

} // namespace torchside::web
