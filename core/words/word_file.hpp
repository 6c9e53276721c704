// A language's table of words as a file, which the page fetches when its reader speaks another language than English.
//
// "TSW1", the fingerprint of the program's words, the number of groups and where each begins (4 bytes each, lowest first;
// 0xFFFFFFFF for a group that is not there), the phrases, and zeros enough for any place in a group: tools/embed_words.
// Edges: a file of another program, cut or longer than 1 MB is none. What a right head is followed by is read as it is:
// a phrase may be nonsense, but none is read from beyond the file.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "core/words/say.hpp"

namespace torchside {

class WordFile {
public:
    /// Null when this is no table for these words.
    [[nodiscard]] static std::unique_ptr<WordFile> read(std::string_view code, std::string bytes);

    [[nodiscard]] const Language& language() const { return language_; }

    WordFile(const WordFile&) = delete; // its table points into it
    WordFile& operator=(const WordFile&) = delete;
    ~WordFile() = default;

private:
    WordFile(std::string_view code, std::string bytes, std::vector<Language::Group> groups, std::size_t phrases);

    std::string code_;
    std::string bytes_;
    std::vector<Language::Group> groups_;
    Language language_;
};

} // namespace torchside
