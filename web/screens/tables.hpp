// Log, chart and jobs as tables for a spreadsheet: heads in the user's language with their units, figures in his units.
#pragma once

#include <string>

#include "web/screens/body.hpp"

namespace torchside::web {

[[nodiscard]] std::string chart_table(App& app);
/// The open job, and below it each quote that was handed out, newest first.
[[nodiscard]] std::string jobs_table(App& app);

enum class Table { log, chart, jobs };
[[nodiscard]] Word table_name(Table table);
/// Saves one as a file, and says so.
void save_table(App& app, Table table);
/// The row that does it.
void table_row(Body& body, Table table);

/// Rows that were copied in a spreadsheet, for the log: what was taken is said, or why nothing was.
void paste_into_log(App& app, std::string_view text);
/// "6 mm, 45 A, 1500 mm/min, clean": a row of the log in one line.
[[nodiscard]] std::string cut_line(const App& app, const tune::TestCut& cut);

} // namespace torchside::web
