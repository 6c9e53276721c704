// One step back: what was there before the last change, and what that change is called.
//
// The bar that offers it stays on the panel where the change was made and on the screen that one returns to, because that
// is where its effect shows; with the next step from there, or the next change, it goes. So it takes no room for good,
// and what it would undo is always what the user did last.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/schema/intent.hpp"
#include "web/screens/scratch.hpp"

namespace torchside::web {

struct Change {
    std::string name;                   // "Thickness 6 → 8 mm"
    Workbook before;                    // once undone: after
    std::optional<ToolInputs> inputs{}; // what a log row was made of, or was read off the cut that was open
    bool undone = false;
    std::string typed{};      // path of the field it is being typed into
    document::Scalar first{}; // what that field held before
    bool shown = false;       // the user has seen the bar
    int steps = 0;            // from panel to panel or place to place since
};

/// A value of the workbook as a person reads it: "6 mm", "8.25 %", "on", "blank".
[[nodiscard]] std::string value_words(const App& app, std::string_view path, const document::Scalar& value,
                                      const Workbook& book);

} // namespace torchside::web
