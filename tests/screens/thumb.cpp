#include "tests/screens/thumb.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

namespace torchside::web {
namespace {

constexpr float least_seen = 24; // of a control, to be found and hit
constexpr float one_drag = 0.7F; // of the view
constexpr int most_drags = 20;

bool in_view(const Node& node) {
    return node.seen.h >= std::min(least_seen, node.place.h);
}

} // namespace

void Thumb::bring_into_view(std::string_view id) {
    for (int i = 0; i < most_drags; ++i) {
        const Node* node = person_.node(id);
        if (node == nullptr || in_view(*node) || node->region < 0) {
            return;
        }
        Ui& ui = person_.app().ui();
        const Rect view = ui.regions[static_cast<std::size_t>(node->region)].view;
        const float away =
            node->place.bottom() > view.bottom() ? node->place.bottom() - view.bottom() : node->place.y - view.y;
        const float most = view.h * one_drag;
        person_.app().wheel(view.centre(), {0, std::clamp(away, -most, most)});
        person_.look();
        ++touches_;
    }
}

void Thumb::tap_id(std::string_view id) {
    bring_into_view(id);
    const Node* node = person_.node(id);
    if (node == nullptr || !in_view(*node)) {
        throw std::runtime_error("not to be seen: " + std::string(id) + '\n' + person_.text());
    }
    const Node* hit = person_.app().ui().tree().control_at(node->seen.centre());
    if (hit == nullptr || hit->id != id) {
        throw std::runtime_error(std::string(id) + " lies under " +
                                 (hit != nullptr ? hit->id : std::string("nothing")));
    }
    ++touches_;
    person_.touch_id(std::string(id));
}

void Thumb::tap(std::string_view name) {
    const Node* node = person_.named(name);
    if (node == nullptr) {
        throw std::runtime_error("no control is called '" + std::string(name) + "':\n" + person_.text());
    }
    tap_id(std::string(node->id));
}

void Thumb::keys(std::string_view text) {
    for (const char c : text) {
        tap_id(std::string("key/") + (c == '/' ? "over" : c == '"' ? "inch" : std::string(1, c)));
    }
}

void Thumb::letters(std::string_view text) {
    const std::string id = person_.app().ui().edit() ? person_.app().ui().edit()->id : std::string();
    if (id.empty()) {
        throw std::runtime_error("no field is open for '" + std::string(text) + "'");
    }
    touches_ += static_cast<int>(text.size()) + 1; // and its Enter
    person_.app().ui().enter(id, text, true);
    person_.look();
}

void Thumb::read(std::string_view text) {
    for (const Node& node : person_.app().ui().tree().nodes()) {
        if ((node.name + " | " + node.value + " | " + node.about).find(text) != std::string::npos) {
            bring_into_view(std::string(node.id));
            return;
        }
    }
    throw std::runtime_error("nothing says '" + std::string(text) + "':\n" + person_.text());
}

} // namespace torchside::web
