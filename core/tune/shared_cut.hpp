// A test cut as shops give it to each other: what was cut and what it showed, the nozzle by its bore, and nothing of whose it was.
#pragma once

#include <optional>

#include "core/tune/test_cut.hpp"

namespace torchside::tune {

struct SharedCut {
    TestCut cut{};                // without nozzle and worn: those mean something in the shop that made it only
    std::optional<Length> bore{}; // of the nozzle used, 0.4..4 mm; unknown: from the usual current density
    int shop = 1;                 // which of the files that were taken in, 1..99: rows of one shop err together

    friend bool operator==(const SharedCut&, const SharedCut&) = default;
};

} // namespace torchside::tune
