// An object of the schema's tables as CBOR and back: link.hpp says how.
#pragma once

#include <optional>
#include <string>

#include "core/codec/cbor.hpp"
#include "core/schema/fields.hpp"
#include "core/words/outcome.hpp"

namespace torchside::document {

/// A map of what differs from `fresh`; an empty map when nothing does.
void pack_object(Fields fields, const void* object, const void* fresh, std::string& out);

/// Reads into a default-made object. What is in the map is judged as in a file; `path` is the object's own, used as
/// scratch.
[[nodiscard]] std::optional<Fault> unpack_object(Fields fields, codec::CborReader& in, void* object, std::string& path);

} // namespace torchside::document
