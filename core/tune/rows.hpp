// The log's rows as evidence. Shared inside core/tune.
#pragma once

#include <span>
#include <vector>

#include "core/tune/posterior.hpp"

namespace torchside::tune {

/// Level 1 and 2 of the feed: coefficients before any own cut.
[[nodiscard]] Gaussian feed_physics(const Priors& priors);
[[nodiscard]] Gaussian feed_practice(const Priors& priors);

/// What the rows say, relative to level 1.
struct Evidence {
    std::vector<Observation> feed{};
    std::vector<Observation> kerf{};
    std::vector<Observation> arc{};
};

/// Adds what one row says; it was cut from `plate`, whose feed by level 1 is given, with a set of which so much was used.
void read_row(const TestCut& row, int index, const cut::CutSetup& plate, Speed level_1, double used,
              const Priors& priors, Evidence& evidence);

/// Level 1 of the pierce delay with that pierce limit, past it too. 0 where the model refuses.
[[nodiscard]] Duration pierce_level_1(const cut::CutSetup& plate, Length limit);

/// The plate's pierce limit by the learnt feed.
[[nodiscard]] Length pierce_limit(const Posterior& posterior, const cut::CutSetup& plate);

} // namespace torchside::tune
