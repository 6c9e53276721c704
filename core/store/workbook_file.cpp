#include "core/store/workbook_file.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/codec/decimal.hpp"
#include "core/codec/json.hpp"
#include "core/codec/utf8.hpp"
#include "core/schema/access.hpp"
#include "core/schema/outline_json.hpp"
#include "core/store/workbook_read.hpp"
#include "generated/words/file.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

Word type_name(const codec::JsonValue& json) {
    constexpr Word names[] = {words::file::null,   words::file::a_flag, words::file::a_number,
                              words::file::a_text, words::file::a_list, words::file::object};
    return names[static_cast<std::size_t>(json.type)];
}

Scalar to_scalar(const codec::JsonValue& json) {
    switch (json.type) {
    case codec::JsonValue::Type::flag:
        return json.number != 0.0;
    case codec::JsonValue::Type::number:
        return json.number;
    case codec::JsonValue::Type::text:
        return std::string_view(json.text);
    default:
        return nullptr;
    }
}

Fault type_fault(const std::string& path, const codec::JsonValue& json, const FieldInfo& info) {
    return {path, words::file::NotAccepted{.accepted = accepted(info), .value = type_name(json)}};
}

Wrong read_list(const Field& field, const codec::JsonValue& json, void* owner, std::string& path) {
    if (json.type != codec::JsonValue::Type::list) {
        return type_fault(path, json, field.info);
    }
    const auto count = static_cast<double>(json.items.size());
    if (count < field.info.low || count > field.info.high) {
        return Fault{path, words::file::Entries{.accepted = accepted(field.info), .count = static_cast<int>(count)}};
    }
    void* list = writable(field, owner);
    while (field.list->size(list) > 0) {
        field.list->erase(list, field.list->size(list) - 1);
    }
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        const PathScope entry(path, i);
        field.list->grow(list);
        // The list was just grown through this same door, so its entry may be written to.
        void* fresh = const_cast<void*>(field.list->at(list, i)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
        if (auto wrong = read_members(*field.children, json.items[i], fresh, path)) {
            return wrong;
        }
    }
    return {};
}

} // namespace

Wrong read_value(const Field& field, const codec::JsonValue& json, void* owner, std::string& path) {
    if (field.info.kind == FieldKind::object && field.info.nullable && json.type == codec::JsonValue::Type::null) {
        field.reset(writable(field, owner));
        return {};
    }
    if (field.info.kind == FieldKind::object) {
        return read_members(*field.children, json, writable(field, owner), path);
    }
    if (field.info.kind == FieldKind::list) {
        return read_list(field, json, owner, path);
    }
    if (field.info.kind == FieldKind::outline) {
        return read_outline(json, path, *static_cast<SharedOutline*>(writable(field, owner)));
    }
    if (json.type == codec::JsonValue::Type::list || json.type == codec::JsonValue::Type::object) {
        return type_fault(path, json, field.info);
    }
    if (auto wrong = put(field, owner, to_scalar(json))) {
        return Fault{path, std::move(*wrong)};
    }
    return {};
}

namespace {

std::string key_list(Fields fields) {
    std::string out;
    for (const Field& field : fields) {
        out += out.empty() ? "" : ", ";
        out += field.key;
    }
    return out;
}

} // namespace

Wrong read_members(Fields fields, const codec::JsonValue& json, void* object, std::string& path) {
    if (json.type != codec::JsonValue::Type::object) {
        return Fault{path, words::file::Members{.keys = key_list(fields), .value = type_name(json)}};
    }
    for (std::size_t i = 0; i < json.keys.size(); ++i) {
        const auto field =
            std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.key == json.keys[i]; });
        const bool known = field != fields.end();
        const PathScope scope(path, known ? json.keys[i] : codec::one_line(json.keys[i]));
        if (!known) {
            return Fault{path, words::file::UnknownKey{.keys = key_list(fields)}};
        }
        if (auto wrong = read_value(*field, json.items[i], object, path)) {
            return wrong;
        }
    }
    for (const Field& field : fields) {
        if (field.info.required && std::find(json.keys.begin(), json.keys.end(), field.key) == json.keys.end()) {
            const PathScope scope(path, field.key);
            return Fault{path, words::file::Missing{.accepted = accepted(field.info)}};
        }
    }
    return {};
}

