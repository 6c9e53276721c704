// A person at the screens without a browser: a window of any size, fingers and keys in, what is on screen out. It holds the
// app that the page holds; web/platform/headless stands in for the browser.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/platform/headless.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// Keeps the shop of assets/demo.json from before, as somebody's own or marked as the example.
void keep_shop(bool example = false);

class Person {
public:
    /// Opens the page in a window of that size. Nothing is stored unless `browser()` holds it already.
    explicit Person(float width = 360, float height = 740);

    [[nodiscard]] App& app() { return app_; }
    void resize(float width, float height);
    /// Builds frames until nothing changes any more, and checks each tree: unique ids, parents that stand before their children.
    void look();

    /// Touches the one visible control whose name is `name`, or begins with it and ": " (a name with its value). Throws a
    /// std::runtime_error that lists what is on screen when there is none or more than one that differ.
    void touch(std::string_view name);
    void touch_id(std::string_view id);
    /// Types into the field of that label, as one would with a keyboard, and presses Enter.
    void type(std::string_view label, std::string_view text);
    void back();
    /// Time passes: what the page was asked to keep meanwhile is kept.
    void wait(double ms);
    /// The page is hidden, as before it is closed.
    void hide() { app_.notice("keep", ""); }

    [[nodiscard]] const Node* node(std::string_view id) const { return app_.ui().tree().find(id); }
    [[nodiscard]] const Node* named(std::string_view name) const;
    /// The value of the control of that name.
    [[nodiscard]] std::string reads(std::string_view name) const;
    /// Every text a person can read on the screen now, one a line: name, value and description of each node.
    [[nodiscard]] std::string text() const;
    /// Every line of text that was drawn the last time, with its place.
    [[nodiscard]] const std::vector<Written>& written() const { return written_; }

private:
    App app_;
    Rect screen_;
    double now_ = 1000;
    std::vector<Written> written_;
};

} // namespace torchside::web
