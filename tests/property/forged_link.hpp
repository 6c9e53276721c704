// Texts that put a sealed quote and an unsealed one together in every way that could make a reader open the one and check the seal of
// the other: pieces of both, marks between them, and damage.
#pragma once

#include <array>
#include <string>

#include "core/link/link.hpp"
#include "tests/property/random_quote.hpp"

namespace torchside::test {

/// A quote that was sealed, and another that never was.
struct SealedPair {
    document::Quote quote;
    std::string body; // "q=..."
    std::string seal; // made up: to whoever has not the key, a seal is letters that fit one text only
    std::string other;
};

inline SealedPair sealed_pair(Rng& rng, std::size_t seal_letters) {
    constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    SealedPair pair;
    pair.quote = random_quote(rng);
    pair.quote.outline.contours.clear(); // short, so that many can be tried
    pair.body = document::quote_link(pair.quote);
    document::Quote dearer = pair.quote;
    dearer.quantity = pair.quote.quantity % 100000 + 1;
    pair.other = document::quote_link(dearer);
    for (std::size_t i = 0; i < seal_letters; ++i) {
        pair.seal += letters[rng.below(letters.size())];
    }
    return pair;
}

inline constexpr std::size_t forged_pieces = 14;

inline std::string forged_piece(const SealedPair& pair, std::size_t which) {
    switch (which) {
    case 0:
        return pair.body;
    case 1:
        return pair.other;
    case 2:
        return '.' + pair.seal;
    case 3:
        return "#";
    case 4:
        return ".";
    case 5:
        return pair.other.substr(2);
    case 6:
        return pair.body.substr(2);
    case 7:
        return "q=";
    case 8:
        return pair.seal;
    case 9:
        return ".x";
    case 10:
        return " ";
    case 11:
        return std::string(1, '\0');
    case 12:
        return "%23";
    default:
        return "https://shop.example/?a=b";
    }
}

/// What a page that holds the key would say of a text: nothing was opened, what was opened is not what was sealed, it is what was
/// sealed, or, which must never be: the seal is right, and another quote is open.
enum class Seen { refused, not_sealed, genuine, fooled };

inline Seen seen(const SealedPair& pair, std::string_view text) {
    const auto read = document::open_sealed_quote(text);
    if (!read) {
        return Seen::refused;
    }
    const document::OpenedQuote& opened = read.value();
    if (opened.body != pair.body || opened.seal != pair.seal) {
        return Seen::not_sealed;
    }
    return same(opened.quote, pair.quote) ? Seen::genuine : Seen::fooled;
}

/// The text of these pieces: `which` counts through all rows of so many.
inline std::string forged_row(const SealedPair& pair, std::size_t which, int pieces) {
    std::string out;
    for (; pieces > 0; --pieces, which /= forged_pieces) {
        out += forged_piece(pair, which % forged_pieces);
    }
    return out;
}

/// A random row of one to eight pieces, half of them damaged as well.
inline std::string forged(const SealedPair& pair, Rng& rng) {
    std::string out;
    for (auto n = 1 + rng.below(8); n > 0; --n) {
        out += forged_piece(pair, rng.below(forged_pieces));
    }
    return rng.chance(0.5) ? damaged(out, rng) : out;
}

} // namespace torchside::test
