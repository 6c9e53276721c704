// The app's own keypad: big keys for gloved thumbs, with the keys a shop needs and a phone's number pad has not.
#pragma once

#include <span>
#include <string_view>

#include "web/kit/ui.hpp"

namespace torchside::web {

/// The keys beside the digits. Up to seven, in reading order: three right of the digits, the rest below them.
struct Keys {
    std::string_view right[3] = {"", "", ""}; // beside 4 5 6, 1 2 3 and 0 .
    std::string_view below[2] = {"", ""};
};
inline constexpr Keys length_keys{{"/", "⅛", "mm"}, {"\"", "ga"}};
inline constexpr Keys plain_keys{};
inline constexpr Keys signed_keys{{"±"}}; // turns the sign of what is typed

enum class KeypadAnswer { none, done, system_keyboard };

[[nodiscard]] float keypad_height(const Ui& ui);
KeypadAnswer keypad(Ui& ui, Rect place, const Keys& keys);

} // namespace torchside::web