namespace {

constexpr std::string_view version_key = "torchside";

/// What turns a workbook of version n into one of n + 1, for every n that came before: the first entry takes version 1.
/// A step gets the top object without its version, and may meet anything that is JSON.
constexpr std::array<void (*)(codec::JsonValue&), workbook_version - 1> steps{};

// Takes the version off the top object, so that what is left is only what the tables describe.
Wrong take_version(codec::JsonValue& json) {
    if (json.type != codec::JsonValue::Type::object) {
        return Fault{"workbook", words::file::Top{.value = type_name(json)}};
    }
    const auto key = std::find(json.keys.begin(), json.keys.end(), version_key);
    if (key == json.keys.end()) {
        return Fault{std::string(version_key), no_version()};
    }
    const auto value = json.items.begin() + (key - json.keys.begin());
    const bool is_number = value->type == codec::JsonValue::Type::number;
    const double number = is_number ? value->number : 0.0;
    if (is_number && value->number > workbook_version) {
        return Fault{std::string(version_key),
                     words::file::Newer{.known = workbook_version, .version = codec::decimal_text(value->number)}};
    }
    if (number != std::floor(number) || number < 1.0) {
        const Text given = is_number ? words::verbatim(codec::decimal_text(value->number)) : Text(type_name(*value));
        return Fault{std::string(version_key), words::file::OddVersion{.known = workbook_version, .value = given}};
    }
    json.items.erase(value);
    json.keys.erase(key);
    for (auto from = static_cast<std::size_t>(number); from < workbook_version; ++from) {
        steps[from - 1](json);
    }
    return {};
}

void write_object(Fields fields, const void* object, codec::JsonWriter& out) {
    for (const Field& field : fields) {
        out.key(field.key);
        const void* member = field.member(object);
        if (field.info.kind == FieldKind::object) {
            out.open('{');
            write_object(*field.children, member, out);
            out.close();
        } else if (field.info.kind == FieldKind::outline) {
            write_outline(*static_cast<const SharedOutline*>(member), out);
        } else if (field.info.kind == FieldKind::list) {
            out.open('[');
            for (std::size_t i = 0; i < field.list->size(member); ++i) {
                out.open_line('{');
                write_object(*field.children, field.list->at(member, i), out);
                out.close();
            }
            out.close();
        } else {
            write_scalar(fetch(field, object), out);
        }
    }
}

} // namespace

void write_scalar(const Scalar& value, codec::JsonWriter& out) {
    switch (value.type) {
    case Scalar::Type::none:
        return out.null();
    case Scalar::Type::flag:
        return out.flag(value.number != 0.0);
    case Scalar::Type::number:
        return out.number(value.number);
    case Scalar::Type::text:
        return out.text(value.text);
    }
}

Text no_version() {
    return words::file::NoVersion{.known = workbook_version};
}

Outcome<Workbook> read_workbook(std::string_view json) {
    constexpr std::string_view mark = "\xEF\xBB\xBF"; // some editors begin UTF-8 with it
    json.remove_prefix(json.starts_with(mark) ? mark.size() : 0);
    auto parsed = codec::parse_json(json);
    if (!parsed) {
        return parsed.fault();
    }
    if (auto wrong = take_version(parsed.value())) {
        return *wrong;
    }
    Workbook workbook;
    std::string path;
    if (auto wrong = read_members(workbook_fields(), parsed.value(), &workbook, path)) {
        return *wrong;
    }
    if (auto wrong = broken_rule(workbook)) {
        return *wrong;
    }
    return workbook;
}

std::string write_workbook(const Workbook& workbook) {
    codec::JsonWriter out;
    out.open('{');
    out.key(version_key).number(workbook_version);
    write_object(workbook_fields(), &workbook, out);
    out.close();
    return out.take();
}

} // namespace torchside::document
