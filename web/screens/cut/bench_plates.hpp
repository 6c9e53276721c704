// The plates that a swipe at the table leads through: the job's own, and what the log says was cut before.
#pragma once

#include <cstddef>
#include <string>

#include "web/screens/app.hpp"

namespace torchside::web {

/// As the screen is opened. At most nine, which a hand still leafs through; none that this machine cannot be set to.
void gather_plates(App& app);
/// Which of them the job is of. One that came in from elsewhere (undo, another tab) is put first.
[[nodiscard]] std::size_t plate_of_job(App& app);
/// The job's plate is the next one now, or with -1 the one before; round and round.
void step_plate(App& app, int by);
/// The plate that such a step leads to: "Mild steel 10 mm, 45 A".
[[nodiscard]] std::string plate_words(App& app, int by);

} // namespace torchside::web
