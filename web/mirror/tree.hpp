// What is on screen, as a tree of named nodes. The page turns it into real, hidden HTML: a screen reader's, a
// keyboard's and a test's way to every control; the same places answer a finger on the canvas. There is no other list
// of controls.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/mirror/geometry.hpp"

namespace torchside::web {

enum class Role {
    main,
    navigation,
    dialog,
    group,
    heading,
    text,
    button,
    tab,
    radio,
    toggle,
    textbox,
    figure,
    table,
    row,
    columnheader,
    rowheader,
    cell,
    status,
    alert,
    list,
    listitem,
    img,
    separator // an edge that can be moved
};

struct Node {
    std::string id;     // stable, "cut/feed"
    std::string parent; // empty: the root
    Role role = Role::text;
    std::string name;
    std::string value{};
    std::string
        state{}; // words: disabled selected checked expanded collapsed current invalid focused live level1..3 ...
    Rect place{};
    std::string about{}; // a longer description
    Rect seen{};         // the part of the place that is not scrolled away; what a finger can hit
    int region = -1;     // scroll region it lies in
};

class Tree {
public:
    void clear() { nodes_.clear(); }
    void add(Node node) { nodes_.push_back(std::move(node)); }
    [[nodiscard]] const std::vector<Node>& nodes() const { return nodes_; }

    /// The topmost control (not a mere text) under a point; nullptr when there is none.
    [[nodiscard]] const Node* control_at(Point p) const;
    [[nodiscard]] const Node* find(std::string_view id) const;

    /// Records separated by U+001E, fields by U+001F: id, parent, role, name, value, state, x, y, w, h, about.
    [[nodiscard]] std::string wire() const;

private:
    std::vector<Node> nodes_;
};

[[nodiscard]] bool is_control(Role role);

} // namespace torchside::web
