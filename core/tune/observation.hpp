// What a fit is made of, and what it says of each row (response_fit.hpp).
#pragma once

#include <cstdint>
#include <vector>

#include "core/tune/gaussian.hpp"
#include "core/tune/window.hpp"

namespace torchside::tune {

/// One row as the engine sees it. Rows with equal x and tag are of one stock.
struct Observation {
    Vector x{};
    std::int64_t tag = 0; // tells stocks apart that have the same x (nozzle bore)
    double y = 0.0;       // reading or setting, relative to level 1
    double noise = 0.0;   // variance of a reading; 0 for a verdict
    double used = 0.0;    // share of the set of consumables that was used; 0 where nobody counted
    Judgement verdict = Judgement::good;
    int row = 0; // index in the log

    [[nodiscard]] bool judged() const { return noise == 0.0; }
};

/// Another kind of shop that the verdicts may come from, and the logarithm of its prior odds against the model's own.
struct OtherShop {
    Window window{};
    double ln_odds = 0.0;
    Gaussian prior{};
    double stock_sd = 0.0;
    double drift = 0.0; // what f gains over a set of consumables
};

struct Model {
    Gaussian prior{};
    double stock_sd = 0.0;
    Window window{};
    double drift = 0.0; // what f gains over a set of consumables
    std::vector<OtherShop> others{};
    int starts = 2; // of the fit: 1 finds one explanation of verdicts that contradict each other
    double outlier_sd = 3.0;
    double student_dof = 4.0;
};

/// What the fit says of one row.
struct Finding {
    int row = 0;
    double weight = 1.0; // 1: taken at full weight
    double sd_off = 0.0; // how far it is from what all other rows say, in standard deviations
    bool flagged = false;
};

} // namespace torchside::tune
