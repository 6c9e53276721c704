// The outline of a drawn part as JSON: a list of contours, [{"role": "outer", "points": [[x, y], [x, y, bulge], ...]}].
// Coordinates in mm; bulge as in core/part/outline.hpp, 0 when left out.
//
// What was read with more than 10 000 points is used but not kept: it is written as null, and its name stays, so that
// the drawing can be asked for again. Reading turns outer contours anticlockwise and inner ones clockwise.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "core/codec/json.hpp"
#include "core/part/outline.hpp"

namespace torchside::document {

inline constexpr std::size_t most_kept_points = 10'000;

using SharedOutline = std::shared_ptr<const part::Outline>;

/// `path` is the key's own and is used as scratch.
[[nodiscard]] std::optional<Fault> read_outline(const codec::JsonValue& json, std::string& path, SharedOutline& out);
void write_outline(const SharedOutline& outline, codec::JsonWriter& out);
void outline_schema(codec::JsonWriter& out);

} // namespace torchside::document
