// A link or a backup that is refused says so in a person's words: no key of the workbook, and nothing for whoever writes files.
#include <catch2/catch_test_macros.hpp>

#include <string>

#include "core/store/workbook_file.hpp"
#include "tests/property/link_bytes.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

/// The words of one line of what is on screen.
std::string line_with(const Person& person, std::string_view words) {
    const std::string text = person.text();
    const auto at = text.find(words);
    if (at == std::string::npos) {
        return {};
    }
    const auto start = text.rfind('\n', at);
    return text.substr(start == std::string::npos ? 0 : start + 1, text.find('\n', at) - start - 1);
}

bool is_for_people(std::string_view line) {
    for (const std::string_view word : {"accepted", "job.", "shop.t", "shop.m", "_mm", "key", "null", "seal_"}) {
        if (line.find(word) != std::string_view::npos) {
            return false;
        }
    }
    return !line.empty();
}

std::string told_of_link(std::string_view cbor) {
    browser() = {};
    Person person;
    person.app().notice("route", "#" + test::checked_link('j', "\x01\x01" + std::string(cbor)));
    person.look();
    return line_with(person, "Nothing was taken.");
}

std::string told_of_backup(const std::string& text) {
    browser() = {};
    Person person;
    person.app().open_file(text);
    person.look();
    for (const char* words : {"One entry of that", "That backup is", "That is not a"}) {
        if (const std::string line = line_with(person, words); !line.empty()) {
            return line;
        }
    }
    return {};
}

} // namespace

TEST_CASE("a job link that breaks a field says what the field takes") {
    CHECK(told_of_link("\xA1\x01\xA1\x03\x18\xC8"sv) == // a thickness of 200
          "Nothing was taken. One entry of the link can't be used. Thickness of the plate. Enter 0.3 to 150 mm.");
    for (const std::string_view cbor : {
             "\xA1\x01\xA1\x03\xF9\x7E\x00"sv, // not a number
             "\xA1\x01\xA1\x03\x61\x38"sv,     // a text
             "\xA1\x01\xA1\x02\x18\x63"sv,     // a metal that is not there
             "\xA1\x01\xA1\x18\xFA\x05"sv,     // a key that is not there
             "\xA1\x01\xA2\x03\x08\x03\x09"sv, // a key twice
             "\xA1\x00\xA1\x17\x19\x01\xF5"sv, // too many test cuts
             "\xA1\x01\x08"sv,                 // a number for the job
             "\x08"sv,                         // no map at all
             "\xA1\x01\xA1\x61\x38\x08"sv,     // a key that is no number
             "\xA1\x01\xA1\x03\x08\x08"sv,     // something behind it
         }) {
        const std::string line = told_of_link(cbor);
        INFO(line);
        CHECK(is_for_people(line));
    }
}

TEST_CASE("a backup that breaks a field says what the field takes") {
    CHECK(told_of_backup(R"({"torchside": 1, "job": {"thickness_mm": 200}})") ==
          "Nothing was changed. One entry of that backup can't be used. Thickness of the plate. Enter 0.3 to 150 mm.");
    for (const char* text : {
             "",
             "[]",
             "{}",
             R"({"torchside": 1, "jobs": {}})",
             R"({"torchside": 1, "job": {"material": "tin"}})",
             R"({"torchside": 1, "job": 6})",
             R"({"torchside": 1, "shop": {"tests": {}}})",
             R"({"torchside": 1, "shop": {"machine": {"nozzles": []}}})",
             R"({"torchside": 1, "job": {"part": {"drawing": 3}}})",
             R"({"torchside": 1, "shop": {"machine": {"min_current_a": 60, "max_current_a": 40}}})",
             R"({"torchside": 1, "shop": {"rates": {"currency": "usd"}}})",
             R"({"torchside": 1, "shop": {"public_url": "x"}})",
             R"({"torchside": 1, "shop": {"name": "a\u0007b"}})",
             R"({"torchside": 1, "shop": {"tests": [{"material": "copper"}]}})",
         }) {
        const std::string line = told_of_backup(text);
        INFO(text << ": " << line);
        CHECK(is_for_people(line));
    }
    // A seal's key has no field of its own.
    CHECK(told_of_backup(R"({"torchside": 1, "shop": {"seal_key": "ab"}})")
              .ends_with("A whole key has 64 digits of 0-9 and a-f."));
    CHECK(told_of_backup(R"({"torchside": 1, "shop": {"old_keys": [{"seal_key": "ab"}]}})")
              .ends_with("A whole key has 64 digits of 0-9 and a-f."));
}
