#include "core/store/record.hpp"

#include <optional>

#include "core/codec/crc32.hpp"
#include "core/store/workbook_file.hpp"

namespace torchside::document {

namespace {

std::string hex8(std::uint32_t v) {
    std::string out(8, '0');
    for (std::size_t i = 8; i-- > 0; v >>= 4) {
        out[i] = "0123456789abcdef"[v & 15U];
    }
    return out;
}

// A plain decimal up to 2^32 - 1 without a leading zero, followed by a space; both are taken off the front.
bool take_number(std::string_view& text, std::uint32_t& out) {
    const std::size_t size = text.find(' ');
    if (size == std::string_view::npos || size == 0 || size > 10 || (text[0] == '0' && size > 1)) {
        return false;
    }
    std::uint64_t value = 0;
    for (const char c : text.substr(0, size)) {
        if (c < '0' || c > '9') {
            return false;
        }
        value = value * 10 + static_cast<std::uint64_t>(c - '0');
    }
    text.remove_prefix(size + 1);
    out = static_cast<std::uint32_t>(value);
    return value <= 0xFFFFFFFFU;
}

} // namespace

std::string pack_record(std::string_view json, std::uint32_t counter) {
    std::string out(record_mark);
    out += std::to_string(counter) + ' ' + std::to_string(json.size()) + ' ';
    out += hex8(codec::crc32(out, json)) + '\n';
    out += json;
    return out;
}

Outcome<Record> open_record(std::string_view bytes) {
    const Fault damaged{"storage.damaged", Text{}};
    std::string_view rest = bytes;
    Record record;
    std::uint32_t size = 0;
    if (!rest.starts_with(record_mark)) {
        return damaged;
    }
    rest.remove_prefix(record_mark.size());
    if (!take_number(rest, record.counter) || !take_number(rest, size)) {
        return damaged;
    }
    const std::string_view head = bytes.substr(0, bytes.size() - rest.size());
    if (rest.size() < 9 || rest[8] != '\n' || rest.size() - 9 != size) {
        return damaged;
    }
    const std::string_view json = rest.substr(9);
    if (rest.substr(0, 8) != hex8(codec::crc32(head, json))) {
        return damaged;
    }
    record.workbook_json = json;
    return record;
}

Outcome<Kept> newest(std::string_view slot_a, std::string_view slot_b) {
    if (slot_a.empty() && slot_b.empty()) {
        return Fault{"storage.empty", Text{}};
    }
    const Outcome<Record> a = open_record(slot_a);
    const Outcome<Record> b = open_record(slot_b);
    if (!a && !b) {
        return (slot_a.empty() ? b : a).fault();
    }
    const bool a_first = a && (!b || a.value().counter >= b.value().counter);
    std::optional<Fault> refused;
    for (const Slot slot : {a_first ? Slot::a : Slot::b, a_first ? Slot::b : Slot::a}) {
        const Outcome<Record>& record = slot == Slot::a ? a : b;
        const std::string_view other = slot == Slot::a ? slot_b : slot_a;
        if (!record) {
            continue;
        }
        auto workbook = read_workbook(record.value().workbook_json);
        if (workbook) {
            const bool other_whole = slot == Slot::a ? b.ok() : a.ok();
            const bool other_damaged = refused || (!other_whole && !other.empty());
            return Kept{std::move(workbook.value()), record.value().counter, slot, other_damaged};
        }
        if (!refused) {
            refused = workbook.fault();
        }
        if (refused->field == "torchside") {
            break; // written by a newer program: nothing older may take its place
        }
    }
    return *refused;
}

} // namespace torchside::document
