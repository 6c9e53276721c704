// The second, small module: a quote link as HTML, and any text as a QR code. Its functions take and give text in this
// module's memory; web/page/js/quote.js and qr.js call them.
#include <string>
#include <vector>

extern "C" {
#include <qrcodegen.h>
}

#include "core/link/ledger.hpp"
#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"

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

} // namespace

#define TORCHSIDE_EXPORT extern "C" __attribute__((used, visibility("default")))

/// Where the page writes the text of its next call, of so many bytes with the zero at its end.
TORCHSIDE_EXPORT char* torchside_room(unsigned bytes) {
    static std::string room;
    room.assign(bytes, '\0');
    return room.data();
}

/// The inside of the customer's page on this day; begins with "!" when the link is refused.
TORCHSIDE_EXPORT const char* torchside_quote(const char* link, int today) {
    auto read = document::open_sealed_quote(link);
    opened() = read ? std::move(read.value()) : document::OpenedQuote();
    answer() = read ? document::quote_html(opened().quote, customers_english(), today)
                    : '!' + document::refused_html(read.fault(), customers_english());
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
    answer() = std::string(sign) + say(words, Speech(customers_english(), opened().quote.units));
    return answer().c_str();
}

/// The customer's page as one file; empty when the link is refused.
TORCHSIDE_EXPORT const char* torchside_quote_file(const char* link) {
    const auto quote = document::open_quote_link(link);
    answer() = quote ? document::quote_file(quote.value(), customers_english(), {style, sizeof style}) : std::string();
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
