// The little of CBOR (RFC 8949) that links are written in: unsigned and negative integers, text, byte strings, arrays
// and maps of known length, the two flags, null, floats, and decimal fractions (tag 4). Own code because a page must
// carry it, and because every length must be judged before anything is made of it.
//
// A number is written in the shortest of these forms that holds it exactly: an integer, a float of 16, 32 or 64 bits,
// or a decimal fraction m * 10^-k with m below 2^53 and k up to 22. Such a fraction reads back by one division of two
// numbers that doubles hold exactly, so it is rounded once and gives the same double everywhere.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace torchside::codec {

enum class Cbor : std::uint8_t { unsigned_int, negative_int, bytes, text, array, map, tag, simple };

/// Appends the head of an item: its type and its number, length or count.
void cbor_head(std::string& out, Cbor type, std::uint64_t value);
void cbor_number(std::string& out, double value);
void cbor_text(std::string& out, std::string_view utf8);
void cbor_flag(std::string& out, bool value);
void cbor_null(std::string& out);

/// Takes items off the front of some bytes. Each function is false when the next item is of another kind or is not
/// whole; then nothing may be read any more.
class CborReader {
public:
    explicit CborReader(std::string_view bytes) : rest_(bytes) {}

    /// A head of this type with a value up to `most`.
    bool head(Cbor type, std::uint64_t most, std::uint64_t& value);
    bool number(double& value);
    /// Text or a byte string of at most `most` bytes; a view into what is read.
    bool string(Cbor type, std::size_t most, std::string_view& value);
    bool flag(bool& value);
    bool null();
    /// The type of what comes next; simple at the end.
    [[nodiscard]] Cbor next() const;
    [[nodiscard]] bool done() const { return rest_.empty(); }

private:
    bool take_head(Cbor& type, unsigned& info, std::uint64_t& value);
    std::string_view rest_;
};

} // namespace torchside::codec
