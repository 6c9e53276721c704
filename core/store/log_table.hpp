// The log as a table: saved for a spreadsheet, and rows pasted from one.
//
// One list of columns serves both: what was saved and copied back is read alike. A head says the column's name in the reader's language
// and its unit: "Feed (mm/min)". Figures are in the reader's units. Pasted rows need no head: then the columns stand in this
// order, from the metal on where the first cell names one, else from the thickness on, of the job's metal. Under a head
// they may stand in any order, in the units that it names. A cell left empty is not given; thickness and current are the job's then.
// Numbers are read as every field reads them, in the reader's decimal sign; a comma that may part thousands is refused, not guessed.
// Edges: nothing is taken unless every row is; a refusal names row and column.
// Example (also a test): "6\t45\t1500\tclean" is a cut of the job's metal, 6 mm at 45 A and 1500 mm/min, and it was clean.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/words/outcome.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

struct LogColumn {
    std::string_view key; // of a row of shop.tests
    Word name;
};
[[nodiscard]] std::span<const LogColumn> log_columns();

/// "Feed (mm/min)".
[[nodiscard]] std::string column_head(std::string_view name, std::string_view unit);

/// Oldest first, under one row of heads.
[[nodiscard]] std::string log_csv(const Workbook& book, const Speech& speech);

struct Pasted {
    Workbook book;
    int cuts = 0;
};
/// The workbook with these rows at the end of its log.
[[nodiscard]] Outcome<Pasted> paste_cuts(const Workbook& book, std::string_view text, const Speech& speech);

} // namespace torchside::document
