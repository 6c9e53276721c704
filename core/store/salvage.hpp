// What can still be read of work that read_workbook() refuses: a damaged record, a file with a key that nobody knows.
//
// Every key whose value is whole and in range is taken, every entry of a list as a whole or not at all, the rest counted
// as lost. JSON that is whole is taken key by key. JSON that is not is taken line by line, as write_workbook() sets it:
// a line is one value, its indentation says how deep, and a line that opens an object and cannot be read is the key that
// the schema has next. Nothing is guessed: what is lost has its default.
#pragma once

#include <string_view>

#include "core/worksheet/workbook.hpp"

namespace torchside::document {

struct Salvaged {
    Workbook workbook{};
    int read = 0; // values, and entries of lists
    int lost = 0; // the same, and lines of which nobody can say what they were
};

/// `bytes`: a record or a workbook's JSON, whole or damaged; up to 1 MB is looked at.
[[nodiscard]] Salvaged salvage(std::string_view bytes);

} // namespace torchside::document
