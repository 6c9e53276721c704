// The language of the screens: what the shop chose, else the browser's own, where there is a table for it. English until the
// words are there: the page fetches them, and remembers which, so that they are there when it is opened again.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/words/word_file.hpp"
#include "web/kit/label.hpp"

namespace torchside::web {

/// There is a table of words for it.
[[nodiscard]] bool is_spoken(std::string_view code);

/// Every language there is: its code, and what it calls itself.
void language_choices(std::vector<const char*>& codes, std::vector<Label>& names);

class Spoken {
public:
    /// `chosen`: a code, or empty for the browser's.
    void choose(std::string_view chosen);
    /// Words have arrived.
    void hear() {
        asked_.clear();
        choose(chosen_);
    }

    [[nodiscard]] const Language& language() const { return *language_; }
    /// Another language, for what a customer reads: English while its words are not there.
    [[nodiscard]] const Language& other(std::string_view code);
    /// Some table here has letters that English has not.
    [[nodiscard]] bool accents() const { return accents_; }

private:
    /// Apart, because English needs none of it (web/later.txt).
    [[gnu::noinline]] void take(const std::string& code);
    [[gnu::noinline]] const Language* find(const std::string& code, std::string words);

    std::string chosen_;
    bool accents_ = false;
    std::string asked_; // codes of words that were asked for and have not come
    const Language* language_ = &english();
    std::vector<std::unique_ptr<WordFile>> files_; // each stays: what is on the screen points into it
};

} // namespace torchside::web
