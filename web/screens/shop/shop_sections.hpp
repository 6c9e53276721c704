// The sections of the shop as a table: which fields each shows, under which label.
#pragma once

#include <span>
#include <string>

#include "web/kit/marks.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

struct ShopField {
    const char* path;
    const char* label;
};

struct ShopSection {
    const char* panel;
    const char* title;
    Mark mark;
    std::string (*summary)(const App&);
    std::span<const ShopField> fields;
    /// What the section shows besides its fields (nozzles, choices, pictures); returns the height used. May be null.
    float (*above)(App&, Rect);
    float (*below)(App&, Rect);
};

[[nodiscard]] std::span<const ShopSection> shop_sections();

} // namespace torchside::web
