// Tables for spreadsheets: written as RFC 4180 has it, read as a spreadsheet puts copied cells on the clipboard.
//
// A cell that holds a comma, a quotation mark or the end of a line stands in quotation marks, a mark inside it is doubled; each line ends in
// CR LF. What a person typed may begin with a sign that a spreadsheet takes for a formula (= + - @, a tab, a line's end): such a
// text goes behind an apostrophe, so that it is shown and nothing of it is run. Figures are not texts and keep their minus.
// Example (also a test): the texts `=1+1`, `say "go"` and the figure -2 are  '=1+1,"say ""go""",-2
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace torchside::codec {

class CsvWriter {
public:
    void text(std::string_view words);
    /// Digits, with a point and a sign if need be.
    void figure(std::string_view digits) { cell(digits); }
    void end_row();
    [[nodiscard]] const std::string& table() const { return out_; }

private:
    void cell(std::string_view content);

    std::string out_;
    bool begun_ = false; // this row has a cell
};

using Cells = std::vector<std::string>;

/// Rows of cells with tabs between them, each without the blanks around it. A cell in quotation marks may hold tabs, ends of lines
/// and doubled marks. Empty rows are left out. Any bytes whatever give a table.
[[nodiscard]] std::vector<Cells> read_tabbed(std::string_view text);

} // namespace torchside::codec
