// The drawing of a job in a link: an array of contours, each an array of its role and then x, y and bulge of each
// point, to the last bit.
//
// A drawing of more than most_drawing bytes (some 2000 points and more) is left out, and its name stays: it is to be
// opened again. What is read is judged as in a file, by read_outline().
#pragma once

#include "core/codec/cbor.hpp"
#include "core/schema/outline_json.hpp"

namespace torchside::document {

inline constexpr std::size_t most_drawing = 40000;

/// Empty when there is none, or too much.
[[nodiscard]] std::string pack_drawing(const SharedOutline& outline);
[[nodiscard]] std::optional<Fault> unpack_drawing(codec::CborReader& in, std::string& path, SharedOutline& out);

} // namespace torchside::document
