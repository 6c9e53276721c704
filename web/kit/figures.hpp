// Figures: the number, its unit, and its band, drawn the same way everywhere.
#pragma once

#include <span>
#include <string_view>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

/// A band in plain numbers: what the drawing needs of an Estimate.
struct Span {
    double value = 0, low = 0, high = 0;
};

template <class Q>
[[nodiscard]] Span span_of(const Estimate<Q>& e, Unit<typename Q::kind> unit) {
    return {e.value.in(unit), e.low.in(unit), e.high.in(unit)};
}

/// Hairline = plausible range, thick line = 80 % band, triangle = value, open circles = your cuts.
void draw_band(const Pen& pen, const Tokens& tokens, Rect place, Span span, std::span<const double> cuts = {});

struct FigureLook {
    std::string_view name;
    std::string_view number;
    std::string_view unit;
    std::string_view aside{}; // the other unit, or what it is at the controller
    std::string_view about{}; // band and basis in words, for the mirror and the quiet line
    Span span{};
    bool has_band = true;
    bool chosen = false;
};

/// The feed: as big as the column allows.
[[nodiscard]] float big_figure_height(const Ui& ui);
bool big_figure(Ui& ui, std::string_view id, Rect place, const FigureLook& look, std::span<const double> cuts);

/// A cell of the second rank.
[[nodiscard]] float small_figure_height(const Ui& ui);
/// Small figures side by side, in as many columns as their words can be read in.
struct FigureGrid {
    Rect place; // where it begins, and its width
    std::size_t columns;
    std::size_t rows;
    float high; // a cell

    [[nodiscard]] Rect cell(std::size_t i) const {
        const float w = place.w / static_cast<float>(columns);
        return {place.x + w * static_cast<float>(i % columns), place.y + (high + 1) * static_cast<float>(i / columns),
                w, high};
    }
    [[nodiscard]] float height() const { return (high + 1) * static_cast<float>(rows); }
};
[[nodiscard]] FigureGrid figure_grid(const Ui& ui, Rect place, std::size_t count);
/// Between the cells and below them.
void draw_lines(Ui& ui, const FigureGrid& grid);
bool small_figure(Ui& ui, std::string_view id, Rect place, const FigureLook& look);

} // namespace torchside::web
