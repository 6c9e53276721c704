// The record in the browser's storage: damage is always noticed.
#include <catch2/catch_test_macros.hpp>

#include <string>

#include "core/codec/crc32.hpp"
#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

Workbook with_thickness(double t) {
    Workbook w;
    w.job.thickness = Length{t, mm};
    return w;
}

std::string record_of(const Workbook& w, std::uint32_t counter) {
    return pack_record(write_workbook(w), counter);
}

} // namespace

// ITU-T V.42 / ISO 3309: the usual check value of this CRC.
TEST_CASE("the checksum is CRC-32") {
    CHECK(codec::crc32("123456789") == 0xCBF43926U);
    CHECK(codec::crc32("") == 0U);
}

TEST_CASE("a record gives back what was packed") {
    for (const std::uint32_t counter : {0U, 1U, 4294967295U}) {
        const auto record = open_record(pack_record("{\"a\": \"\n\"}", counter));
        REQUIRE(record.ok());
        CHECK(record.value().workbook_json == "{\"a\": \"\n\"}");
        CHECK(record.value().counter == counter);
    }
    CHECK(open_record(pack_record("", 7)).ok());
    CHECK_FALSE(open_record("").ok());
    CHECK_FALSE(open_record("torchside-record 1 00 0 00000000\n").ok());
    CHECK_FALSE(open_record("torchside-record 1 4294967296 0 00000000\n").ok());
    CHECK_FALSE(open_record("torchside-record 1 99999999999999999999999 0 00000000\n").ok());
}

TEST_CASE("the newest whole record is taken") {
    const std::string older = record_of(with_thickness(3), 7);
    const std::string newer = record_of(with_thickness(8), 8);
    const auto a = newest(newer, older);
    REQUIRE(a.ok());
    CHECK(a.value().workbook.job.thickness.in(mm) == 8.0);
    CHECK(a.value().counter == 8);
    CHECK(a.value().slot == Slot::a);
    CHECK_FALSE(a.value().other_damaged);
    CHECK(newest(older, newer).value().slot == Slot::b);
    CHECK(newest("", newer).value().slot == Slot::b);
    CHECK_FALSE(newest("", newer).value().other_damaged);
    CHECK(newest("", "").fault().field == "storage.empty");
    CHECK(newest("x", "").fault().field == "storage.damaged");
    CHECK(newest("", "x").fault().field == "storage.damaged");
}

TEST_CASE("a whole record that cannot be read gives way, unless a newer program wrote it") {
    const std::string good = record_of(with_thickness(3), 7);
    const auto kept = newest(pack_record("{\"torchside\": 1, \"job\": {\"thickness_mm\": 999}}", 8), good);
    REQUIRE(kept.ok());
    CHECK(kept.value().slot == Slot::b);
    CHECK(kept.value().other_damaged);
    CHECK(newest(pack_record("{\"torchside\": 2}", 8), good).fault().field == "torchside");
    CHECK(newest(good, pack_record("{\"torchside\": 2}", 8)).fault().field == "torchside");
    CHECK(newest(pack_record("{}x", 8), "").fault().field == "workbook");
}

TEST_CASE("a record with any byte flipped or cut anywhere is never taken for a good one") {
    const std::string good = record_of(with_thickness(3), 7);
    const std::string newer = record_of(with_thickness(8), 8);
    int wrong = 0;
    for (std::size_t i = 0; i < newer.size(); ++i) {
        for (const unsigned bits : {1U, 2U, 4U, 8U, 16U, 32U, 64U, 128U, 255U}) {
            std::string damaged = newer;
            damaged[i] = static_cast<char>(static_cast<unsigned char>(damaged[i]) ^ bits);
            wrong += open_record(damaged).ok() ? 1 : 0;
        }
        std::string flipped = newer;
        flipped[i] = static_cast<char>(~static_cast<unsigned char>(flipped[i]));
        const std::string cut = newer.substr(0, i);
        const std::string cut_front = newer.substr(i + 1);
        std::string without = newer;
        without.erase(i, 1);
        for (const std::string& damaged : {flipped, cut, cut_front, without}) {
            wrong += open_record(damaged).ok() ? 1 : 0;
            const auto kept = newest(damaged, good);
            const bool previous = kept && kept.value().counter == 7 && kept.value().other_damaged == !damaged.empty() &&
                                  kept.value().workbook.job.thickness.in(mm) == 3.0;
            wrong += previous ? 0 : 1;
        }
    }
    CHECK(wrong == 0);
    CHECK_FALSE(open_record(newer + " ").ok());
}
