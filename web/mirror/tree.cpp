#include "web/mirror/tree.hpp"

#include <charconv>
#include <cmath>

namespace torchside::web {
namespace {

constexpr const char* role_words[] = {"main",   "navigation", "dialog",       "group",     "heading",  "text",
                                      "button", "tab",        "radio",        "switch",    "textbox",  "figure",
                                      "table",  "row",        "columnheader", "rowheader", "cell",     "status",
                                      "alert",  "list",       "listitem",     "img",       "separator"};

void field(std::string& out, std::string_view text) {
    for (const char c : text) {
        if (c != '\x1e' && c != '\x1f') {
            out += c;
        }
    }
    out += '\x1f';
}

void number(std::string& out, float value) {
    char digits[16];
    const auto end = std::to_chars(digits, digits + sizeof digits, static_cast<int>(std::lround(value))).ptr;
    out.append(digits, end);
    out += '\x1f';
}

} // namespace

bool is_control(Role role) {
    return role == Role::button || role == Role::tab || role == Role::radio || role == Role::toggle ||
           role == Role::textbox || role == Role::separator;
}

const Node* Tree::control_at(Point p) const {
    for (auto node = nodes_.rbegin(); node != nodes_.rend(); ++node) {
        if (is_control(node->role) && node->seen.holds(p) && node->state.find("disabled") == std::string::npos) {
            return &*node;
        }
    }
    return nullptr;
}

const Node* Tree::find(std::string_view id) const {
    for (const Node& node : nodes_) {
        if (node.id == id) {
            return &node;
        }
    }
    return nullptr;
}

std::string Tree::wire() const {
    std::string out;
    out.reserve(nodes_.size() * 96);
    for (const Node& n : nodes_) {
        field(out, n.id);
        field(out, n.parent);
        field(out, role_words[static_cast<std::size_t>(n.role)]);
        field(out, n.name);
        field(out, n.value);
        field(out, n.state);
        number(out, n.place.x);
        number(out, n.place.y);
        number(out, n.place.w);
        number(out, n.place.h);
        field(out, n.about);
        out.back() = '\x1e';
    }
    return out;
}

} // namespace torchside::web
