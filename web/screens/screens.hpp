// One function a screen: it draws itself into a place, registers its controls, and changes the workbook only by an
// intent.
#pragma once

#include "web/screens/app.hpp"

namespace torchside::web {

class Body;

/// Everything on the screen, in one, two or three columns.
void lay_out(App& app, Rect screen, int columns);

void title_block(App& app, Rect place);
[[nodiscard]] float title_block_height(const Ui& ui);
void place_bar(App& app, Rect place);
[[nodiscard]] float place_bar_height(const Ui& ui);

void cut_screen(App& app, Rect place);
/// What Cut ends with once all of the program is there: none of it is the first answer.
void after_answer(Body& column);
/// At the table: the screen is opened or left, and drawn.
[[gnu::noinline]] void turn_bench(App& app, bool on);
[[gnu::noinline]] void bench_screen(App& app, Rect screen);
/// The settings as text for the clipboard.
void copy_settings(App& app);
/// A figure that a finger was held on is copied; false where that is none.
bool copy_figure(App& app, std::string_view id);
/// What the customer will see, as it stands now.
void customer_column(App& app, Rect place);
void chart_column(App& app, Rect place);
void tune_screen(App& app, Rect place);
void part_screen(App& app, Rect place);
// Functions of their own in the program as linked, so that web/later.txt can name them.
[[gnu::noinline]] void quote_screen(App& app, Rect place);
[[gnu::noinline]] void shop_screen(App& app, Rect place);
/// The panel that is open, or that stands beside the place on a wide screen.
[[nodiscard]] std::string panel_on_show(const App& app);

/// What was typed and not taken, and what stands instead: "Tax was not changed: it stays 8 %."; empty without a draft.
[[nodiscard]] std::string draft_words(const App& app, std::size_t most = std::string::npos);
/// The same as a bar at the foot of `rest` that leads to the field, and in a panel; only while there is a draft of the
/// workbook.
void draft_bar(App& app, Rect& rest);
void draft_caution(Body& body);
[[nodiscard]] bool draft_in_sight(const App& app);
void open_draft(App& app);

/// What was changed last and the way back, at the foot of `rest`; only while there is a change.
/// Of its usual words, which take one line.
float change_bar_height(const Ui& ui);
void change_bar(App& app, Rect& rest);
/// The same as words to be spoken, "" without a change.
[[nodiscard]] std::string change_words(const App& app);

/// Between columns, for a mouse and for keys: it drags them wider or narrower.
void column_edges(App& app, Rect screen, int columns);
/// Which question of Start my shop is on show, as words to be spoken, with a blank behind them.
[[nodiscard]] std::string start_words(const App& app);

/// What gaps a cut in this plate crosses and what they rest on; nothing without gaps.
void gap_lines(Body& body, const std::string& id);
/// All of the workbook as a file.
void save_backup(App& app);
/// A new version waits: what it brings and the way to it, at the foot of `rest`.
void update_strip(App& app, Rect& rest);
/// A row that installs the page, where the browser can and the user has come back.
void install_row(Body& body, const char* id);
/// Of the warnings that stand now: which they are.
[[nodiscard]] std::vector<std::string> warning_codes(const App& app);
/// What a finger that pulls the page down will open.
void pull_strip(App& app, Rect screen);
/// Where work is kept, its backups, and what to do when it cannot be read or kept.
void kept_body(Body& body);
/// Published cuts beside what is said of them.
void evidence_body(Body& body);
/// What must be known of the user's work and where it is kept; empty when all is well.
[[nodiscard]] std::string_view storage_alert(const App& app);
/// The same at the foot of `rest`, with the way to what can be done.
void storage_strip(App& app, Rect& rest);

// The panels; web/screens/pages.cpp says which name opens which.
void find_panel(App& app, PanelAt at);
void keys_panel(App& app, PanelAt at);
void news_panel(App& app, PanelAt at);
void stock_panel(App& app, PanelAt at);
void figure_panel(App& app, PanelAt at);
void reach_panel(App& app, PanelAt at);
void circuit_panel(App& app, PanelAt at);
void air_panel(App& app, PanelAt at);
void safety_panel(App& app, PanelAt at);
void chart_panel(App& app, PanelAt at);
void read_panel(App& app, PanelAt at);
void coupon_panel(App& app, PanelAt at);
void log_panel(App& app, PanelAt at);
void cut_row_panel(App& app, PanelAt of);
void give_panel(App& app, PanelAt at);
void taken_panel(App& app, PanelAt at);
/// The log's last part: cuts that shops give each other.
void others_rows(Body& body);
void shape_panel(App& app, PanelAt at);
void plate_panel(App& app, PanelAt at);
void time_panel(App& app, PanelAt at);
void costs_panel(App& app, PanelAt at);
void breaks_panel(App& app, PanelAt at);
void rates_panel(App& app, PanelAt at);
void terms_panel(App& app, PanelAt at);
void send_panel(App& app, PanelAt at);
void issued_panel(App& app, PanelAt at);
void wear_panel(App& app, PanelAt at);
void set_row_panel(App& app, PanelAt of);
void start_panel(App& app, PanelAt at);
void incoming_panel(App& app, PanelAt at);
void clash_panel(App& app, PanelAt at);
void section_panel(App& app, PanelAt at);

} // namespace torchside::web
