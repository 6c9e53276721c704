#include "core/quantity/typed.hpp"

namespace torchside::typed {

namespace {

constexpr char32_t invalid = 0xffffffff;

/// The next code point of strict UTF-8 (no overlong form, no surrogate); `at` moves past it.
char32_t next(std::string_view text, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(at);
    if (lead < 0x80) {
        ++at;
        return lead;
    }
    const std::size_t more = lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : 1;
    if (lead < 0xc2 || lead > 0xf4 || at + more >= text.size()) {
        return invalid;
    }
    char32_t c = lead & (0x3fu >> more);
    for (std::size_t i = 1; i <= more; ++i) {
        if ((byte(at + i) & 0xc0) != 0x80) {
            return invalid;
        }
        c = (c << 6) | (byte(at + i) & 0x3fu);
    }
    if ((more == 2 && (c < 0x800 || (c >= 0xd800 && c < 0xe000))) || (more == 3 && (c < 0x10000 || c > 0x10ffff))) {
        return invalid;
    }
    at += more + 1;
    return c;
}

struct Swap {
    char32_t from;
    std::string_view to;
};
constexpr Swap swaps[] = {
    // one letter, a whole fraction
    {U'¼', "|1/4"},
    {U'½', "|1/2"},
    {U'¾', "|3/4"},
    {U'⅐', "|1/7"},
    {U'⅑', "|1/9"},
    {U'⅒', "|1/10"},
    {U'⅓', "|1/3"},
    {U'⅔', "|2/3"},
    {U'⅕', "|1/5"},
    {U'⅖', "|2/5"},
    {U'⅗', "|3/5"},
    {U'⅘', "|4/5"},
    {U'⅙', "|1/6"},
    {U'⅚', "|5/6"},
    {U'⅛', "|1/8"},
    {U'⅜', "|3/8"},
    {U'⅝', "|5/8"},
    {U'⅞', "|7/8"},
    {U'⅟', "|1/"},
    {U'↉', "|0/3"},
    // lines
    {U'⁄', "/"},
    {U'∕', "/"},
    {U'÷', "/"},
    {U'‐', "-"},
    {U'‑', "-"},
    {U'‒', "-"},
    {U'–', "-"},
    {U'—', "-"},
    {U'−', "-"},
    // marks of foot and inch
    {U'′', "'"},
    {U'’', "'"},
    {U'‘', "'"},
    {U'´', "'"},
    {U'`', "'"},
    {U'″', "\""},
    {U'”', "\""},
    {U'“', "\""},
    {U'„', "\""},
    // gaps: thin ones and no-break ones may part groups of three
    {U'\u00a0', "_"},
    {U'\u2009', "_"},
    {U'\u202f', "_"},
    {U'\u2007', "_"},
    {U'\u2002', " "},
    {U'\u2003', " "},
    {U'\u3000', " "},
    {U'\ufeff', ""},
    {U'\u200b', ""},
    // letters of units
    {U'µ', "u"},
    {U'μ', "u"},
    {U'°', "^"},
    {U'€', "$"},
    {U'£', "$"},
    {U'％', "%"},
};

/// A raised digit, or -1.
int raised(char32_t c) {
    switch (c) {
    case U'¹':
        return 1;
    case U'²':
        return 2;
    case U'³':
        return 3;
    default:
        return c == U'⁰' || (c >= U'⁴' && c <= U'⁹') ? static_cast<int>(c - U'⁰') : -1;
    }
}

bool digit(char c) {
    return c >= '0' && c <= '9';
}

/// What one code point becomes; `one` is room for a single letter.
std::string_view folded(char32_t c, char& one) {
    for (const Swap& s : swaps) {
        if (s.from == c) {
            return s.to;
        }
    }
    constexpr std::u32string_view kept = U"abcdefghijklmnopqrstuvwxyz0123456789 .,/-+#'\"%$";
    if (c >= U'A' && c <= U'Z') {
        one = static_cast<char>(c - U'A' + U'a');
    } else if (c >= U'０' && c <= U'９') {
        one = static_cast<char>(c - U'０' + U'0');
    } else if (c >= U'₀' && c <= U'₉') {
        one = static_cast<char>(c - U'₀' + U'0');
    } else if (c == U'\t' || c == U'\n' || c == U'\r') {
        one = ' ';
    } else {
        one = kept.find(c) != std::u32string_view::npos ? static_cast<char>(c) : '?';
    }
    return {&one, 1};
}

} // namespace

Folded fold(std::string_view text) {
    Folded out;
    if (text.size() > 4096) {
        out.problem = Folded::Problem::too_long;
        return out;
    }
    bool was_raised = false;
    for (std::size_t at = 0; at < text.size();) {
        const char32_t c = next(text, at);
        if (c == invalid) {
            out.problem = Folded::Problem::not_text;
            return out;
        }
        const int up = raised(c);
        char one = static_cast<char>('0' + up);
        std::string_view piece = up >= 0 ? std::string_view{&one, 1} : folded(c, one);
        const char last = out.size > 0 ? out.letters[out.size - 1] : ' ';
        if ((piece == " " || piece == "_") && (last == ' ' || last == '_')) {
            continue;
        }
        if (out.size + piece.size() + 1 > out.letters.size() || out.size > most_letters) {
            out.problem = Folded::Problem::too_long;
            return out;
        }
        // "1³⁄₁₆" is 1 3/16, not 13/16; the 3 of "m³" follows a letter and is left alone.
        if (up >= 0 && !was_raised && digit(last)) {
            out.letters[out.size++] = '|';
        }
        for (const char p : piece) {
            out.letters[out.size++] = p;
        }
        was_raised = up >= 0;
    }
    while (out.size > 0 && (out.letters[out.size - 1] == ' ' || out.letters[out.size - 1] == '_')) {
        --out.size;
    }
    return out;
}

} // namespace torchside::typed
