#include "core/words/text.hpp"

#include <array>

#include "core/words/own_phrases.hpp"

namespace torchside {
namespace {

void put_two_bytes(std::string& out, std::size_t value) {
    out += static_cast<char>(value & 0xFFU);
    out += static_cast<char>(value >> 8U);
}

} // namespace

words::Slot::Slot(const Text& text) : form_(Form::text), name_(text.bytes_) {}

Text::Text(Word word) {
    if (word != Word{}) {
        *this = {word, {}};
    }
}

Text::Text(Word word, std::initializer_list<const words::Slot*> slots) {
    put_two_bytes(bytes_, static_cast<std::size_t>(word));
    bytes_ += static_cast<char>(slots.size());
    for (const words::Slot* slot : slots) {
        bytes_ += static_cast<char>(slot->form_);
        if (slot->word_) {
            const Text phrase{static_cast<Word>(static_cast<std::uint16_t>(slot->value_))};
            put_two_bytes(bytes_, phrase.bytes_.size());
            bytes_ += phrase.bytes_;
        } else if (slot->form_ <= words::Slot::Form::verbatim) {
            const std::string_view content = slot->name_.substr(0, 0xFFFF);
            put_two_bytes(bytes_, content.size());
            bytes_ += content;
        } else {
            // std::bit_cast by its other name: the wasm compiler's library has not got it.
            using Bytes = std::array<char, sizeof(double)>;
            const auto figure = __builtin_bit_cast(Bytes, slot->value_);
            put_two_bytes(bytes_, figure.size() + 1);
            bytes_ += static_cast<char>(slot->digits_);
            bytes_.append(figure.data(), figure.size());
        }
    }
}

Text& Text::operator+=(const Text& next) {
    bytes_ += next.bytes_;
    return *this;
}

namespace words {

Text either(const Slot& metric, const Slot& inch) {
    return {by_units, {&metric, &inch}};
}

Text verbatim(std::string_view name) {
    const Slot slot{name};
    return {as_it_is, {&slot}};
}

} // namespace words

} // namespace torchside
