// A small strict JSON (RFC 8259) for the workbook. It is our own because the page carries it: reader, writer and CBOR
// are 7.5 KB of brotli there, where the general library would be 30 KB, and 34 KB with its CBOR. It also gives errors
// line and column, refuses doubled keys and keeps limits of our choice. The general library is the oracle in
// tests/core/codec_json.cpp, and writes what the command line prints (tools/cli/results).
//
// Limits, so that no input costs more than a few megabytes: 16 levels deep, 64 keys an object, 10 000 entries a list,
// 64 characters a number, 1 MB a text. A number that overflows a double is refused; text must be whole UTF-8.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/words/outcome.hpp"

namespace torchside::codec {

struct JsonValue {
    enum class Type { null, flag, number, text, list, object };
    Type type = Type::null;
    double number = 0.0; // a flag is 0 or 1
    std::string text{};
    std::vector<JsonValue> items{};  // of a list, or the values of an object
    std::vector<std::string> keys{}; // of an object, beside its items
};

/// Fault::field is "workbook"; the text has line and column (in bytes), from 1.
[[nodiscard]] Outcome<JsonValue> parse_json(std::string_view text);

/// Writes JSON by parts, two spaces a level; commas and line ends are its own business.
class JsonWriter {
public:
    void open(char bracket);      // '{' or '['
    void open_line(char bracket); // the same; all of it up to its close() stays on one line
    void close();
    JsonWriter& key(std::string_view name);
    void number(double value); // the shortest digits that read back as the same double; null when not finite
    void flag(bool value);
    void text(std::string_view value);
    void null();
    [[nodiscard]] std::string take(); // with a last line end

private:
    void begin_value();
    void line_end();
    std::string out_{};
    std::string closers_{};
    std::size_t flat_from_ = 0; // level from which nothing breaks the line; 0: none
    bool first_ = true;
    bool after_key_ = false;
};

} // namespace torchside::codec
