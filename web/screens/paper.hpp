// What is printed: the chart of the shop to tape to the table, or a card of the open job for whoever runs it. HTML for the
// page to lay out on paper; the same words and figures as on screen.
#pragma once

#include <string>

#include "web/screens/app.hpp"

namespace torchside::web::prints {

/// Every plate and current on one page: feed, arc volts, pierce delay and kerf in each cell.
[[nodiscard]] std::string chart(App& app);

/// The job on one page: what to dial in, what it makes, what to mind.
[[nodiscard]] std::string card(const App& app);

} // namespace torchside::web::prints
