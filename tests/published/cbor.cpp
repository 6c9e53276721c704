// Examples of RFC 8949 (appendix A; section 3.4.4 for the decimal fraction), as written there.
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <string>

#include "core/codec/cbor.hpp"

using namespace torchside;

namespace {

std::string hex(std::string_view bytes) {
    std::string out;
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        out += "0123456789abcdef"[byte >> 4];
        out += "0123456789abcdef"[byte & 15];
    }
    return out;
}

std::string bytes_of(std::string_view hex_digits) {
    const auto digit = [](char c) { return static_cast<unsigned>(c <= '9' ? c - '0' : c - 'a' + 10); };
    std::string out;
    for (std::size_t i = 0; i < hex_digits.size(); i += 2) {
        out += static_cast<char>(static_cast<unsigned char>(digit(hex_digits[i]) * 16 + digit(hex_digits[i + 1])));
    }
    return out;
}

std::string written(double value) {
    std::string out;
    codec::cbor_number(out, value);
    return hex(out);
}

struct Row {
    double value;
    const char* bytes;
};

} // namespace

TEST_CASE("numbers are written as the RFC's examples") {
    const Row rows[] = {
        {0, "00"},
        {1, "01"},
        {10, "0a"},
        {23, "17"},
        {24, "1818"},
        {25, "1819"},
        {100, "1864"},
        {1000, "1903e8"},
        {1000000, "1a000f4240"},
        {1000000000000, "1b000000e8d4a51000"},
        {-1, "20"},
        {-10, "29"},
        {-100, "3863"},
        {-1000, "3903e7"},
        {1.5, "f93e00"},
        {0.00006103515625, "f90400"},
        {3.4028234663852886e+38, "fa7f7fffff"},
        {273.15, "c48221196ab3"},
    };
    for (const Row& row : rows) {
        INFO(row.bytes);
        CHECK(written(row.value) == row.bytes);
    }
}

TEST_CASE("numbers are read as the RFC's examples") {
    const Row rows[] = {
        {65504.0, "f97bff"},
        {100000.0, "fa47c35000"},
        {1.1, "fb3ff199999999999a"},
        {1.0e+300, "fb7e37e43c8800759c"},
        {5.960464477539063e-8, "f90001"},
        {-4.0, "f9c400"},
        {-4.1, "fbc010666666666666"},
        {273.15, "c48221196ab3"},
    };
    for (const Row& row : rows) {
        INFO(row.bytes);
        const std::string bytes = bytes_of(row.bytes);
        codec::CborReader in(bytes);
        double value = 0.0;
        REQUIRE(in.number(value));
        CHECK(value == row.value);
        CHECK(in.done());
    }
}

TEST_CASE("text and simple values are as the RFC's examples") {
    std::string out;
    codec::cbor_text(out, "");
    codec::cbor_text(out, "IETF");
    codec::cbor_text(out, "\xC3\xBC");
    codec::cbor_flag(out, false);
    codec::cbor_flag(out, true);
    codec::cbor_null(out);
    CHECK(hex(out) == "60"
                      "6449455446"
                      "62c3bc"
                      "f4"
                      "f5"
                      "f6");
}

// Own cases: what is not whole, or of another kind, is not read.
TEST_CASE("what is cut short or of another kind is not read") {
    double value = 0.0;
    for (const char* bad : {"",
                            "18",
                            "19ff",
                            "fb3ff199999999",
                            "c4",
                            "c482",
                            "c48221",
                            "c4822160",
                            "c2411a",
                            "c481",
                            "c4820501",
                            "c48236"
                            "01",
                            "1c",
                            "1f",
                            "60",
                            "80",
                            "a0",
                            "f4",
                            "ff",
                            "1b0020000000000000",
                            "c48221c4822101"}) {
        INFO(bad);
        const std::string bytes = bytes_of(bad);
        codec::CborReader in(bytes);
        CHECK_FALSE(in.number(value));
    }
    std::string_view text;
    CHECK_FALSE(codec::CborReader(bytes_of("6449455446")).string(codec::Cbor::text, 3, text));
    CHECK_FALSE(codec::CborReader(bytes_of("64494554")).string(codec::Cbor::text, 100, text));
    CHECK_FALSE(codec::CborReader(bytes_of("7bffffffffffffffff41")).string(codec::Cbor::text, 100, text));
    CHECK_FALSE(codec::CborReader(bytes_of("41ff")).string(codec::Cbor::text, 100, text));
}

TEST_CASE("any double comes back to the last bit") {
    for (const double value : {0.1, 0.25, 1.0 / 3.0, 1e-9, 1e22, -273.15, 9007199254740991.0, 9007199254740993.0,
                               5e-324, 1.7976931348623157e308, 123456.789, 0.005, 1e-22, 1.6, 120.65}) {
        INFO(value);
        std::string out;
        codec::cbor_number(out, value);
        codec::CborReader in(out);
        double back = 0.0;
        REQUIRE(in.number(back));
        CHECK(back == value);
        CHECK(out.size() <= 9);
    }
}
