// A table of single figures, each row naming the field it fills, made a struct at compile time.
#pragma once

#include <cstddef>

namespace torchside {

/// What: one row as tools/embed_data writes it.
template <class Figures>
struct FigureRow {
    double Figures::*field;
    double value;
};

/// What: the struct with each row's figure in its field; a field that no row names keeps its own first value.
/// Example: rows {{&Rules::square, 50}, {&Rules::hole, 20}} make {.square = 50, .hole = 20}
template <class Figures, std::size_t count>
[[nodiscard]] constexpr Figures figures_of(const FigureRow<Figures> (&rows)[count]) {
    Figures figures{};
    for (const FigureRow<Figures>& row : rows) {
        figures.*row.field = row.value;
    }
    return figures;
}

} // namespace torchside
