// What the page keeps in the browser: the workbook's JSON in a record that can tell when it is damaged, written to two
// slots in turn, so that a write that was cut short costs the last change and never the workbook.
//
// A record is one line of head and then the JSON, unchanged:
//   torchside-record 1 <counter> <length of the JSON in bytes> <check, 8 hex digits>\n<JSON>
// The check is the CRC-32 of the head up to and with the space before the check, then the JSON. It finds every single
// damaged byte; a cut is found by the length.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

inline constexpr std::string_view record_mark = "torchside-record 1 "; // no line of a workbook begins so

struct Record {
    std::string workbook_json;
    std::uint32_t counter = 0; // one more than the record before
};

[[nodiscard]] std::string pack_record(std::string_view workbook_json, std::uint32_t counter);
[[nodiscard]] Outcome<Record> open_record(std::string_view bytes);

enum class Slot { a, b };

struct Kept {
    Workbook workbook{};
    std::uint32_t counter = 0;  // write the next record with counter + 1 ...
    Slot slot = Slot::a;        // ... to the other slot
    bool other_damaged = false; // the other slot held something that cannot be read: offer it for export
};

/// The newest good record of the two slots; an empty slot is just empty. A record that is whole but whose workbook is
/// refused counts as damaged, except for one written by a newer Torchside.
/// Faults: "storage.empty" both slots are empty; "storage.damaged" neither holds a whole record; else the Fault of
/// read_workbook ("torchside": the newest is from a newer Torchside - then show nothing and overwrite neither slot).
[[nodiscard]] Outcome<Kept> newest(std::string_view slot_a, std::string_view slot_b);

} // namespace torchside::document
