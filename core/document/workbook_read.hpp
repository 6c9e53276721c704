// Reading parts of a workbook from parsed JSON. Internal to core/document.
#pragma once

#include <optional>
#include <string>

#include "core/document/fields.hpp"
#include "core/document/json.hpp"

namespace torchside::document {

/// One key's value; `path` is the key's own and is used as scratch.
[[nodiscard]] std::optional<Fault> read_value(const Field& field, const JsonValue& json, void* owner,
                                              std::string& path);

/// All of an object: no key unknown, none that is required missing.
[[nodiscard]] std::optional<Fault> read_members(Fields fields, const JsonValue& json, void* object, std::string& path);

} // namespace torchside::document
