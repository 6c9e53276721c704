// Reaching one value of a workbook through the schema's tables. Screens use intent.hpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/codec/json.hpp"
#include "core/schema/fields.hpp"
#include "core/schema/intent.hpp"

namespace torchside::document {

/// Where a path leads: a key of an object or, when `entry` is set, one entry of the list that the key holds.
struct FieldRef {
    const Field* field = nullptr;
    const void* owner = nullptr; // the object that holds the key; null when only the description was asked for
    std::optional<std::size_t> entry{};
};

enum class Entries {
    held, // a list's entry must be there
    fresh // any entry stands for a new one
};

/// `workbook` may be null: then only descriptions are looked up and no list's length is judged.
[[nodiscard]] std::optional<FieldRef> find(std::string_view path, const Workbook* workbook, Entries entries);

/// The value of a scalar or text key.
[[nodiscard]] Scalar fetch(const Field& field, const void* owner);

/// What is wrong with a value for a key, as the second half of an error line; none when it is accepted.
[[nodiscard]] std::optional<Text> judge(const FieldInfo& info, const Scalar& value);

/// Judges and stores.
[[nodiscard]] std::optional<Text> put(const Field& field, void* owner, const Scalar& value);

void write_scalar(const Scalar& value, codec::JsonWriter& out);

/// Every value of an object and what it holds, as in check(); `path` is the object's own and is used as scratch.
[[nodiscard]] std::optional<Fault> check_object(Fields fields, const void* object, std::string& path);

/// The rules between two keys.
[[nodiscard]] std::optional<Fault> broken_rule(const Workbook& workbook);

/// Lengthens a path for as long as it lives.
class PathScope {
public:
    PathScope(std::string& path, std::string_view key) : path_(path), size_(path.size()) {
        if (!path.empty()) {
            path += '.';
        }
        path += key;
    }
    PathScope(std::string& path, std::size_t index) : path_(path), size_(path.size()) {
        path += '[' + std::to_string(index) + ']';
    }
    ~PathScope() { path_.resize(size_); }
    PathScope(const PathScope&) = delete;
    PathScope& operator=(const PathScope&) = delete;

private:
    std::string& path_;
    std::size_t size_;
};

} // namespace torchside::document
