// The workbook as a file: strict, versioned JSON.
//
//   Outcome<Workbook> in = read_workbook(text);
//   std::string out = write_workbook(in.value());     // read_workbook(out) gives the same workbook to the last bit
//
// Reading takes a missing optional key as its default and refuses everything else that schema.hpp does not describe.
// Catalogue of refusals (Fault::field -> what is wrong):
//   "workbook"      not JSON (with line and column), over 1 MB, nested deeper than 16, a key given twice, a number that
//                   no double holds (1e999)
//   "torchside"     the version is missing, or newer than this program; then nothing else is judged
//   the key's path  unknown key, wrong type, not finite, out of range, not one of the words, required but missing
#pragma once

#include <string>
#include <string_view>

#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

inline constexpr std::size_t largest_file = 1 << 20; // bytes

[[nodiscard]] Outcome<Workbook> read_workbook(std::string_view json);

/// What is said of JSON that is no workbook of any version, under "torchside".
[[nodiscard]] Text no_version();

/// Every key, in the order of the schema; the entries of a list take one line each.
[[nodiscard]] std::string write_workbook(const Workbook& workbook);

} // namespace torchside::document
