// The JSON reader and writer, with the general library as oracle for what is JSON and what a number is.
#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include <limits>
#include <string>

#include "core/codec/decimal.hpp"
#include "core/codec/json.hpp"
#include "tests/core/said.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::codec;

namespace {

std::string reason(const std::string& text) {
    const auto parsed = parse_json(text);
    return parsed ? "accepted" : test::said(parsed.fault().text);
}

struct BadText {
    const char* text;
    const char* expected; // start of the reason
};

constexpr BadText bad_texts[] = {
    {"", "line 1, column 1: the text ends too early"},
    {"   \n ", "line 2, column 2: the text ends too early"},
    {"{", "line 1, column 2: a key in double quotes is missing"},
    {"{\"a\"", "line 1, column 5: a colon is missing"},
    {"{\"a\":", "line 1, column 6: the text ends too early"},
    {"{\"a\":1", "line 1, column 7: the text ends too early"},
    {"{\"a\":1 \"b\":2}", "line 1, column 8: a comma or a closing brace is missing"},
    {"{\"a\":1,}", "line 1, column 8: a key in double quotes is missing"},
    {"{\"a\":1,\n \"a\":2}", "line 2, column 2: this key is there twice in its object"},
    {"{a:1}", "line 1, column 2: a key in double quotes is missing"},
    {"{'a':1}", "line 1, column 2: a key in double quotes is missing"},
    {"[1,]", "line 1, column 4: not a value"},
    {"[1 2]", "line 1, column 4: a comma or a closing bracket is missing"},
    {"1 1", "line 1, column 3: something follows the end of the JSON"},
    {"01", "line 1, column 2: something follows the end of the JSON"},
    {"+1", "line 1, column 1: not a value"},
    {".5", "line 1, column 1: not a value"},
    {"1.", "line 1, column 3: not a value"},
    {"1e", "line 1, column 3: not a value"},
    {"-", "line 1, column 2: not a value"},
    {"0x10", "line 1, column 2: something follows the end of the JSON"},
    {"1e999", "line 1, column 1: a number too large for any field"},
    {"-1e999", "line 1, column 1: a number too large for any field"},
    {"NaN", "line 1, column 1: not a value"},
    {"Infinity", "line 1, column 1: not a value"},
    {"nul", "line 1, column 1: not a value"},
    {"True", "line 1, column 1: not a value"},
    {"// c\n1", "line 1, column 1: not a value"},
    {"\"a", "line 1, column 3: a text has no end"},
    {"\"a\nb\"", "line 1, column 3: a control character inside a text"},
    {"\"\\x\"", "line 1, column 3: an unknown escape inside a text"},
    {"\"\\", "line 1, column 3: an unknown escape inside a text"},
    {"\"\\u12g4\"", "line 1, column 6: four hex digits are missing after \\u"},
    {"\"\\ud800\"", "line 1, column 8: half a surrogate pair after \\u"},
    {"\"\\udc00\"", "line 1, column 8: half a surrogate pair after \\u"},
    {"\"\xff\"", "line 1, column 1: this text is not UTF-8"},
    {"\"\xc0\x80\"", "line 1, column 1: this text is not UTF-8"},
    {"\"\xed\xa0\x80\"", "line 1, column 1: this text is not UTF-8"},
    {"\xef\xbb\xbf{}", "line 1, column 1: not a value"},
};

} // namespace

TEST_CASE("text that is not JSON is refused with its place and reason") {
    for (const BadText& row : bad_texts) {
        INFO(row.text);
        CHECK(reason(row.text).starts_with(row.expected));
        CHECK(reason(row.text).ends_with(", accepted is a backup as Torchside saves it"));
    }
    CHECK(reason(std::string("{\"a\":\0 1}", 9)).starts_with("line 1, column 6: not a value"));
}

TEST_CASE("limits keep every text cheap") {
    const auto nest = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    CHECK(parse_json(nest(16)).ok());
    CHECK(reason(nest(17)).starts_with("line 1, column 17: nested deeper than 16 levels"));
    CHECK(reason(std::string(900000, '[')).starts_with("line 1, column 17: nested deeper than 16 levels"));
    CHECK(reason(std::string((1 << 20) + 1, ' ')).find("larger than 1 MB") != std::string::npos);
    CHECK(parse_json("0." + std::string(62, '1')).ok());
    CHECK(reason("0." + std::string(63, '1')).find("a number of more than 64 characters") != std::string::npos);
    std::string list = "[0";
    for (int i = 1; i < 10000; ++i) {
        list += ",0";
    }
    CHECK(parse_json(list + "]").ok());
    CHECK(reason(list + ",0]").find("more than 10000 entries in one list") != std::string::npos);
    std::string object = "{\"k0\":0";
    for (int i = 1; i < 64; ++i) {
        object += ",\"k" + std::to_string(i) + "\":0";
    }
    CHECK(parse_json(object + "}").ok());
    CHECK(reason(object + ",\"x\":0}").find("more than 64 keys in one object") != std::string::npos);
}

