#include "core/codec/json.hpp"

#include <algorithm>
#include <cmath>

#include "core/codec/decimal.hpp"
#include "core/codec/utf8.hpp"
#include "generated/words/json.hpp"

namespace torchside::codec {

namespace {

constexpr int deepest = 16;
constexpr std::size_t most_keys = 64;
constexpr std::size_t most_items = 10'000;
constexpr std::size_t longest_number = 64;
constexpr std::size_t largest_text = 1 << 20;

class Parser {
public:
    explicit Parser(std::string_view text) : text_(text) {}

    bool document(JsonValue& out) {
        if (text_.size() > largest_text) {
            return fail(words::json::too_large);
        }
        if (!value(out, 0)) {
            return false;
        }
        skip_space();
        return at_ == text_.size() || fail(words::json::goes_on);
    }

    [[nodiscard]] Fault fault() const {
        const std::string_view before = text_.substr(0, at_);
        const auto line = 1 + std::count(before.begin(), before.end(), '\n');
        const std::size_t start = before.rfind('\n') + 1; // npos + 1 is 0
        return {"workbook", words::json::Place{.column = static_cast<int>(at_ - start + 1),
                                               .line = static_cast<int>(line),
                                               .reason = reason_}};
    }

private:
    bool fail(Word reason) {
        reason_ = reason;
        return false;
    }
    [[nodiscard]] bool done() const { return at_ >= text_.size(); }
    [[nodiscard]] char peek() const { return done() ? '\0' : text_[at_]; }
    bool take(char c) {
        if (done() || text_[at_] != c) {
            return false;
        }
        ++at_;
        return true;
    }
    void skip_space() {
        while (!done() && (text_[at_] == ' ' || text_[at_] == '\n' || text_[at_] == '\r' || text_[at_] == '\t')) {
            ++at_;
        }
    }

    bool value(JsonValue& out, int depth) {
        skip_space();
        if (done()) {
            return fail(words::json::too_early);
        }
        switch (peek()) {
        case '{':
            return depth < deepest ? object(out, depth) : fail(words::json::too_deep);
        case '[':
            return depth < deepest ? list(out, depth) : fail(words::json::too_deep);
        case '"':
            out.type = JsonValue::Type::text;
            return text(out.text);
        case 't':
            return word("true", out, JsonValue::Type::flag, 1.0);
        case 'f':
            return word("false", out, JsonValue::Type::flag, 0.0);
        case 'n':
            return word("null", out, JsonValue::Type::null, 0.0);
        default:
            return number(out);
        }
    }

    bool word(std::string_view wanted, JsonValue& out, JsonValue::Type type, double amount) {
        if (text_.substr(at_, wanted.size()) != wanted) {
            return fail(words::json::no_value);
        }
        at_ += wanted.size();
        out.type = type;
        out.number = amount;
        return true;
    }

    bool object(JsonValue& out, int depth) {
        out.type = JsonValue::Type::object;
        ++at_;
        skip_space();
        if (take('}')) {
            return true;
        }
        do {
            skip_space();
            if (peek() != '"') {
                return fail(words::json::no_key);
            }
            const std::size_t key_at = at_;
            std::string key;
            if (!text(key)) {
                return false;
            }
            if (std::find(out.keys.begin(), out.keys.end(), key) != out.keys.end()) {
                at_ = key_at;
                return fail(words::json::key_twice);
            }
            if (out.keys.size() == most_keys) {
                at_ = key_at;
                return fail(words::json::many_keys);
            }
            skip_space();
            if (!take(':')) {
                return fail(words::json::no_colon);
            }
            out.keys.push_back(std::move(key));
            if (!value(out.items.emplace_back(), depth + 1)) {
                return false;
            }
            skip_space();
        } while (take(','));
        return take('}') || fail(done() ? words::json::too_early : words::json::no_brace);
    }

    bool list(JsonValue& out, int depth) {
        out.type = JsonValue::Type::list;
        ++at_;
        skip_space();
        if (take(']')) {
            return true;
        }
        do {
            if (out.items.size() == most_items) {
                return fail(words::json::many_entries);
            }
            if (!value(out.items.emplace_back(), depth + 1)) {
                return false;
            }
            skip_space();
        } while (take(','));
        return take(']') || fail(done() ? words::json::too_early : words::json::no_bracket);
    }

    bool text(std::string& out) {
        const std::size_t start = at_++;
        while (!done() && peek() != '"') {
            const char c = peek();
            if (static_cast<unsigned char>(c) < 0x20) {
                return fail(words::json::control_sign);
            }
            if (c == '\\') {
                if (!escape(out)) {
                    return false;
                }
                continue;
            }
            out += c;
            ++at_;
        }
        if (!take('"')) {
            return fail(words::json::no_text_end);
        }
        if (!is_utf8(out)) {
            at_ = start;
            return fail(words::json::not_utf8);
        }
        return true;
    }

    bool escape(std::string& out) {
        constexpr std::string_view names = "\"\\/bfnrt";
        constexpr std::string_view meant = "\"\\/\b\f\n\r\t";
        ++at_;
        if (take('u')) {
            return code_point(out);
        }
        const std::size_t which = done() ? std::string_view::npos : names.find(peek());
        if (which == std::string_view::npos) {
            return fail(words::json::unknown_escape);
        }
        out += meant[which];
        ++at_;
        return true;
    }

    bool hex4(unsigned& out) {
        out = 0;
        for (int i = 0; i < 4; ++i, ++at_) {
            const char c = peek();
            const bool digit = c >= '0' && c <= '9';
            const char lower = static_cast<char>(c | 0x20);
            if (!digit && (lower < 'a' || lower > 'f')) {
                return fail(words::json::no_hex);
            }
            out = out * 16 + static_cast<unsigned>(digit ? c - '0' : lower - 'a' + 10);
        }
        return true;
    }

    bool code_point(std::string& out) {
        unsigned first = 0;
        if (!hex4(first)) {
            return false;
        }
        if (first >= 0xD800 && first < 0xE000) {
            unsigned second = 0;
            if (first >= 0xDC00 || !take('\\') || !take('u') || !hex4(second) || second < 0xDC00 || second >= 0xE000) {
                return fail(words::json::half_pair);
            }
            first = 0x10000 + ((first - 0xD800) << 10) + (second - 0xDC00);
        }
        append_utf8(out, first);
        return true;
    }

    bool digits() {
        const std::size_t start = at_;
        while (peek() >= '0' && peek() <= '9') {
            ++at_;
        }
        return at_ > start || fail(words::json::no_value);
    }

    bool number(JsonValue& out) {
        const std::size_t start = at_;
        take('-');
        const bool leading_zero = take('0');
        if (!leading_zero && !digits()) {
            return false;
        }
        if (take('.') && !digits()) {
            return false;
        }
        if (take('e') || take('E')) {
            static_cast<void>(take('+') || take('-'));
            if (!digits()) {
                return false;
            }
        }
        const std::string_view literal = text_.substr(start, at_ - start);
        const std::size_t end = at_;
        at_ = start;
        if (literal.size() > longest_number) {
            return fail(words::json::long_number);
        }
        out.type = JsonValue::Type::number;
        out.number = read_decimal(literal) + 0.0; // + 0.0 makes -0 a plain 0
        if (!std::isfinite(out.number)) {
            return fail(words::json::large_number);
        }
        at_ = end;
        return true;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    Word reason_{};
};

} // namespace

Outcome<JsonValue> parse_json(std::string_view text) {
    Parser parser(text);
    JsonValue value;
    if (!parser.document(value)) {
        return parser.fault();
    }
    return value;
}

} // namespace torchside::codec
