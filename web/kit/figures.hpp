// Figures: the number, its unit, and its band, drawn the same way everywhere.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "web/kit/grid.hpp"
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
    Label name;
    std::string_view number;
    std::string_view unit{};
    std::string_view aside{}; // the other unit, or what it is at the controller
    std::string_view about{}; // band and basis in words, for the mirror and the quiet line
    Span span{};              // without a width it has no band
    bool chosen = false;
};

/// The feed, the price: as big as the column allows.
[[nodiscard]] float big_figure_height(const Ui& ui);
bool big_figure(Ui& ui, std::string_view id, Rect place, const FigureLook& look, std::span<const double> cuts);

/// One of the second rank, which stand side by side.
struct FigureCell {
    std::string_view key; // of its id
    std::string name, number, unit{}, aside{}, about{};
    Span span{};
    const char* opens = ""; // the panel
    bool chosen = false;
};
/// How so many of them are laid: in three columns, or in two where their words could not be read.
[[nodiscard]] Grid figure_grid(const Ui& ui, Rect place);
/// Those cells between rules; which was used. The ids are the prefix and the key.
std::optional<std::size_t> small_figures(Ui& ui, std::string_view prefix, const Grid& grid,
                                         std::span<const FigureCell> cells);

} // namespace torchside::web
