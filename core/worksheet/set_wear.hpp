// What the wear of the set in use does to the feed, said. One table for the warning on Cut and the line on Tune.
#pragma once

#include <optional>

#include "core/tune/posterior.hpp"
#include "core/words/message.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

/// The count of the set in use that a new row of the log has; none where the shop counts no starts.
[[nodiscard]] std::optional<double> starts_now(const Shop& shop);

/// The set's wear lowers the feed noticeably (Trail::for_wear), and below what the table could do. Feeds that rise with
/// wear are in no kind of shop.
[[nodiscard]] bool set_slows(const tune::Trail& trail, const Shop& shop);

/// Of a set that slows.
[[nodiscard]] Text set_slows_why(const tune::Trail& trail, const Shop& shop);
[[nodiscard]] Message set_slows_note(const tune::Trail& trail, const Shop& shop);

} // namespace torchside
