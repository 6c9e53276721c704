// Reading parts of a workbook from parsed JSON.
#pragma once

#include <optional>
#include <string>

#include "core/codec/json.hpp"
#include "core/schema/fields.hpp"

namespace torchside::document {

/// One key's value; `path` is the key's own and is used as scratch.
[[nodiscard]] std::optional<Fault> read_value(const Field& field, const codec::JsonValue& json, void* owner,
                                              std::string& path);

/// All of an object: no key unknown, none that is required missing.
[[nodiscard]] std::optional<Fault> read_members(Fields fields, const codec::JsonValue& json, void* object,
                                                std::string& path);

} // namespace torchside::document
