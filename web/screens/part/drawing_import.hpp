// A drawing on its way into the job: read aside by the browser, then taken as the job's part, or refused, or asked
// about.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/drawing/drawing.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

class App;
class Body;

struct DrawingImport {
    enum class Step { none, reading, refused, unit };
    Step step = Step::none;
    std::string name{};
    double share = 0.0;                        // reading: how much is done
    std::string fault{};                       // refused: why
    std::optional<drawing::Drawing> drawing{}; // unit: what was read
};

/// What the page tells: "begin" with the file's name, "progress" with the share done, "fault" with the reason, "ready"
/// with how many numbers there are to take.
void drawing_news(App& app, std::string_view kind, std::string_view text, double number);

/// The rows that open a drawing and say how that goes.
void drawing_rows(Body& body);

} // namespace torchside::web
