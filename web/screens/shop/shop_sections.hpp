// The sections of the shop as a table: which fields each shows, under which label.
#pragma once

#include <span>
#include <string>

#include "web/kit/marks.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

struct ShopSection {
    const char* panel;
    Word title;
    Mark mark;
    std::string (*summary)(const App&);
    std::span<const PathLabel> fields;
    /// What the section shows besides its fields (nozzles, choices, pictures). May be null.
    void (*above)(Body&);
    void (*below)(Body&);
};

[[nodiscard]] std::span<const ShopSection> shop_sections();

} // namespace torchside::web
