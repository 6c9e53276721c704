#include "web/screens/spoken.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "generated/language_list.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {

bool is_spoken(std::string_view code) {
    return std::find(std::begin(language_words), std::end(language_words), code) != std::end(language_words);
}

void language_choices(std::vector<const char*>& codes, std::vector<Label>& names) {
    for (std::size_t i = 0; i < std::size(language_words); ++i) {
        codes.push_back(language_words[i].data());
        names.emplace_back(language_names[i]);
    }
}

void Spoken::choose(std::string_view chosen) {
    chosen_ = chosen;
    const std::string code = chosen_.empty() ? platform::language() : chosen_;
    if (code == language_->code || !is_spoken(code)) {
        return;
    }
    take(code);
}

void Spoken::take(const std::string& code) {
    std::string words = platform::words_of(code); // asked for English too: the page remembers it
    if (code == english().code) {
        language_ = &english();
        return;
    }
    if (const Language* found = find(code, std::move(words))) {
        language_ = found;
    }
}

const Language* Spoken::find(const std::string& code, std::string words) {
    const auto known =
        std::find_if(files_.begin(), files_.end(), [&](const auto& file) { return file->language().code == code; });
    if (known != files_.end()) {
        return &(*known)->language();
    }
    auto file = WordFile::read(code, std::move(words));
    if (!file) {
        return nullptr;
    }
    accents_ = accents_ || !code.starts_with(english().code);
    return &files_.emplace_back(std::move(file))->language();
}

const Language& Spoken::other(std::string_view code) {
    const std::string wanted(code);
    if (!is_spoken(code) || code == english().code) {
        return english();
    }
    if (const Language* known = find(wanted, {})) {
        return *known;
    }
    if (asked_.find(wanted + ' ') == std::string::npos) {
        asked_ += wanted + ' ';
        if (const Language* came = find(wanted, platform::words_of(wanted, false))) {
            return *came;
        }
    }
    return english();
}

} // namespace torchside::web
