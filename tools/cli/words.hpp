// The words of a command line: files, and options that are each followed by their value.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/stock/metal.hpp"
#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"
#include "generated/words/cli.hpp"

namespace torchside::cli {

using Arguments = std::vector<std::string>;

class Words {
public:
    /// `what` a file is; a link is taken as it stands. Sorts the words; refuses an unknown or doubled option, one
    /// without its value, and a wrong number of files.
    static Outcome<Words> sort(const Arguments& arguments, std::size_t files,
                               std::initializer_list<std::string_view> options, Word what = words::cli::workbook_file);

    [[nodiscard]] const std::string& file(std::size_t index) const { return files_[index]; }
    [[nodiscard]] std::optional<std::string> option(std::string_view name) const;

    /// A number as JSON writes one, so without units and without nan.
    [[nodiscard]] Outcome<double> number(std::string_view name) const;
    [[nodiscard]] Outcome<std::optional<double>> number_if_given(std::string_view name) const;

    /// The index of one of the given words, `otherwise` when the option is not there (none: it must be).
    [[nodiscard]] Outcome<std::size_t> choice(std::string_view name, std::initializer_list<std::string_view> choices,
                                              std::optional<std::size_t> otherwise = {}) const;
    [[nodiscard]] Outcome<Metal> material() const; // --material

private:
    std::vector<std::string> files_{};
    std::vector<std::pair<std::string, std::string>> options_{};
};

/// A file, or standard input for "-"; one byte more than `most` when there is more. `what`: a workbook file.
[[nodiscard]] Outcome<std::string> load_text(const std::string& file, std::size_t most, Word what);

/// A workbook file, or standard input for "-".
[[nodiscard]] Outcome<Workbook> load_workbook(const std::string& file);

} // namespace torchside::cli
