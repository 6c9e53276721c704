// What a cut showed, as three cards: one touch logs it. Tune has them, and so has the table's screen.
#pragma once

#include <span>
#include <string_view>

#include "core/tune/test_cut.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

struct Shows {
    tune::Verdict verdict;
    const char* id; // after the screen's own name
    Word name, sign;
    Word logged; // what the undo bar calls it
};
[[nodiscard]] std::span<const Shows> all_shows();

/// Drawing and name, and where the card has the height for it, what the eye looks for. True when it was touched.
bool verdict_card(Ui& ui, Rect place, const Shows& show, std::string_view screen, std::string_view state = {});

/// A cut of the job's own stock at this feed goes to the log.
void log_verdict(App& app, Speed feed, const Shows& show);

} // namespace torchside::web
