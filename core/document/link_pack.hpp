// An object of the schema's tables as CBOR and back: link.hpp says how. Internal to core/document.
#pragma once

#include <optional>
#include <string>

#include "core/document/cbor.hpp"
#include "core/document/fields.hpp"
#include "core/quantity/outcome.hpp"

namespace torchside::document {

/// A map of what differs from `fresh`; an empty map when nothing does.
void pack_object(Fields fields, const void* object, const void* fresh, std::string& out);

/// Reads into a default-made object. What is in the map is judged as in a file; `path` is the object's own, used as
/// scratch.
[[nodiscard]] std::optional<Fault> unpack_object(Fields fields, CborReader& in, void* object, std::string& path);

} // namespace torchside::document
