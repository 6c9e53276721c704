#include "tools/cli/words.hpp"

#include <algorithm>
#include <cstdio>
#include <memory>

#include "core/codec/json.hpp"
#include "core/codec/utf8.hpp"
#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "generated/words/file.hpp"

namespace torchside::cli {

namespace {

template <class Names>
std::string listed(const Names& names) {
    std::string out;
    for (const auto& name : names) {
        out += out.empty() ? "" : ", ";
        out += name;
    }
    return out;
}

Text options_of(std::initializer_list<std::string_view> names) {
    return names.size() == 0 ? Text(words::cli::no_options) : words::verbatim(listed(names));
}

Text or_input(Word file) {
    return words::cli::OrInput{.file = file};
}

/// A word as the field of a fault, which is never empty.
std::string named(std::string_view word, const std::string& otherwise) {
    return word.empty() ? otherwise : codec::one_line(word);
}

std::string quoted(std::string_view word) {
    return '"' + codec::one_line(word) + '"';
}

} // namespace

Outcome<Words> Words::sort(const Arguments& arguments, std::size_t files,
                           std::initializer_list<std::string_view> options, Word what) {
    const bool is_link = what == words::cli::a_link;
    const std::string field = is_link ? "LINK" : "FILE";
    Words sorted;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string& word = arguments[i];
        if (!word.starts_with("--")) {
            sorted.files_.push_back(word);
            continue;
        }
        if (std::find(options.begin(), options.end(), word) == options.end()) {
            return Fault{codec::one_line(word), words::cli::UnknownOption{.options = options_of(options)}};
        }
        if (sorted.option(word)) {
            return Fault{word, words::cli::given_twice};
        }
        if (i + 1 == arguments.size()) {
            return Fault{word, words::cli::NoValue{.option = word}};
        }
        sorted.options_.emplace_back(word, arguments[++i]);
    }
    if (sorted.files_.size() < files) {
        return Fault{field, words::file::Missing{.accepted = is_link ? Text(what) : or_input(what)}};
    }
    if (sorted.files_.size() > files) {
        return Fault{
            named(sorted.files_[files], field),
            words::cli::OneTooMany{.files = files == 0 ? words::cli::no_file : what, .options = options_of(options)}};
    }
    return sorted;
}

std::optional<std::string> Words::option(std::string_view name) const {
    for (const auto& [key, value] : options_) {
        if (key == name) {
            return value;
        }
    }
    return {};
}

Outcome<std::optional<double>> Words::number_if_given(std::string_view name) const {
    const auto typed = option(name);
    if (!typed) {
        return std::optional<double>{};
    }
    const auto json = codec::parse_json(*typed);
    if (!json || json.value().type != codec::JsonValue::Type::number) {
        return Fault{std::string(name),
                     words::cli::NoNumber{.accepted = words::cli::a_number, .typed = quoted(*typed)}};
    }
    return std::optional(json.value().number);
}

Outcome<double> Words::number(std::string_view name) const {
    const auto number = number_if_given(name);
    if (!number) {
        return number.fault();
    }
    if (!number.value()) {
        return Fault{std::string(name), words::file::Missing{.accepted = words::cli::a_number}};
    }
    return *number.value();
}

Outcome<std::size_t> Words::choice(std::string_view name, std::initializer_list<std::string_view> choices,
                                   std::optional<std::size_t> otherwise) const {
    const auto typed = option(name);
    if (!typed && otherwise) {
        return *otherwise;
    }
    const auto found = typed ? std::find(choices.begin(), choices.end(), *typed) : choices.end();
    if (found == choices.end()) {
        const std::string accepted = listed(choices);
        return typed ? Fault{std::string(name), words::file::NotAccepted{.accepted = accepted, .value = quoted(*typed)}}
                     : Fault{std::string(name), words::file::Missing{.accepted = accepted}};
    }
    return static_cast<std::size_t>(found - choices.begin());
}

Outcome<Metal> Words::material() const {
    const auto info = document::field("job.material");
    const auto typed = option("--material");
    const auto found = typed ? std::find(info->words.begin(), info->words.end(), *typed) : info->words.end();
    if (found == info->words.end()) {
        const Text accepted = document::accepted(*info);
        return typed ? Fault{"--material", words::file::NotAccepted{.accepted = accepted, .value = quoted(*typed)}}
                     : Fault{"--material", words::file::Missing{.accepted = accepted}};
    }
    return static_cast<Metal>(found - info->words.begin());
}

Outcome<std::string> load_text(const std::string& file, std::size_t most, Word what) {
    const auto close = [](std::FILE* f) { return f == stdin ? 0 : std::fclose(f); };
    const std::unique_ptr<std::FILE, decltype(close)> in(file == "-" ? stdin : std::fopen(file.c_str(), "rb"), close);
    const std::string name = named(file, "FILE");
    if (!in) {
        return Fault{name, words::cli::NotOpened{.accepted = or_input(what)}};
    }
    std::string text(most + 1, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), in.get()));
    if (std::ferror(in.get()) != 0) {
        return Fault{name, words::cli::NotRead{.accepted = or_input(what)}};
    }
    return text;
}

Outcome<Workbook> load_workbook(const std::string& file) {
    const auto text = load_text(file, document::largest_file, words::cli::workbook_file);
    return text ? document::read_workbook(text.value()) : Outcome<Workbook>(text.fault());
}

} // namespace torchside::cli
