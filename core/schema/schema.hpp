// What each key of the saved workbook may hold: the one description that reading, writing, the printed JSON Schema, the
// screens' fields and the command line all go by. The tables themselves are in schema_shop.cpp and schema_job.cpp.
//
// A path is the key's place in the file: "job.thickness_mm", "shop.machine.nozzles[0].bore_mm". field() pays no
// attention to the number between brackets ("shop.tests[]" and "shop.tests[7]" name the same description).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/quantity/field_unit.hpp"
#include "core/words/text.hpp"

namespace torchside::document {

/// The version of the workbook format, the value of its top key "torchside".
inline constexpr int workbook_version = 1;

/// `outline` is the drawn part, see outline_json.hpp: no single value, nor an object of keys.
enum class FieldKind { number, integer, flag, word, text, object, list, outline };

struct FieldInfo {
    FieldKind kind = FieldKind::number;
    bool nullable = false; // null is accepted and means: not given
    bool required = false; // must be present where its object is; everything else has a default
    double low = 0.0;      // number, integer: the accepted range, both ends included, in the
    double high = 0.0;     // key's unit; text: letters; list: entries
    FieldUnit unit = FieldUnit::none;
    Word meaning{};                            // one short sentence, shown to the user
    std::span<const std::string_view> words{}; // word: what is accepted, in the order of the enum
    std::span<const int> choices{};            // integer: when only these are accepted
    bool plain = false;                        // text: letters, digits and signs of ASCII without brackets
    Word blank{};                              // nullable: "Leave blank to ..."
};

/// The description of one key; none when the path names nothing in the workbook.
[[nodiscard]] std::optional<FieldInfo> field(std::string_view path);

/// What a key accepts, as a phrase for whoever writes a file: "0.3 to 150 mm, or null", "clean, too_fast or too_slow".
[[nodiscard]] Text accepted(const FieldInfo& info);

/// The workbook's JSON Schema (draft 2020-12), with every range, default and meaning: `torchside schema` prints it.
[[nodiscard]] std::string schema_json();

} // namespace torchside::document