TEST_CASE("texts keep every letter through reading and writing") {
    const auto parsed = parse_json(R"(["\"\\\/\b\f\n\r\t", "\u00e9\u2153\ud83d\ude00", "é⅓😀"])");
    REQUIRE(parsed.ok());
    CHECK(parsed.value().items[0].text == "\"\\/\b\f\n\r\t");
    CHECK(parsed.value().items[1].text == "é⅓😀");
    CHECK(parsed.value().items[2].text == "é⅓😀");
    JsonWriter out;
    out.text(parsed.value().items[0].text);
    CHECK(nlohmann::json::parse(out.take(), nullptr, false) == parsed.value().items[0].text);
}

TEST_CASE("the writer breaks lines by level and keeps a line that was asked for") {
    JsonWriter out;
    out.open('{');
    out.key("a").number(1);
    out.key("none").open('[');
    out.close();
    out.key("rows").open('[');
    for (int i = 0; i < 2; ++i) {
        out.open_line('{');
        out.key("x").number(i);
        out.key("y").open('[');
        out.flag(true);
        out.null();
        out.close();
        out.close();
    }
    out.close();
    out.close();
    CHECK(out.take() == "{\n  \"a\": 1,\n  \"none\": [],\n  \"rows\": [\n    {\"x\": 0, \"y\": [true, null]},\n"
                        "    {\"x\": 1, \"y\": [true, null]}\n  ]\n}\n");
}

TEST_CASE("numbers are written short and read back to the last bit") {
    CHECK(decimal_text(0.1) == "0.1");
    CHECK(decimal_text(6) == "6");
    CHECK(decimal_text(-12.7) == "-12.7");
    CHECK(decimal_text(100000) == "100000");
    CHECK(decimal_text(0.30000000000000004) == "0.30000000000000004");
    test::Rng rng(11);
    for (int i = 0; i < 20000; ++i) {
        double x = 0.0;
        const std::uint64_t bits = rng.bits();
        static_assert(sizeof x == sizeof bits);
        std::memcpy(&x, &bits, sizeof x);
        if (!std::isfinite(x) || x == 0.0) {
            continue;
        }
        const auto back = parse_json(decimal_text(x));
        REQUIRE(back.ok());
        REQUIRE(back.value().number == x);
    }
    JsonWriter out;
    out.number(std::numeric_limits<double>::quiet_NaN());
    CHECK(out.take() == "null\n");
}

// The two readers must agree on every text that is inside our limits; a doubled key and bad UTF-8 aside, which only
// ours refuses here because the text below has neither.
TEST_CASE("what is JSON is what the general library takes for JSON") {
    const std::string good = R"({"torchside": 1, "a": [1, -2.5e-3, true, false, null, "x\u0041\n"], "b": {"c": {}}})";
    constexpr std::string_view pieces = "{}[]\",:0123456789eE+-. tfn\\ux";
    test::Rng rng(5);
    int accepted = 0;
    for (int i = 0; i < 40000; ++i) {
        std::string text = good;
        for (auto n = 1 + rng.below(2); n > 0; --n) {
            const auto at = rng.below(text.size());
            const char piece = pieces[rng.below(pieces.size())];
            switch (rng.below(3)) {
            case 0:
                text[at] = piece;
                break;
            case 1:
                text.insert(text.begin() + static_cast<std::ptrdiff_t>(at), piece);
                break;
            default:
                text.erase(at, 1 + rng.below(3));
            }
        }
        const auto ours = parse_json(text);
        const bool theirs = nlohmann::json::accept(text);
        const bool twice = !ours && test::said(ours.fault().text).find("there twice") != std::string::npos;
        INFO(text);
        REQUIRE((ours.ok() == theirs || twice));
        accepted += theirs ? 1 : 0;
    }
    CHECK(accepted > 5000);
}
