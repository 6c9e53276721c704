// What a control is called: a phrase of the table of words, or a text that was made of one; never a literal. A table of controls holds phrases and is
// constexpr; what draws them resolves each in the user's language.
//
//     body.line("air/water", words::compressor::water, "12 g");
//     body.button("reach/use", app.say(words::common::Use{.what = amps}));
#pragma once

#include <string>
#include <string_view>

#include "core/words/say.hpp"

namespace torchside::web {

/// As large as a string_view. A text must outlive it.
class Label {
public:
    constexpr Label() = default;
    constexpr Label(Word word) : size_(static_cast<std::size_t>(word)) {}
    constexpr Label(std::string_view text) : text_(text.data()), size_(text.data() != nullptr ? text.size() : 0) {}
    Label(const char*) = delete; // a phrase belongs in the table
    Label(const std::string& text) : Label(std::string_view{text}) {}
    /// What is the same in every language: "+", "—".
    [[nodiscard]] static constexpr Label sign(std::string_view text) { return Label(text); }

    [[nodiscard]] std::string_view in(const Language& language) const {
        return text_ != nullptr ? std::string_view{text_, size_}
               : size_ != 0     ? phrase(static_cast<Word>(size_), language)
                                : std::string_view();
    }

private:
    const char* text_ = nullptr; // none: a phrase
    std::size_t size_ = 0;       // of the text, or which phrase
};

} // namespace torchside::web
