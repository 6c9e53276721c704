#include "core/words/languages.hpp"

namespace torchside {

namespace {

using Where = Language::Group::Where;
#include "generated/words_others.inc"

} // namespace

const Language* language_of(std::string_view code) {
    if (code == english().code) {
        return &english();
    }
    for (const Language& other : others) {
        if (code == other.code) {
            return &other;
        }
    }
    return nullptr;
}

std::string language_codes() {
    std::string codes{english().code};
    for (const Language& other : others) {
        codes += ", " + std::string{other.code};
    }
    return codes;
}

} // namespace torchside
