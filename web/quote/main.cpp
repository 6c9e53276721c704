// The second, small module: a quote link as HTML, and any text as a QR code. Its functions take and give text in this
// module's memory; web/page/js/quote.js and qr.js call them.
#include <memory>
#include <string>
#include <utility>
#include <vector>

extern "C" {
#include <qrcodegen.h>
}

#include "core/link/ledger.hpp"
#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"
#include "core/words/word_file.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/page_quote.hpp"

namespace {

using namespace torchside;

constexpr char style[] = {
#include "generated/quote_style.inc"
};

// The answer to the last call: the page reads it before it calls again.
std::string& answer() {
    static std::string held;
    return held;
}

document::OpenedQuote& opened() {
    static document::OpenedQuote held;
    return held;
}

std::string& room() {
    static std::string held;
    return held;
}

/// The words of the language that a quote asks for, once the page has brought them.
std::unique_ptr<WordFile>& words_here() {
    static std::unique_ptr<WordFile> held;
    return held;
}

const Language& language() {
    const bool fits = words_here() && words_here()->language().code == opened().quote.language;
    return fits ? words_here()->language() : customers_english();
}

/// What the page's script says, in this order (web/page/js/quote.js).
constexpr Word script_words[] = {words::page_quote::print,   words::page_quote::back,  words::page_quote::no_crypto,
                                 words::page_quote::no_seal, words::page_quote::newer, words::page_quote::not_ours,
                                 words::page_quote::altered};

} // namespace

#define TORCHSIDE_EXPORT extern "C" __attribute__((used, visibility("default")))

/// Where the page writes the text of its next call, of so many bytes with the zero at its end.
TORCHSIDE_EXPORT char* torchside_room(unsigned bytes) {
    room().assign(bytes, '\0');
    return room().data();
}

/// The language of the quote that is open, by its code; empty for the module's own English.
TORCHSIDE_EXPORT const char* torchside_quote_language() {
    return opened().quote.language.c_str();
}

/// The page has written that language's words into the room; what is no such table changes nothing.
TORCHSIDE_EXPORT const char* torchside_quote_words() {
    if (auto file = WordFile::read(opened().quote.language, room())) {
        words_here() = std::move(file);
    }
    answer() = language().code;
    return answer().c_str();
}

/// What the page is called.
TORCHSIDE_EXPORT const char* torchside_quote_title() {
    const std::string& shop = opened().quote.shop_name;
    const Text title = shop.empty() ? Text(words::customer::quote) : words::customer::QuoteFrom{.shop = shop};
    answer() = say(title, Speech(language(), UnitSystem::metric));
    return answer().c_str();
}

/// One of script_words.
TORCHSIDE_EXPORT const char* torchside_quote_says(const char*, int which) {
    answer() = phrase(script_words[which], language());
    return answer().c_str();
}

/// The inside of the customer's page on this day; begins with "!" when the link is refused.
TORCHSIDE_EXPORT const char* torchside_quote(const char* link, int today) {
    auto read = document::open_sealed_quote(link);
    opened() = read ? std::move(read.value()) : document::OpenedQuote();
    answer() = read ? document::quote_html(opened().quote, language(), today)
                    : '!' + document::refused_html(read.fault(), language());
    return answer().c_str();
}

/// The text that stands for what torchside_quote() opened last, and the seal that was behind it: a seal is checked over this and
/// nothing else. Both empty when the link was refused.
TORCHSIDE_EXPORT const char* torchside_quote_body() {
    return opened().body.c_str();
}
TORCHSIDE_EXPORT const char* torchside_quote_seal() {
    return opened().seal.c_str();
}

/// What the shop that sealed it says of the quote that is open, by the rows of its list (document::read_rows): a sign and a sentence.
TORCHSIDE_EXPORT const char* torchside_quote_standing(const char* rows, int today) {
    const auto [sign, words] = document::standing(opened().quote, opened().body, document::read_rows(rows), today);
    answer() = std::string(sign) + say(words, Speech(language(), opened().quote.units));
    return answer().c_str();
}

/// The quote that torchside_quote() opened last, as one file; empty when the link was refused.
TORCHSIDE_EXPORT const char* torchside_quote_file() {
    answer() =
        opened().body.empty() ? std::string() : document::quote_file(opened().quote, language(), {style, sizeof style});
    return answer().c_str();
}

/// The modules of a QR code row by row, 1 is dark: as many as its size squared. Empty: no code holds so much.
TORCHSIDE_EXPORT const char* torchside_qr(const char* text) {
    std::vector<std::uint8_t> work(qrcodegen_BUFFER_LEN_MAX);
    std::vector<std::uint8_t> code(qrcodegen_BUFFER_LEN_MAX);
    answer().clear();
    if (!qrcodegen_encodeText(text, work.data(), code.data(), qrcodegen_Ecc_LOW, qrcodegen_VERSION_MIN,
                              qrcodegen_VERSION_MAX, qrcodegen_Mask_AUTO, true)) {
        return answer().c_str(); // longer than any QR code holds
    }
    const int size = qrcodegen_getSize(code.data());
    for (int y = 0; y < size; ++y) {
        for (int x = 0; x < size; ++x) {
            answer() += qrcodegen_getModule(code.data(), x, y) ? '1' : '0';
        }
    }
    return answer().c_str();
}
