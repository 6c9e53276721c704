// What core says, as a metric reader sees it.
#pragma once

#include <optional>
#include <string>

#include "core/words/say.hpp"

namespace torchside::test {

inline std::string said(const Text& text, UnitSystem units = UnitSystem::metric) {
    return say(text, units);
}

inline std::string said(const Message& message, UnitSystem units = UnitSystem::metric) {
    return say(message, units);
}

inline std::string summary(const Message& message, UnitSystem units = UnitSystem::metric) {
    return say_summary(message, units);
}

inline std::optional<Severity> severity(const std::optional<Message>& message) {
    return message ? std::optional(message->severity) : std::nullopt;
}

} // namespace torchside::test
